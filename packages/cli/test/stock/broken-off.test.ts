import { beforeAll, describe, expect, it } from "vitest";
import type { Files } from "../../src/io.js";
import type { Holder } from "../../src/stock/holder.js";
import { type MemoryFiles, memoryFiles } from "../memory-files.js";
import { type Ended, runIn } from "../run-in.js";
import { testHolder } from "../test-holder.js";

const CARDS = `sheetwright: 1
title: Evening workshop
copies: 3
papers: { night: { cardstock: us-letter, count: 9, grain: long } }
cards: [{ name: Plain, size: 8 x 8, fold: flat, base: night }]
`;

let initial: Readonly<Record<string, string | Uint8Array>>;
beforeAll(async () => {
  const files = memoryFiles({ "/desk/cards.yaml": CARDS });
  await run(files, "stock add cards.yaml");
  await run(files, "plan cards.yaml --stock stock.json --out plan --effort quick");
  await run(files, "stock book plan --done sheet-night-1=1");
  initial = Object.fromEntries(files.all);
});
const desk = (): MemoryFiles => memoryFiles(initial);
const stockOf = (files: MemoryFiles): string => String(files.all.get("/desk/stock.json"));

function run(files: Files, line: string, holder: Holder = testHolder()): Promise<Ended> {
  return runIn(line.split(" "), { files, holder });
}

/** A run that is killed before its step of that number: it never does anything again. */
async function killedAt(files: MemoryFiles, line: string, step: number, process: number): Promise<boolean> {
  const first = files.steps.length;
  let isKilled = false;
  let say = (): void => undefined;
  const killed = new Promise<void>((done) => {
    say = done;
  });
  const stop = <Result>(): Promise<Result> => {
    isKilled = true;
    say();
    return new Promise<Result>(() => undefined);
  };
  const stopping: Files = {
    ...files,
    read: (path) => (isKilled ? stop() : files.read(path)),
    list: (path) => (isKilled ? stop() : files.list(path)),
    look: (path) => (isKilled ? stop() : files.look(path)),
    write: (path, content) => {
      if (isKilled) return stop();
      if (files.steps.length - first < step) return files.write(path, content);
      // Killed amid the write: half a file is there.
      files.all.set(path, content.slice(0, content.length / 2));
      return stop();
    },
    rename: (from, to) => (isKilled || files.steps.length - first >= step ? stop() : files.rename(from, to)),
    sync: (path) => (isKilled || files.steps.length - first >= step ? stop() : files.sync(path)),
    removeFile: (path) => (isKilled || files.steps.length - first >= step ? stop() : files.removeFile(path)),
  };
  await Promise.race([run(stopping, line, testHolder(process, [process])), killed]);
  return isKilled;
}

describe("a change of the stock that is broken off", () => {
  it.each(["stock book plan", "stock undo", "stock add more.yaml"])(
    "leaves the old or the new file at every step, and the next run goes on: %s",
    async (line) => {
      const more = CARDS.replace("night", "dusk").replace("night", "dusk");
      const start = (): MemoryFiles => {
        const files = desk();
        files.all.set("/desk/more.yaml", more);
        return files;
      };
      const before = stockOf(start());
      const whole = start();
      expect((await run(whole, line)).code).toBe(0);
      const after = stockOf(whole);
      expect(after).not.toBe(before);
      let step = 0;
      for (; ; step++) {
        const files = start();
        const wasKilled = await killedAt(files, line, step, 99);
        expect([before, after]).toContain(stockOf(files));
        if (!wasKilled) break;
        const wasDone = stockOf(files) === after;
        // Another run finds the dead lock, and does what is not done yet.
        const next = await run(files, line, testHolder(7, [7]));
        if (line === "stock undo") {
          expect(next.code).toBe(wasDone ? 2 : 0);
          expect(stockOf(files)).toBe(after);
        } else {
          const isNew =
            next.code === 0 && next.stdout.startsWith(line === "stock book plan" ? "Booked" : "Added");
          if (!isNew) expect(`${next.stderr}${next.stdout}`).toMatch(/booked already|Nothing to add/);
          expect(stockOf(files)).toBe(after);
          const names = [...files.all.keys()].filter((path) => path.startsWith("/desk/stock.json.")).sort();
          expect(names).toEqual(["/desk/stock.json.before-1", "/desk/stock.json.before-2"]);
        }
      }
      expect(step).toBeGreaterThan(line === "stock undo" ? 3 : 7);
    },
  );

  it("leaves the file as it was where a step fails, with nothing beside it, and says why", async () => {
    const whole = desk();
    whole.steps.length = 0;
    await run(whole, "stock book plan");
    const { steps } = whole;
    for (const [number, { step, path }] of steps.entries()) {
      const files = desk();
      files.steps.length = 0;
      files.failWhen = (_, __, at) => (at === number ? "ENOSPC" : undefined);
      const { code, stderr } = await run(files, "stock book plan");
      const renamed = steps.findIndex((one) => one.step === "rename" && one.path.endsWith("stock.json.part"));
      if (number > renamed) {
        expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
        expect(stockOf(files)).toBe(stockOf(whole));
        continue;
      }
      expect(code, `${step} ${path}`).toBe(2);
      expect(stderr).toContain('--stock: "stock.json" cannot be written: the disk is full.');
      expect(stockOf(files)).toBe(stockOf(desk()));
      const beside = [...files.all.keys()].filter((one) => /part|lock/.test(one));
      // A lock that could not even be written in full is a dead one to the next run.
      if (number > 0) expect(beside).toEqual([]);
    }
  });
});

