import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openStartThreads, type StartThreads } from "../../src/threads/start-threads.js";
import { memoryFiles } from "../memory-files.js";
import { type Ended, runIn } from "../run-in.js";
import { bundleWorker } from "./bundled-worker.js";

const folder = mkdtempSync(join(tmpdir(), "compare-worker-"));
let worker = "";

beforeAll(async () => {
  worker = await bundleWorker(folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const PIECES = "name,width,height,quantity,turn\nfront,4,5 1/4,1,yes\nbase,5 1/2,8 1/2,1,no\n";
const PROJECT = `sheetwright: 1
title: Two cards
papers:
  cream: { cardstock: us-letter, grain: long }
cards:
  - { name: Thank you, format: us-a2, base: cream }
  - { name: Plain, size: 3 x 3, base: cream, fold: side }
`;
const LIST =
  "compare --pieces fronts.csv --sizes us-letter,12x12in=0.60,6x6in --copies 1-8 --json --out c.svg";
const CARDS = "compare cards.yaml --sizes us-letter,12x12in,6x6in --copies 1-8 --json --out c.svg";

interface Spread extends Ended {
  readonly chart: unknown;
  readonly opened: readonly number[];
  readonly closed: number;
}

async function compared(line: string, file = worker): Promise<Spread> {
  const files = memoryFiles({ "/desk/fronts.csv": PIECES, "/desk/cards.yaml": PROJECT });
  const opened: number[] = [];
  let closed = 0;
  const open = (most: number): StartThreads => {
    opened.push(most);
    const threads = openStartThreads(pathToFileURL(file), most);
    const close = async (): Promise<void> => {
      closed++;
      await threads.close();
    };
    return { ...threads, close };
  };
  const ended = await runIn(line.split(" "), { files, threads: { cores: 3, open } });
  return { ...ended, chart: files.all.get("/desk/c.svg"), opened, closed };
}

describe("sizes compared by threads", () => {
  it.each([
    ["a list of pieces", LIST],
    ["a project", CARDS],
  ])("of %s come out the same, byte for byte, with 1, 2 and 3", async (_, line) => {
    const alone = await compared(`${line} --jobs 1`);
    expect(alone).toMatchObject({ code: 0, opened: [], closed: 0 });
    expect(JSON.parse(alone.stdout).rows).toHaveLength(24);
    for (const [jobs, threads] of [
      [" --jobs 2", 2],
      ["", 3],
    ] as const) {
      expect(await compared(`${line}${jobs}`)).toEqual({ ...alone, opened: [threads], closed: 1 });
    }
  });

  it("takes no threads for a few", async () => {
    const { code, opened } = await compared(LIST.replace("1-8", "1-3"));
    expect({ code, opened }).toEqual({ code: 0, opened: [] });
  });

  it("ends at once where asked to, and tells the rows that have no gap before them", async () => {
    const slow = join(folder, "slow.mjs");
    // The third case never comes to an end.
    writeFileSync(
      slow,
      `import * as real from ${JSON.stringify(pathToFileURL(worker).href)};
       export const compareOne = (sent) => sent.one.copies === 3 ? new Promise(() => setInterval(() => 0, 1e6)) : real.compareOne(sent);`,
    );
    const signal = { aborted: false };
    let rows = 0;
    const open = (most: number): StartThreads => {
      const threads = openStartThreads(pathToFileURL(slow), most);
      const compare: StartThreads["compare"] = async (sent) => {
        const row = await threads.compare(sent);
        rows++;
        if (rows === 4) signal.aborted = true;
        return row;
      };
      return { ...threads, compare };
    };
    const words = LIST.replace(" --out c.svg", " --jobs 2").split(" ");
    const { code, stdout, stderr } = await runIn(words, {
      files: memoryFiles({ "/desk/fronts.csv": PIECES }),
      threads: { cores: 2, open },
      signal,
    });
    expect(code).toBe(0);
    const { endedEarly, rows: told } = JSON.parse(stdout);
    expect(endedEarly).toBe(true);
    expect(told.map((row: { readonly copies: number }) => row.copies)).toEqual([1, 2]);
    expect(stderr).toContain("Ended early");
  });

  it("says plainly that a thread failed, and what would help", async () => {
    const file = join(folder, "broken.mjs");
    writeFileSync(file, 'export function compareOne() { throw new Error("No room is left."); }');
    const { code, stdout, stderr, chart, closed } = await compared(LIST, file);
    expect({ code, stdout, chart, closed }).toEqual({ code: 1, stdout: "", chart: undefined, closed: 1 });
    expect(stderr).toContain("A thread of the search failed: No room is left. With --jobs 1");
  });
});
