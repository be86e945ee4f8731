import { cutOrder } from "@sheetwright/packing";
import type { FormMarks, LayoutMarks } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { columnsOf } from "../../src/cut-list/text-columns.js";
import { writeCutList } from "../../src/cut-list/write-cut-list.js";
import { inch, kind, offcut, type Plan, piece, plan, repeat, split } from "../plans/build.js";
import { type Example, examples } from "../plans/examples.js";
import { plainCutOrder } from "../plans/plain-cut-order.js";
import { randomMarkedPlan } from "../plans/random-marks.js";

function write({
  problem,
  packing,
  unit = "in",
  marks,
}: Plan & { readonly unit?: "in" | "mm"; readonly marks?: LayoutMarks }): string {
  const [layout] = packing.layouts;
  const sheet = problem.sheets.find(({ id }) => id === layout?.sheet);
  if (layout === undefined || sheet === undefined) throw new Error("A plan has a layout and its sheet.");
  if (problem.mode === "stopped") return writeCutList(problem, packing, 0, { unit });
  return writeCutList(problem, packing, 0, {
    unit,
    cuts: cutOrder(sheet, layout, { kerf: problem.kerf ?? 0 }),
    ...(marks === undefined ? {} : { marks }),
  });
}

const mats = plan(
  [kind("a", inch(4), inch(2), "Mat")],
  [{ id: "s", name: "Cream", width: inch(4), height: inch(5) }],
  [{ sheet: "s", run: 3, tree: split("y", inch(5), repeat(2, inch(2), piece({ kind: "a", count: 3 }))) }],
);

