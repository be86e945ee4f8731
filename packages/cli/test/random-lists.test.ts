import { verify } from "@sheetwright/packing";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PlanFile } from "../src/plan/plan-file.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

/** A value that is right in most cases, a slip in some, and anything at all in a few. */
const mostly = (right: fc.Arbitrary<string>, ...slips: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 60, arbitrary: right },
    { weight: 2, arbitrary: fc.constantFrom("", ...slips) },
    { weight: 1, arbitrary: fc.string() },
  );

const length = fc
  .tuple(
    fc.integer({ min: 1, max: 9 }),
    fc.constantFrom("", " 1/2", " 1/8", "-3/4", ".5", "/4", " in", '"', "0 mm"),
  )
  .map(([whole, rest]) => `${whole}${rest}`);
const name = fc.string({ unit: fc.constantFrom("a", "b", "é", "🌙", "<", "&", " ", "'", "#"), maxLength: 3 });
const row = fc.tuple(
  mostly(name, '"mat"', "a,b"),
  mostly(length, "1/0", "8,5", "-3", "9e9", "25 ft"),
  mostly(length, "0", "x", "8-Jan"),
  mostly(fc.integer({ min: 0, max: 4 }).map(String), "1.5", "-1", "99999999"),
  mostly(fc.constantFrom("yes", "no", "Yes", " NO "), "maybe"),
);
const header = mostly(
  fc.constant("name,width,height,quantity,turn"),
  "name;width",
  "turn,name,width,height,quantity",
);
const list = fc
  .tuple(header, fc.array(row, { minLength: 1, maxLength: 3 }), mostly(fc.constant(""), "#note", ",,,,"))
  // A number before each name keeps most of them apart.
  .map(([first, rows, last]) =>
    [first, ...rows.map((cells, index) => `${index}${cells.join(",")}`), last].join("\n"),
  );
const bytes = fc.oneof(
  { weight: 20, arbitrary: list.map((text) => new TextEncoder().encode(text)) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 80 }) },
);
const options = fc.record({
  sheet: mostly(fc.constantFrom("us-letter", "6x6in", "iso-a6", "12 x 12"), "us-leter", "0x5"),
  count: fc.option(mostly(fc.integer({ min: 1, max: 4 }).map(String), "0", "many"), { nil: undefined }),
  mode: fc.constantFrom("shelf", "guillotine"),
  trim: fc.option(mostly(fc.constantFrom("1/8", "0", "2 mm"), "9"), { nil: undefined }),
  unit: mostly(fc.constant("in"), "mm", "mm", "mm", "cm"),
});

describe("any piece list and any options", () => {
  it("give a plan that can be proven, or faults that say where; nothing is ever half done", async () => {
    const ends = { 0: 0, 1: 0, 2: 0 };
    let runs = 0;
    await fc.assert(
      fc.asyncProperty(bytes, options, async (content, { sheet, count, mode, trim, unit }) => {
        const files = memoryFiles({ "/desk/pieces.csv": content });
        const before = files.snapshot();
        const argv = ["plan", "--pieces", "pieces.csv", "--out", "out", "--effort", "quick", "--json"];
        argv.push("--sheet", sheet, "--mode", mode, "--unit", unit);
        if (count !== undefined) argv.push("--count", count);
        if (trim !== undefined) argv.push("--trim", trim);
        const { code, stdout, stderr } = await runIn(argv, { files });
        ends[code] += 1;
        runs += 1;
        expect(stderr).not.toMatch(/fault of its own|^\s+at |undefined|NaN/m);
        const told = JSON.parse(stdout);
        if (code === 2) {
          expect(told.faults.length).toBeGreaterThan(0);
          expect(files.snapshot()).toBe(before);
          return;
        }
        const plan: PlanFile = JSON.parse(String(files.all.get("/desk/out/plan.json")));
        expect(verify(plan.problem, plan.packing)).toEqual([]);
        expect(code === 0).toBe(plan.packing.missing.length === 0);
        expect(told.outcome === "complete").toBe(code === 0);
        expect([...files.all.keys()].sort()).toEqual(
          ["/desk/pieces.csv", ...told.files.map((name: string) => `/desk/out/${name}`)].sort(),
        );
      }),
    );
    // Each of the three ends must come up often enough for the property to say something of it.
    if (runs >= 100) for (const count of Object.values(ends)) expect(count).toBeGreaterThan(runs / 25);
  });
});
