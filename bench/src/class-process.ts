/**
 * The entry of a process that plans a class by the built command and tells what that took: seconds by the clock, seconds
 * of the processor over all threads, and the most memory held.
 *
 *     node bench/dist/class-process.js 500 standard
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { classProject } from "./class/class-project.js";

const [guestsText = "500", effort = "standard", ...more] = process.argv.slice(2);
const guests = Number(guestsText);
if (!Number.isSafeInteger(guests) || guests < 2 || guests % 2 !== 0 || more.length > 0) {
  process.stderr.write("Give an even number of guests from 2 and an effort, such as: 500 standard\n");
  process.exit(2);
}
const folder = mkdtempSync(join(tmpdir(), "class-"));
const file = join(folder, "class.yaml");
writeFileSync(file, classProject(guests));
const began = performance.now();
process.on("exit", () => {
  const seconds = (performance.now() - began) / 1000;
  const { user, system } = process.cpuUsage();
  const processor = (user + system) / 1_000_000;
  // KiB in Linux, macOS and Windows alike.
  const peak = process.resourceUsage().maxRSS / 1024;
  process.stderr.write(
    `${guests} guests at ${effort}: ${seconds.toFixed(1)} s, ${processor.toFixed(1)} s of the processor, ${peak.toFixed(0)} MiB\n`,
  );
  rmSync(folder, { recursive: true, force: true });
});
process.argv.splice(2, process.argv.length, "plan", file, "--out", join(folder, "plan"), "--effort", effort);
// The command as it is built, in this very process, so that its threads and memory are counted.
await import(new URL("../../packages/cli/dist/bin.js", import.meta.url).href);