describe("writeCutList", () => {
  test.each(examples)("$name: is the committed cut list", async (example: Example) => {
    await expect(write(example)).toMatchFileSnapshot(`../examples/${example.name}.txt`);
  });

  test("says sheet, run, pieces, cuts and leftovers, and warns of the blade", () => {
    const { problem, packing } = mats;
    expect(writeCutList(problem, packing, 0, { cuts: plainCutOrder(mats, 0) })).toBe(
      [
        "Cream",
        "=====",
        "4 x 5 in",
        "Cut 3 sheets like this. 80.0 % of the sheet used.",
        "",
        "Pieces",
        "    1  Mat: 4 x 2 in; 2 a sheet, 6 in all",
        "",
        "Cuts, in this order",
        "  Do each cut on all 3 sheets before the next.",
        "   1. Line up the top edge at 2 in, cut edge to edge: Mat and a part 4 x 3 in.",
        "   2. From cut 1 take the part 4 x 3 in. Same setting, top edge at 2 in, cut:",
        "      Mat and an offcut 4 x 1 in.",
        "  2 cuts; the fence is set once.",
        "",
        "Left over",
        "    2  4 x 1 in; 1 a sheet, 3 in all",
        "",
        "Mind the blade",
        "  A blade that goes through paper goes through fingers. Keep guard and",
        "  hold-down in place and hands away from the blade's line, cut no more layers",
        "  at once than the tool is made for, and lock or close the blade whenever you",
        "  let go of it. The instructions that came with your tool go before anything",
        "  written here.",
        "",
      ].join("\n"),
    );
  });

  test("tells what shared places add up to", () => {
    const example = examples.find(({ name }) => name === "shared-places-on-pad") as Example;
    expect(write(example).replace(/\s+/g, " ")).toContain(
      "From 12 sheets: 16 x 3b, 8 x 5a, 33 x Comet tail, 9 x Comet band, 15 x Spark, 21 x Ember.",
    );
  });

  test("says once what a cut gives on both sides where several cards share it", () => {
    const halves = plan(
      [kind("a", inch(4), inch(2), "Mat"), kind("b", inch(4), inch(2), "Lid")],
      [{ id: "s", name: "Cream", width: inch(4), height: inch(4) }],
      [
        {
          sheet: "s",
          run: 3,
          tree: split(
            "y",
            inch(4),
            repeat(2, inch(2), piece({ kind: "a", count: 2 }, { kind: "b", count: 1 })),
          ),
        },
      ],
    );
    expect(write(halves).replace(/\s+/g, " ")).toContain("cut edge to edge: twice Mat x 2, Lid x 1.");
  });

  test("speaks of both sheets where there are two", () => {
    const [layout] = mats.packing.layouts;
    if (layout === undefined) throw new Error("A plan has a layout.");
    const written = (run: number) =>
      write({ ...mats, packing: { ...mats.packing, layouts: [{ ...layout, run }] } });
    expect(written(2)).toContain("Do each cut on both sheets before the next.");
    expect(written(1)).not.toContain("Do each cut on");
  });

  test("sends cuts too narrow to hold to a metal ruler", () => {
    const order = plainCutOrder(mats, 0);
    const cuts = { ...order, cuts: order.cuts.map((cut) => ({ ...cut, tooNarrow: true })) };
    expect(writeCutList(mats.problem, mats.packing, 0, { cuts })).toContain(
      "too narrow to hold, so cut along a metal",
    );
  });

  test("says so where nothing is cut, placed or left", () => {
    const empty = plan([], [{ id: "s", width: 1000, height: 1000 }], [{ sheet: "s", run: 1, tree: offcut }]);
    const text = writeCutList(empty.problem, empty.packing, 0, { cuts: plainCutOrder(empty, 0) });
    expect(text).toContain("Pieces\n  none");
    expect(text).toContain("none: the sheet is left as it is");
    const full = plan(
      [kind("a", 1000, 1000)],
      [{ id: "s", width: 1000, height: 1000 }],
      [{ sheet: "s", run: 1, tree: piece({ kind: "a" }) }],
    );
    expect(writeCutList(full.problem, full.packing, 0)).toContain("Left over\n  no offcut worth keeping");
  });

  test("leaves the cuts out where none are given, and refuses a layout that is not there", () => {
    expect(writeCutList(mats.problem, mats.packing, 0)).not.toContain("Cuts, in this order");
    expect(() => writeCutList(mats.problem, mats.packing, 3)).toThrow("layouts[3]");
  });

  test("says how the sheet lies, where to score after the cuts, and which edge is the top", () => {
    const { problem, packing } = mats;
    const marks: LayoutMarks = {
      sheets: { s: { grain: "width", pattern: "one-way", colour: "#22304f" } },
      forms: { a: [{ scores: [{ along: "width", at: inch(2) }], topOn: ["s"], backOn: ["s"] }] },
    };
    const lines = writeCutList(problem, packing, 0, { cuts: plainCutOrder(mats, 0), marks }).split("\n");
    expect(lines.slice(2, 6)).toEqual([
      "4 x 5 in",
      "Cut 3 sheets like this. 80.0 % of the sheet used.",
      "Grain along the width, 4 in.",
      "Pattern in one direction: lay the sheet with the top of its pattern up.",
    ]);
    expect(lines).toContain("    1  Mat (back up): 4 x 2 in; 2 a sheet, 6 in all");
    const scores = lines.indexOf("Scores, after the cuts");
    expect(scores).toBeGreaterThan(lines.indexOf("Cuts, in this order"));
    expect(lines.slice(scores, scores + 8)).toEqual([
      "Scores, after the cuts",
      "  Score Mat at 2 in from its left edge.",
      "  Fold with the bump of the ridge inside.",
      "",
      "Which way up",
      "  The top edge as it lies is the top of the pattern; mark it on the side that",
      "  will not show: Mat.",
      "  The printed back of the paper shows on the card (back up): Mat.",
    ]);
    expect(lines.slice(-7, -6)).toEqual(["Mind the blade"]);
  });

  test("says which pieces a die cuts its shape from, and what to mind", () => {
    const { problem, packing } = mats;
    const forms = (die: { name: string; cut: { width: number; height: number } }): LayoutMarks => ({
      sheets: {},
      forms: { a: [{ scores: [], die, topOn: [], backOn: [] }] },
    });
    const marks = forms({ name: "small star", cut: { width: inch(1.5), height: inch(1.5) } });
    const text = writeCutList(problem, packing, 0, { marks }).replace(/\s+/g, " ");
    expect(text).toContain(
      "By die, after the cuts Cut each Mat by the die small star, 1 1/2 x 1 1/2 in. Lay the die on the die blank",
    );
    expect(text).toContain("the instructions of the machine and the die come first.");
    expect(writeCutList(problem, packing, 0)).not.toContain("die");
    const large = forms({ name: "star", cut: { width: inch(5), height: inch(1) } });
    expect(() => writeCutList(problem, packing, 0, { marks: large })).toThrow(
      /marks\.forms\["a"\]\[0\]\.die\.cut: expected a shape within/,
    );
  });

  test("says how several shapes are cut from a strip, and what a machine or scissors cut", () => {
    const { problem, packing } = mats;
    const form = (name: string | null): FormMarks => ({
      scores: [],
      die: { name, cut: { width: inch(0.5), height: inch(0.5) }, shape: "circle" },
      topOn: [],
      backOn: [],
    });
    const list = (own: FormMarks) => {
      const marks = { sheets: {}, forms: { a: [own] } };
      return writeCutList(problem, packing, 0, { marks }).replace(/\s+/g, " ");
    };
    const at = [0.25, 1].map((x) => ({ x: inch(x), y: inch(0.25) }));
    const strip = list({ ...form("dot"), shapesAt: at });
    expect(strip).toContain(
      "Cut 2 from each Mat, the first 1/4 in from the end and each further one 3/4 in on, by the die dot, 1/2 x 1/2 in.",
    );
    expect(strip).toContain("move it on between two passes");
    expect(list(form("dot"))).not.toContain("passes");
    const machine = list(form(null));
    expect(machine).toContain("By machine or scissors, after the cuts Cut each Mat by a cutting machine");
    expect(machine).not.toMatch(/By die|Lay the die/);
  });

  test("says which scores are on the inside, and how slits are cut", () => {
    const { problem, packing } = mats;
    const score = (at: number, folds: "mountain" | "valley") => ({
      along: "width" as const,
      at: inch(at),
      folds,
    });
    const slits = [{ along: "width" as const, at: inch(1), from: inch(1), to: inch(3) }];
    const scores = [score(1, "mountain"), score(3, "valley")];
    const marks: LayoutMarks = { sheets: {}, forms: { a: [{ scores, slits, topOn: [], backOn: [] }] } };
    const text = writeCutList(problem, packing, 0, { marks });
    const flowing = text.replace(/\s+/g, " ");
    expect(flowing).toContain(
      "Score Mat at 1 in from its left edge; on the inside (turn it over from top to bottom) at 3 in from its left edge.",
    );
    expect(flowing).toContain(
      "Slits, after the scores Slit Mat at 1 in from its top edge, from 1 in to 3 in from its left edge. " +
        "A slit starts and stops inside the piece",
    );
    // Common practice, no source.
    expect(flowing).toContain("with a craft knife along a metal ruler, on a cutting mat, before you fold");
    const bare: LayoutMarks = { sheets: {}, forms: { a: [{ scores, topOn: [], backOn: [] }] } };
    expect(writeCutList(problem, packing, 0, { marks: bare })).not.toContain("Slit");
  });

  test("says how to find a grain that is not known where something is folded, and nothing where there are no marks", () => {
    const { problem, packing } = mats;
    const plain: LayoutMarks = {
      sheets: { s: { grain: "unknown", pattern: "none", colour: "#22304f" } },
      forms: {},
    };
    const scores = [{ along: "width" as const, at: inch(2) }];
    const folded: LayoutMarks = { ...plain, forms: { a: [{ scores, topOn: [], backOn: [] }] } };
    expect(writeCutList(problem, packing, 0, { marks: folded }).replace(/\s+/g, " ")).toContain(
      "Grain unknown. Bend test: paper bends more easily when the bend runs along its grain.",
    );
    expect(writeCutList(problem, packing, 0, { marks: plain })).not.toMatch(/Grain|Score|Which way|Pattern/);
    expect(writeCutList(problem, packing, 0, { marks: { sheets: {}, forms: {} } })).toBe(
      writeCutList(problem, packing, 0),
    );
  });

  test("says that a grain is only assumed, and how to find it", () => {
    const { problem, packing } = mats;
    const sheet = { grain: "width", grainIsAssumed: true, pattern: "none", colour: "#22304f" } as const;
    const text = writeCutList(problem, packing, 0, { marks: { sheets: { s: sheet }, forms: {} } });
    expect(text).toMatch(/Grain along the width, [^,]* in \(assumed: try the bend test\)\.\n/);
  });

  test("tells the forms of one kind apart by their size", () => {
    const example = examples.find(({ name }) => name === "scored-bases-on-letter") as Example;
    expect(write(example)).toContain("Score 1a base (7 x 5 in) at 3 1/2 in from its top edge.");
    expect(write(example)).toContain("Score 1a base (3 1/2 x 10 in) at 5 in from its top edge.");
  });

  test("is 78 columns wide at most, one line feed a line, every cut numbered and every kind named", () => {
    fc.assert(
      fc.property(randomMarkedPlan({ windows: true }), fc.boolean(), (random, marked) => {
        const order = plainCutOrder(random, 0);
        const text = writeCutList(random.problem, random.packing, 0, {
          cuts: order,
          ...(marked ? { marks: random.marks } : {}),
        });
        const lines = text.split("\n");
        expect(lines.at(-1)).toBe("");
        expect(lines.filter((line) => columnsOf(line) > 78 || /\s$/.test(line))).toEqual([]);
        expect(/[\u0000-\u0009\u000b-\u001f\u007f\u202a-\u202e\ud800-\udfff]/u.test(text)).toBe(false);
        const numbers = lines.flatMap((line) => line.match(/^ {2,3}(\d+)\. /)?.[1] ?? []).map(Number);
        expect(numbers).toEqual(order.cuts.map(({ number }) => number));
      }),
    );
  });
});
