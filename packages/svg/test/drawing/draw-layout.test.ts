import { TICKS_PER_MM } from "@sheetwright/measure";
import { cutOrder, placements } from "@sheetwright/packing";
import type { LayoutMarks } from "@sheetwright/planner";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawLayout } from "../../src/drawing/draw-layout.js";
import { layOut } from "../../src/layout/lay-out.js";
import { readLayout } from "../../src/reading/read-layout.js";
import { inch, kind, offcut, type Plan, piece, plan, repeat, split } from "../plans/build.js";
import { type Example, examples } from "../plans/examples.js";
import { plainCutOrder } from "../plans/plain-cut-order.js";
import { randomPlan } from "../plans/random-plan.js";
import {
  attributeOf,
  byId,
  everyElement,
  numberOf,
  type ReadElement,
  readStrictly,
  readWithSvgson,
} from "../read-svg.js";
import { expectWellSet } from "./expect-well-set.js";
import { rectBox, textBox, textBoxes } from "./text-boxes.js";

/** Draws the first layout, with the cuts in working order where the trimmer makes them. */
function draw(
  example: Plan & { readonly unit?: "in" | "mm"; readonly marks?: LayoutMarks },
  cuts = true,
): string {
  const { problem, packing, unit = "in", marks } = example;
  const { sheet, layout, kerf } = firstLayout(example);
  const numbered = cuts && problem.mode !== "stopped";
  return drawLayout(problem, packing, 0, {
    unit,
    ...(numbered ? { cuts: cutOrder(sheet, layout, { kerf }) } : {}),
    ...(marks === undefined ? {} : { marks }),
  });
}

function firstLayout({ problem, packing }: Plan) {
  const [layout] = packing.layouts;
  const sheet = problem.sheets.find(({ id }) => id === layout?.sheet);
  if (layout === undefined || sheet === undefined) throw new Error("A plan has a layout and its sheet.");
  return { layout, sheet, kerf: problem.kerf ?? 0 };
}

function inMillimetres({ x, y, width, height }: { x: number; y: number; width: number; height: number }) {
  return [x, y, width, height].map((ticks) => ticks / TICKS_PER_MM);
}

function expectBoxes(
  drawn: readonly { x: number; y: number; width: number; height: number }[],
  planned: readonly { x: number; y: number; width: number; height: number }[],
): void {
  expect(drawn).toHaveLength(planned.length);
  planned.forEach((box, i) => {
    const found = drawn[i];
    const sides = found === undefined ? [] : [found.x, found.y, found.width, found.height];
    const furthest = Math.max(
      ...inMillimetres(box).map((side, j) => Math.abs(side - (sides[j] ?? Number.NaN))),
    );
    expect(furthest).toBeLessThan(0.01);
  });
}

/** What stands on a piece, its lines apart by bars. */
function labelOf(root: ReadElement, pieceId: string): string | null {
  const group = everyElement(root).find((found) => attributeOf(found, "data-of") === pieceId);
  const text = group?.children.find(({ name }) => name === "text");
  return text === undefined ? null : textBox(text).text;
}

test("a piece that lies turned says so beside its size, one that does not never", () => {
  let turnedOnes = 0;
  for (const example of examples) {
    const root = readStrictly(draw(example));
    for (const place of everyElement(root)) {
      if (attributeOf(place, "data-role") !== "piece") continue;
      const label = labelOf(root, attributeOf(place, "id") ?? "") ?? "";
      if (!label.endsWith(", turned")) continue;
      turnedOnes += 1;
      expect(attributeOf(place, "data-turned")).toBe("yes");
    }
  }
  expect(turnedOnes).toBeGreaterThan(3);
  const scored = examples.find(({ name }) => name === "scored-bases-on-letter") as Example;
  const root = readStrictly(draw(scored));
  expect(labelOf(root, "piece-3")).toContain("7 x 5 in, turned");
});

describe("the examples", () => {
  test.each(examples)(
    "$name: is the committed drawing, read back alike by both parsers",
    async (example: Example) => {
      const svg = draw(example);
      await expect(svg).toMatchFileSnapshot(`../examples/${example.name}.svg`);

      const root = readStrictly(svg);
      const drawn = readLayout(root);
      expect(readLayout(readWithSvgson(svg))).toEqual(drawn);
      const { sheet, layout, kerf } = firstLayout(example);
      const laidOut = layOut(sheet, layout, kerf);
      const bottomUp = [...laidOut.pieces].sort((a, b) => a.level - b.level);
      expectBoxes(drawn.pieces, bottomUp);
      expect(drawn.pieces.map(({ shares }) => shares)).toEqual(bottomUp.map(({ shares }) => shares));
      expectBoxes(drawn.trims, laidOut.trims);
      expectBoxes(drawn.windows, laidOut.windows);
      expectBoxes(
        [...drawn.offcuts, ...drawn.waste],
        ["offcut", "waste"].flatMap((what) =>
          [0, 1].flatMap((level) =>
            laidOut.leftovers.filter((left) => left.what === what && left.level === level),
          ),
        ),
      );
      expect(drawn.sheet).toEqual({
        id: sheet.id,
        run: layout.run,
        width: sheet.width / TICKS_PER_MM,
        height: sheet.height / TICKS_PER_MM,
        marks: example.marks?.sheets[sheet.id] ?? null,
      });
      expectWellSet(root);
    },
  );

  test.each(examples)(
    "$name: can be drawn without cuts, then no number stands on a cut",
    (example: Example) => {
      const root = readStrictly(draw(example, false));
      expect(everyElement(root).map((found) => attributeOf(found, "data-role"))).not.toContain("cut");
      expect(everyElement(root).map((found) => attributeOf(found, "id"))).not.toContain("cut-numbers");
      expectWellSet(root);
    },
  );
});

