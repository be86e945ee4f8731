import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Io } from "../../src/io.js";
import { loadSolver } from "../../src/solver/load-solver.js";
import { openStartThreads, type StartThreads } from "../../src/threads/start-threads.js";
import { memoryFiles } from "../memory-files.js";
import { type Ended, runIn } from "../run-in.js";
import { bundleWorker } from "./bundled-worker.js";

const folder = mkdtempSync(join(tmpdir(), "start-worker-"));
let worker = "";

beforeAll(async () => {
  worker = await bundleWorker(folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Eleven sizes of many copies, of which no first plan is proven, and enough work for threads. */
const SIZES = Array.from({ length: 11 }, (_, i) => [17 + ((i * 37) % 41), 19 + ((i * 53) % 47), 9 + i]);
const PIECES = [
  "name,width,height,quantity,turn",
  ...SIZES.map(([width, height, copies], i) => `piece ${i + 1},${width},${height},${copies},no`),
].join("\n");
const LIST = "plan --pieces pieces.csv --sheet 110x80mm --unit mm --out out";
const PROJECT = `sheetwright: 1
title: Odd sizes
units: mm
papers:
  cream: { cardstock: 110 x 80 }
cards:
${SIZES.map(([width, height, copies], i) => `  - { name: Card ${i + 1}, size: ${width} x ${height}, fold: flat, base: cream, copies: ${copies} }`).join("\n")}
`;

interface Spread extends Ended {
  readonly files: ReadonlyMap<string, unknown>;
  /** Threads asked for, each time some were opened. */
  readonly opened: readonly number[];
  /** Times that threads were ended. */
  readonly closed: number;
}

interface Circumstances extends Partial<Io> {
  readonly file?: string;
  /** Is told when threads are opened. */
  readonly onOpen?: () => void;
}

async function planned(line: string, more: Circumstances = {}): Promise<Spread> {
  const files = memoryFiles({ "/desk/pieces.csv": PIECES, "/desk/cards.yaml": PROJECT });
  const opened: number[] = [];
  let closed = 0;
  const { file = worker, onOpen = () => undefined, ...io } = more;
  const ended = await runIn(line.split(" "), {
    files,
    threads: {
      cores: 3,
      open: (most): StartThreads => {
        opened.push(most);
        onOpen();
        const threads = openStartThreads(pathToFileURL(file), most);
        const close = async (): Promise<void> => {
          closed++;
          await threads.close();
        };
        return { ...threads, close };
      },
    },
    ...io,
  });
  return { ...ended, files: files.all, opened, closed };
}

describe("a plan whose search is spread over threads", () => {
  it.each([
    ["a list of pieces", LIST, {}],
    ["a project", "plan cards.yaml --out out", {}],
    ["a list of pieces, by a solver in each thread,", LIST, { loadSolver }],
  ])("of %s is the same, byte for byte, with 1, 2 and 4", async (_, line, io) => {
    const alone = await planned(`${line} --jobs 1`, io);
    const solver = "loadSolver" in io ? /"lp": "highs \d/ : /"lp": "none"/;
    expect(alone.files.get("/desk/out/plan.json")).toMatch(solver);
    expect(alone.stderr).not.toContain("cannot");
    expect(alone).toMatchObject({ code: 0, opened: [], closed: 0 });
    for (const [jobs, threads] of [
      ["--jobs 2", 2],
      ["--jobs 4", 4],
      ["", 3],
    ] as const) {
      const { code, stdout, stderr, files, opened, closed } = await planned(`${line} ${jobs}`.trim(), io);
      expect({ code, stdout, stderr }).toEqual({
        code: alone.code,
        stdout: alone.stdout,
        stderr: alone.stderr,
      });
      expect([...files]).toEqual([...alone.files]);
      expect({ opened, closed }).toEqual({ opened: [threads], closed: 1 });
    }
  });

  it("takes no threads where the work is small", async () => {
    const { code, opened } = await planned(`${LIST} --effort quick --jobs 4`);
    expect({ code, opened }).toEqual({ code: 0, opened: [] });
  });

  it("ends early with the best plan so far, and ends its threads", async () => {
    const signal = { aborted: false };
    const onOpen = (): void => {
      signal.aborted = true;
    };
    const began = performance.now();
    const pause = (): Promise<void> => new Promise((done) => setImmediate(done));
    const ended = await planned(`${LIST} --effort thorough --jobs 2`, { signal, pause, onOpen });
    expect(ended.opened).toEqual([2]);
    expect(ended).toMatchObject({ code: 0, closed: 1 });
    expect(JSON.parse(String(ended.files.get("/desk/out/plan.json"))).packing.search.ended).toBe("cancelled");
    expect(performance.now() - began).toBeLessThan(20_000);
  });

  it.each([
    ["throws", 'export function makeStart() { throw new Error("No room is left."); }', "No room is left."],
    [
      "ends",
      'export const makeStart = () => new Promise(() => setTimeout(() => { throw new Error("Lost."); }));',
      "Lost.",
    ],
    ["cannot be read", null, "Cannot find module"],
  ])("says plainly that a thread failed which %s, and what would help", async (_, source, reason) => {
    const file = join(folder, `broken-${String(reason.length)}-${String(source?.length)}.mjs`);
    if (source !== null) writeFileSync(file, source);
    const { code, stdout, stderr, files, opened, closed } = await planned(`${LIST} --jobs 2`, { file });
    expect({ code, stdout, opened, closed }).toEqual({ code: 1, stdout: "", opened: [2], closed: 1 });
    expect(stderr).toContain("A thread of the search failed: ");
    expect(stderr).toContain(reason);
    expect(stderr).toContain("With --jobs 1 the search takes no threads.");
    expect(files.has("/desk/out/plan.json")).toBe(false);
  });

  it.each(["0", "1.5", "many", "257"])("refuses %s jobs", async (jobs) => {
    const { code, stderr } = await planned(`${LIST} --jobs ${jobs}`);
    expect(code).toBe(2);
    expect(stderr).toContain("--jobs");
  });
});
