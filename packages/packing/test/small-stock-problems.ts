import fc from "fast-check";
import type { Aim, Form, Kind, Problem, Sheet } from "../src/index.js";

/** A value that about one case in `oneIn` has, else undefined. */
function now<V>(value: fc.Arbitrary<V>, oneIn: number): fc.Arbitrary<V | undefined> {
  return fc.nat(oneIn - 1).chain((n) => (n === 0 ? value : fc.constant(undefined)));
}

const extent = fc.integer({ min: 4, max: 20 });

const form: fc.Arbitrary<Form> = fc.record({
  width: extent,
  height: extent,
  turns: now(fc.constantFrom("upright" as const, "turned" as const), 3),
  sheets: now(
    fc.constantFrom(
      [{ sheet: "small" }],
      [{ sheet: "large" }, { sheet: "small", turns: "upright" as const }],
    ),
    6,
  ),
});

function kindOf(index: number, aim: Aim): fc.Arbitrary<Kind> {
  return fc
    .record({
      quantity: fc.integer({ min: 1, max: 3 }),
      forms: fc.oneof(
        { weight: 3, arbitrary: fc.tuple(form) },
        { weight: 1, arbitrary: fc.tuple(form, form) },
      ),
      value: now(fc.integer({ min: 0, max: 300 }), 3),
      least: aim === "fill" ? now(fc.integer({ min: 0, max: 2 }), 3) : fc.constant(undefined),
      together: now(fc.constant("one sheet"), 5),
      set: now(fc.record({ of: fc.constantFrom("a", "b"), each: fc.integer({ min: 1, max: 2 }) }), 2),
    })
    .map((kind) => ({
      id: `k${index}`,
      ...kind,
      least: kind.least === undefined ? undefined : Math.min(kind.least, kind.quantity),
    }));
}

function sheetOf(id: string, sides: { readonly min: number; readonly max: number }): fc.Arbitrary<Sheet> {
  return fc
    .record({
      width: fc.integer(sides),
      height: fc.integer(sides),
      stock: fc.integer({ min: 0, max: 3 }),
      // By area, any, or nothing as for an offcut.
      cost: fc.oneof(fc.constant(undefined), fc.integer({ min: 1, max: 9 }), fc.constant(0)),
    })
    .map((sheet) => ({ id, ...sheet }));
}

/** Problems of up to seven copies on two sizes of sheets with limited stock, small enough to look at everything. */
export function smallStockProblem(aim: Aim): fc.Arbitrary<Problem> {
  return fc
    .integer({ min: 1, max: 4 })
    .chain((kinds) =>
      fc.record({
        kinds: fc.tuple(...Array.from({ length: kinds }, (_, i) => kindOf(i, aim))),
        sheets: fc.tuple(sheetOf("large", { min: 18, max: 30 }), sheetOf("small", { min: 10, max: 20 })),
        kerf: fc.oneof(fc.constant(0), fc.nat(2)),
      }),
    )
    .filter(({ kinds }) => kinds.reduce((sum, kind) => sum + (kind.quantity ?? 0), 0) <= 7)
    .map((problem): Problem => ({ ...problem, mode: "guillotine", aim }));
}