describe("drawLayout", () => {
  const strips = plan(
    [kind("a", inch(4), inch(2), "Mat")],
    [{ id: "s", name: "Cream", width: inch(8.5), height: inch(11) }],
    [
      {
        sheet: "s",
        run: 3,
        tree: split(
          "y",
          inch(11),
          repeat(5, inch(2), split("x", inch(8.5), repeat(2, inch(4), piece({ kind: "a", count: 3 })))),
        ),
      },
    ],
  );

  test("says sheet, size, run and yield in plain words", () => {
    const texts = textBoxes(readStrictly(draw(strips))).map(({ text }) => text);
    // 10 x (4 x 2) of 8 1/2 x 11 in: 80 / 93.5.
    expect(texts).toEqual(
      expect.arrayContaining([
        "Cream",
        "8 1/2 x 11 in",
        "Cut 3 sheets like this",
        "85.6 % of the sheet used",
      ]),
    );
    expect(texts).toContain("4 x 2 in; 10 a sheet, 30 in all");
    expect(texts).toContain("line up top edge at 2 in");
    expect(texts.join("\n")).not.toMatch(/kerf|guillotine/i);
  });

  test("speaks of the kerf only where it is set", () => {
    const { problem, packing } = strips;
    const svg = drawLayout(
      { ...problem, kerf: inch(1 / 64) },
      { ...packing, layouts: [{ sheet: "s", run: 1, tree: offcut }] },
      0,
    );
    expect(svg).toContain("each cut takes 1/64 in (kerf)");
  });

  test("writes lengths in millimetres when asked", () => {
    const svg = drawLayout(strips.problem, strips.packing, 0, { unit: "mm" });
    expect(svg).toContain(">215.9 x 279.4 mm<");
    expect(svg).toContain(">101.6 x 50.8 mm<");
  });

  test("draws the check ruler 100 mm and 4 in long, and a 50 mm square", () => {
    const root = readStrictly(draw(strips));
    const lengthOf = (id: string) => {
      const line = byId(root, id);
      expect(numberOf(line, "y1")).toBe(numberOf(line, "y2"));
      return numberOf(line, "x2") - numberOf(line, "x1");
    };
    expect(lengthOf("ruler-100-mm")).toBeCloseTo(100, 9);
    expect(lengthOf("ruler-4-in")).toBeCloseTo(101.6, 9);
    expect(rectBox(byId(root, "square-50-mm"))).toMatchObject({ width: 50, height: 50 });
    expect(textBoxes(root).map(({ text }) => text)).toContain(
      "Measure this after printing; if it is not 100 mm, print at 100 % / actual size.",
    );
  });

  test("labels a shared place with every name and its count, and by number where that is too long", () => {
    const shared = (width: number) => {
      const both = piece({ kind: "3b", count: 8 }, { kind: "5a", count: 4 });
      return plan(
        [kind("5a", inch(width), inch(1)), kind("3b", inch(width), inch(1))],
        [{ id: "s", width: inch(6), height: inch(1) }],
        [{ sheet: "s", run: 12, tree: split("x", inch(6), [[inch(width), both]]) }],
      );
    };
    expect(labelOf(readStrictly(draw(shared(2), false)), "piece-1")).toBe("5a x 4, 3b x 8 | 2 x 1 in");
    const narrow = readStrictly(draw(shared(0.375), false));
    expect(labelOf(narrow, "piece-1")).toMatch(/^(5a x 4, 3b x 8(, | \| )3\/8 x 1 in|5a x 4, 3b x 8)$/);
    const tiny = readStrictly(draw(shared(0.25), false));
    expect(labelOf(tiny, "piece-1")).toBe("5a x 4, 3b x 8");
  });

  test("says that a place is an offcut on the sheets that no share claims", () => {
    const some = plan(
      [kind("a", inch(4), inch(4), "Mat")],
      [{ id: "s", width: inch(4), height: inch(4) }],
      [{ sheet: "s", run: 5, tree: piece({ kind: "a", count: 3 }) }],
    );
    expect(labelOf(readStrictly(draw(some)), "piece-1")).toBe("Mat x 3, offcut x 2 | 4 x 4 in");
  });

  test("gives small pieces the number of their list entry", () => {
    const small = plan(
      [kind("a", inch(1 / 4), inch(1 / 4), "Corner mark")],
      [{ id: "s", width: inch(1), height: inch(1) }],
      [
        {
          sheet: "s",
          run: 1,
          tree: split("x", inch(1), [
            [inch(1 / 4), split("y", inch(1), [[inch(1 / 4), piece({ kind: "a" })]])],
          ]),
        },
      ],
    );
    const root = readStrictly(draw(small));
    expect(labelOf(root, "piece-1")).toBe("1");
    expect(textBoxes(root).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["Corner mark", "1/4 x 1/4 in; 1 piece"]),
    );
  });

  test("leaves a piece without label where no legible text fits, and still lists it", () => {
    const sliver = plan(
      [kind("a", inch(1 / 16), inch(1), "Thread")],
      [{ id: "s", width: inch(1), height: inch(1) }],
      [{ sheet: "s", run: 1, tree: split("x", inch(1), [[inch(1 / 16), piece({ kind: "a" })]]) }],
    );
    const root = readStrictly(draw(sliver));
    expect(labelOf(root, "piece-1")).toBe(null);
    expect(textBoxes(root).map(({ text }) => text)).toContain("Thread");
  });

  const squares = (side: number) => {
    const count = 3 / side;
    const row = split("x", inch(3), repeat(count, inch(side), piece({ kind: "a" })));
    return plan(
      [kind("a", inch(side), inch(side), "Lantern glow")],
      [{ id: "s", width: inch(3), height: inch(3) }],
      [{ sheet: "s", run: 1, tree: split("y", inch(3), repeat(count, inch(side), row)) }],
    );
  };
  const cutNumbersOf = (root: ReadElement) =>
    everyElement(root).filter((found) => /^cut-number-\d+$/.test(attributeOf(found, "id"))).length;

  test("lets names give way to numbers where cut numbers would find no place near their cuts", () => {
    const root = readStrictly(draw(squares(0.5)));
    expect(labelOf(readStrictly(draw(squares(0.5), false)), "piece-1")).toBe("Lantern | glow");
    expect(labelOf(root, "piece-1")).toBe("1");
    expect(cutNumbersOf(root)).toBe(35);
    expect(everyElement(root).some(({ name }) => name === "polyline")).toBe(false);
    expectWellSet(root);
  });

  test("leaves cut numbers out of a crowded sheet rather than draw what nobody can follow, and says so", () => {
    const root = readStrictly(draw(squares(0.25)));
    const numbers = cutNumbersOf(root);
    expect(numbers).toBeLessThan(143);
    expect(
      textBoxes(root)
        .map(({ text }) => text)
        .join(" "),
    ).toContain(`no room on the sheet for ${143 - numbers} cut numbers: go by the cut list`);
    expectWellSet(root);
  });

  test("keeps the whole of a name that is shortened on its piece", () => {
    const name = "Straßenlaternenbeleuchtungsanlage";
    const long = plan(
      [kind("a", inch(1), inch(1), name)],
      [{ id: "s", width: inch(1), height: inch(1) }],
      [{ sheet: "s", run: 1, tree: piece({ kind: "a" }) }],
    );
    const root = readStrictly(draw(long));
    expect(labelOf(root, "piece-1")).toMatch(/^1 Straß.*… \| 1 x 1 in$/);
    expect(textBoxes(root).map(({ text }) => text)).toContain(name);
  });

  test("names the layout among several and draws the one asked for", () => {
    const { problem, packing } = examples[0] as Example;
    expect(drawLayout(problem, packing, 1)).toContain("layout 2 of 2: Cut 1 sheet like this");
    expect(() => drawLayout(problem, packing, 2)).toThrow("layouts[2]: the packing has 2 layouts");
    expect(() => drawLayout({ ...problem, sheets: [] }, packing, 0)).toThrow(RangeError);
  });

  test("draws the same bytes again", () => {
    const example = examples[2] as Example;
    expect(draw(example)).toBe(draw(structuredClone(example)));
  });

  test("draws every plan at its place, labels inside their pieces, nothing over anything, nothing off the page", () => {
    fc.assert(
      fc.property(randomPlan({ windows: true }), (random) => {
        const { sheet, layout, kerf } = firstLayout(random);
        const cuts = plainCutOrder(random, 0);
        const root = readStrictly(drawLayout(random.problem, random.packing, 0, { cuts }));
        expectWellSet(root);

        const drawn = readLayout(root);
        expect(drawn.cuts.map(({ number }) => number)).toEqual(cuts.cuts.map(({ number }) => number));
        if (cuts.cuts.length <= 100) expect(cutNumbersOf(root)).toBe(cuts.cuts.length);
        const laidOut = layOut(sheet, layout, kerf);
        expectBoxes(
          drawn.pieces,
          [...laidOut.pieces].sort((a, b) => a.level - b.level),
        );
        if (laidOut.windows.length > 0) return;
        // Placements are worked out by the packing package with code of its own.
        const planned = placements(sheet, layout, kerf).filter(({ node }) => node.type === "piece");
        expectBoxes(drawn.pieces, planned);
      }),
    );
  });
});
