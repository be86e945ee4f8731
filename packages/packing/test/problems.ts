import fc from "fast-check";
import type { Form, Kind, Problem, Sheet, Turns } from "../src/index.js";

const turns = fc.constantFrom<Turns>("upright", "turned", "both");

/** A key that about one case in `oneIn` has. */
function optional<K extends string, V>(
  key: K,
  value: fc.Arbitrary<V>,
  oneIn = 2,
): fc.Arbitrary<{ [P in K]?: V }> {
  return fc
    .oneof({ weight: oneIn - 1, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: value })
    .map((entry) => {
      return (entry === undefined ? {} : { [key]: entry }) as { [P in K]?: V };
    });
}

function merge<T extends object[]>(
  ...parts: { [I in keyof T]: fc.Arbitrary<T[I]> }
): fc.Arbitrary<Record<string, unknown>> {
  return fc.tuple(...(parts as fc.Arbitrary<object>[])).map((entries) => Object.assign({}, ...entries));
}

const extent = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 3, max: 52 }) },
  // Equal sizes and sizes one apart are where off-by-one faults live.
  { weight: 2, arbitrary: fc.constantFrom(10, 11, 20, 21, 40) },
);

/** Problems of every shape the model allows, small enough to plan in milliseconds. */
export const anyProblem: fc.Arbitrary<Problem> = fc
  .record({
    sheetCount: fc.integer({ min: 1, max: 3 }),
    kindCount: fc.integer({ min: 1, max: 6 }),
    limited: fc.boolean(),
  })
  .chain(({ sheetCount, kindCount, limited }) => {
    const sheet = (i: number): fc.Arbitrary<Sheet> =>
      merge(
        fc.record({
          id: fc.constant(`s${i}`),
          width: fc.integer({ min: 20, max: 120 }),
          height: fc.integer({ min: 20, max: 120 }),
        }),
        limited
          ? fc.record({ stock: fc.integer({ min: 0, max: 5 }) })
          : optional("stock", fc.integer({ min: 0, max: 5 }), 3),
        optional("cost", fc.integer({ min: 0, max: 50 }), 3),
        optional(
          "trim",
          fc.record({ left: fc.nat(4), top: fc.nat(4), right: fc.nat(2) }, { requiredKeys: [] }),
          4,
        ),
        // Longer than any trim of these sheets needs.
        optional(
          "longestCut",
          fc.integer({ min: 60, max: 120 }).map((longest) => Math.max(longest, 120 - 40)),
          4,
        ),
      ).map((entry) => {
        const made = entry as unknown as Sheet;
        if (made.longestCut == null || Math.max(made.width, made.height) <= made.longestCut) return made;
        const { trim: _untrimmable, ...rest } = made;
        return rest;
      });
    const form: fc.Arbitrary<Form> = merge(
      fc.record({ width: extent, height: extent }),
      optional("turns", turns),
      optional("sheets", fc.constantFrom([{ sheet: "s0" }], [{ sheet: "s0", turns: "upright" as const }]), 6),
      fc.record({ window: fc.nat(9) }),
    ).map((entry) => {
      const { window, ...made } = entry as unknown as Form & { window: number };
      if (window > 0 || made.width < 8 || made.height < 8) return made;
      const size = { width: made.width - 4, height: made.height - 6 };
      return { ...made, hidden: { x: 2, y: 3, ...size, tool: "knife" } };
    });
    const quantity = fc.oneof({ weight: 6, arbitrary: fc.nat(8) }, { weight: 1, arbitrary: fc.nat(60) });
    const kind = (i: number): fc.Arbitrary<Kind> =>
      merge(
        fc.record({
          id: fc.constant(`k${i}`),
          quantity,
          forms: fc.array(form, { minLength: 1, maxLength: 2 }),
        }),
        optional("together", fc.constant("one sheet"), 6),
        optional("value", fc.nat(500), 3),
        optional("least", fc.nat(4), 4),
        optional(
          "set",
          fc.record({ of: fc.constantFrom("a", "b"), each: fc.integer({ min: 1, max: 2 }) }),
          4,
        ),
      ).map((entry) => entry as unknown as Kind);
    return merge(
      fc.record({
        sheets: fc.tuple(...Array.from({ length: sheetCount }, (_, i) => sheet(i))),
        kinds: fc.tuple(...Array.from({ length: kindCount }, (_, i) => kind(i))),
        mode: fc.constantFrom("guillotine", "shelf"),
        aim: limited ? fc.constantFrom("all", "fill") : fc.constant("all"),
        kerf: fc.oneof(fc.constant(0), fc.nat(4)),
      }),
      optional("stages", fc.integer({ min: 1, max: 5 }), 3),
      optional("smallestOffcut", fc.record({ width: fc.nat(15), height: fc.nat(15) })),
    ).map((entry) => {
      const problem = entry as unknown as Problem;
      return { ...problem, kinds: problem.kinds.map((kind) => amountFor(problem.aim, kind)) };
    });
  });

/** Least numbers are for the aim `fill` alone, and there a kind with no least number may also have no most. */
function amountFor(aim: Problem["aim"], { least, ...kind }: Kind): Kind {
  if (aim === "all") return kind;
  if (least === undefined) return kind.quantity === 5 ? { ...kind, quantity: null } : kind;
  return { ...kind, least: Math.min(least, kind.quantity ?? least) };
}

/** A sheet cut recursively into pieces without any waste, as a list of sizes. */
export function cutWithoutWaste(
  width: number,
  height: number,
  cuts: number,
  kerf: number,
): fc.Arbitrary<readonly Form[]> {
  return fc
    .array(fc.record({ which: fc.nat(), across: fc.boolean(), at: fc.nat() }), { maxLength: cuts })
    .map((choices) => {
      const parts: Form[] = [{ width, height }];
      for (const { which, across, at } of choices) {
        const index = which % parts.length;
        const part = parts[index] as Form;
        const length = across ? part.width : part.height;
        const room = length - kerf - 1;
        if (room < 1) continue;
        const first = 1 + (at % room);
        const rest = length - kerf - first;
        const made = [first, rest].map((size) =>
          across ? { ...part, width: size } : { ...part, height: size },
        );
        parts.splice(index, 1, ...made);
      }
      return parts;
    });
}