describe("two runs at once", () => {
  it("never both book, whoever comes first at every step", async () => {
    for (let turn = 1; turn < 40; turn++) {
      const files = desk();
      // The one waits at its step of that number until the other has ended.
      let ended = false;
      let count = 0;
      const other = { run: null as Promise<Ended> | null };
      const waiting: Files = {
        ...files,
        list: async (path) => {
          const found = await files.list(path);
          count++;
          if (count === turn && other.run === null) {
            other.run = run(files, "stock book plan", testHolder(8, [7, 8]));
            await other.run;
            ended = true;
          }
          return found;
        },
        write: async (path, content) => {
          count++;
          if (count === turn && other.run === null) {
            other.run = run(files, "stock book plan", testHolder(8, [7, 8]));
            await other.run;
            ended = true;
          }
          return files.write(path, content);
        },
      };
      const one = await run(waiting, "stock book plan", testHolder(7, [7, 8]));
      const two = await (other.run ?? Promise.resolve(null));
      if (two === null) {
        expect(one.code).toBe(0);
        break;
      }
      expect(ended).toBe(true);
      const codes = [one.code, two.code].sort();
      expect(codes, `${one.stderr}${two.stderr}`).toEqual([0, 2]);
      expect(JSON.parse(stockOf(files))).toMatchObject({ revision: 3, papers: { night: { sheets: 6 } } });
    }
  });

  it("wait for each other, and say who is at work where that takes too long", async () => {
    const files = desk();
    const lock = "/desk/stock.json.lock-desk-8-m8";
    files.all.set(lock, "");
    const running = testHolder(7, [7, 8]);
    const { code, stderr } = await run(files, "stock book plan", running);
    expect(code).toBe(2);
    expect(stderr).toContain(
      "--stock: Process 8 on desk is writing the file, so nothing was done. Try again when it has ended; " +
        "if it ended long ago, remove stock.json.lock-desk-8-m8 beside the file.",
    );
    let waits = 0;
    const patient: Holder = {
      ...testHolder(7, [7, 8]),
      wait: () => {
        waits++;
        if (waits === 3) files.all.delete(lock);
        return Promise.resolve();
      },
    };
    expect((await run(files, "stock book plan", patient)).code).toBe(0);
    expect(waits).toBe(3);
  });

  it("of which one runs on another machine wait as well, since nobody can tell whether it still runs", async () => {
    const files = desk();
    files.all.set("/desk/stock.json.lock-studio-99-abc", "");
    const { stderr } = await run(files, "stock book plan");
    expect(stderr).toContain("Process 99 on studio is writing the file");
    files.all.delete("/desk/stock.json.lock-studio-99-abc");
    files.all.set("/desk/stock.json.lock-desk-99-abc", "");
    expect((await run(files, "stock book plan")).code).toBe(0);
  });

  it("do not write over what an editor wrote in the meantime", async () => {
    const files = desk();
    const edited = stockOf(files).replace('"sheets": 8', '"sheets": 28');
    const editing: Files = {
      ...files,
      write: async (path, content) => {
        await files.write(path, content);
        if (path.endsWith(".part")) files.all.set("/desk/stock.json", edited);
      },
    };
    const { code, stderr } = await run(editing, "stock book plan");
    expect(code).toBe(2);
    expect(stderr).toContain("--stock: the file was changed while it was worked on, so nothing was done.");
    expect(stockOf(files)).toBe(edited);
  });
});
