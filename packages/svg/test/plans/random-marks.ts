import { millimetres } from "@sheetwright/measure";
import type { FoldDirection, FormMarks, LayoutMarks, SheetMarks, Slit } from "@sheetwright/planner";
import { outlineOf, stitch } from "@sheetwright/shapes";
import fc from "fast-check";
import { inch, type Plan } from "./build.js";
import { randomPlan } from "./random-plan.js";

/** A random plan with random marks of its sheet and forms. */
export interface MarkedPlan extends Plan {
  readonly marks: LayoutMarks;
}

const UNIT = inch(1 / 16);
const GRAINS: readonly SheetMarks["grain"][] = ["width", "height", "none", "unknown"];
const FOLDS: readonly FoldDirection[] = ["mountain", "valley", "both"];
const DIES = ["star", "nested scalloped ovals no. 3, second from the largest & “stitched”", "x".repeat(60)];
/** Smaller dies are known by their size alone. */
const LEAST_SHAPE = millimetres(12);

type Die = NonNullable<FormMarks["die"]>;

const PATTERNS: readonly SheetMarks["pattern"][] = ["none", "two-way", "one-way"];

/**
 * Random plans whose forms have up to three scores along either side, at sixteenths or at any tick, folding either way, up
 * to two slits, a die, some with a shape, tops and printed backs that may differ for turned copies; some sheets and kinds have no marks. All decisions follow from a seed.
 */
export function randomMarkedPlan(options: { readonly windows?: boolean } = {}): fc.Arbitrary<MarkedPlan> {
  return fc
    .tuple(randomPlan(options), fc.nat())
    .map(([plan, seed]) => ({ ...plan, marks: marksFor(plan, seed) }));
}

function marksFor({ problem }: Plan, seed: number): LayoutMarks {
  let state = seed;
  // The linear congruential generator of Numerical Recipes (Press et al.); its high bits vary best.
  const choose = (below: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state >>> 8) % below;
  };
  const sheets = problem.sheets.filter(() => choose(6) !== 0);
  const ids = problem.sheets.map(({ id }) => id);
  const faces = () => ({
    topOn: choose(2) === 0 ? ids : [],
    backOn: choose(4) === 0 ? ids : [],
  });
  const form = ({ width, height }: { readonly width: number; readonly height: number }): FormMarks => {
    const count = choose(5) - 1;
    const scores = Array.from({ length: Math.max(0, count) }, () => {
      const along = choose(2) === 0 ? ("width" as const) : ("height" as const);
      const length = along === "width" ? width : height;
      const whole = Math.round(length / UNIT);
      const choices = [
        () => UNIT * Math.max(1, choose(whole)),
        () => Math.round(length / 2),
        () => 1 + choose(length - 1),
      ];
      const at = (choices[choose(3)] as () => number)();
      return { along, at, ...(choose(2) === 0 ? {} : { folds: FOLDS[choose(3)] ?? "mountain" }) };
    });
    const slits = Array.from({ length: Math.max(0, choose(5) - 2) }, (): Slit => {
      const along = choose(2) === 0 ? ("width" as const) : ("height" as const);
      const [length, across] = along === "width" ? [width, height] : [height, width];
      const from = choose(length);
      return { along, at: 1 + choose(across - 1), from, to: from + 1 + choose(length - from) };
    });
    const cut = { width: 1 + choose(width), height: 1 + choose(height) };
    const size = { name: choose(3) === 0 ? null : (DIES[choose(DIES.length)] ?? "star"), cut };
    const die = Math.min(cut.width, cut.height) < LEAST_SHAPE ? size : { ...size, ...shapeOf(cut) };
    return {
      scores,
      ...(slits.length === 0 ? {} : { slits }),
      ...(choose(5) === 0 ? { die } : {}),
      ...faces(),
      ...(choose(5) === 0 ? { turned: faces() } : {}),
    };
  };
  const shapeOf = (cut: { readonly width: number; readonly height: number }): Partial<Die> => {
    const [short, long] = [Math.min(cut.width, cut.height), Math.max(cut.width, cut.height)];
    const isRound = choose(2) === 0 && long < 9 * short;
    const outline = outlineOf(
      isRound ? { shape: "oval", ...cut } : { shape: "rectangle", ...cut, corners: "round" },
    );
    // Few, so that drawing thousands of plans stays quick.
    const pitch = Math.max(millimetres(3), Math.floor(short / 6));
    const { dashes, holes } = stitch(outline, {
      marks: choose(2) === 0 ? "dashes" : "holes",
      dash: Math.floor((2 * pitch) / 3),
      gap: Math.floor(pitch / 3),
    });
    const off = () => (choose(3) === 0 ? 1 + choose(Math.floor(cut.height / 4)) : 0);
    return {
      outline: [outline],
      ...(choose(2) === 0 ? { stitches: { dashes, holes } } : {}),
      ...(choose(3) === 0 ? { trim: { left: 0, right: 0, top: off(), bottom: off() } } : {}),
    };
  };
  const sheetGrain = (): Pick<SheetMarks, "grain" | "grainIsAssumed"> => {
    const grain = GRAINS[choose(4)] ?? "none";
    const isKnown = grain === "width" || grain === "height";
    return { grain, ...(isKnown && choose(3) === 0 ? { grainIsAssumed: true } : {}) };
  };
  return {
    sheets: Object.fromEntries(
      sheets.map(({ id }): [string, SheetMarks] => [
        id,
        {
          ...sheetGrain(),
          pattern: PATTERNS[choose(3)] ?? "none",
          colour: `#${(0x1000000 + choose(0x1000000)).toString(16).slice(1)}`,
        },
      ]),
    ),
    forms: Object.fromEntries(
      problem.kinds.filter(() => choose(5) !== 0).map(({ id, forms }) => [id, forms.map(form)]),
    ),
  };
}
