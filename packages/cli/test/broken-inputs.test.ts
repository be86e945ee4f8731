import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { nodeFiles } from "../src/node-files.js";
import { readOnly } from "./read-only-files.js";
import { runIn } from "./run-in.js";

const folder = fileURLToPath(new URL("../../../test-fixtures/broken/", import.meta.url));
const names = (await readdir(folder))
  .filter((name) => name.endsWith(".args"))
  .map((name) => name.slice(0, -5));

describe("broken input", () => {
  it("is there in at least twenty ways", () => {
    expect(names.length).toBeGreaterThanOrEqual(20);
  });

  // One argument a line; the expected text is all of standard error, after a line with the exit code.
  it.each(names)("gets its whole message, and nothing is written: %s", async (name) => {
    const argv = (await readFile(join(folder, `${name}.args`), "utf8")).trimEnd().split("\n");
    const attempts: string[] = [];
    const { code, stdout, stderr } = await runIn(argv, { files: readOnly(attempts), cwd: folder });
    expect(`exit ${code}\n${stderr}`).toBe(await readFile(join(folder, `${name}.expected.txt`), "utf8"));
    expect(code).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).not.toMatch(/^\s+at |Error:|node:|undefined|\[object/m);
    expect(attempts).toEqual([]);
  });

  it("is told as data with --json", async () => {
    const argv = (await readFile(join(folder, "decimal-comma.args"), "utf8")).trimEnd().split("\n");
    const { code, stdout } = await runIn([...argv, "--json"], { files: readOnly([]), cwd: folder });
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toEqual({
      sheetwright: "faults",
      version: 1,
      faults: [
        {
          code: "decimal-comma",
          place: { file: "decimal-comma.csv", line: 2, column: 2, heading: "width" },
          message:
            '"5,5" is not a length: found ",", expected a dot as the decimal mark. Write 5.5 with a dot.',
        },
        {
          code: "decimal-comma",
          place: { file: "decimal-comma.csv", line: 2, column: 3, heading: "height" },
          message:
            '"8,5" is not a length: found ",", expected a dot as the decimal mark. Write 8.5 with a dot.',
        },
      ],
    });
  });

  it("writes nothing in a real folder either", async () => {
    const place = await mkdtemp(join(tmpdir(), "sheetwright-"));
    try {
      const { code } = await runIn(["plan", "--sheet", "us-letter", "--out", "out"], {
        files: nodeFiles,
        cwd: place,
      });
      expect(code).toBe(2);
      expect(await readdir(place)).toEqual([]);
    } finally {
      await rm(place, { recursive: true });
    }
  });
});
