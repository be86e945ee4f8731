import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Kind, type Problem, pack, type Turns, verify } from "../../../src/index.js";
import { type RandomStream, randomStream } from "../../../src/search/random-stream.js";

interface Cut {
  readonly width: number;
  readonly height: number;
}

/** Cuts a part edge to edge into so many pieces, at places drawn by lot, with nothing left over. */
function cutUp(part: Cut, pieces: number, kerf: number, random: RandomStream): readonly Cut[] {
  const { width, height } = part;
  const isAcross = width > height;
  const side = isAcross ? width : height;
  if (pieces === 1 || side < 10 + kerf) return [part];
  const at = 5 + random.below(side - kerf - 9);
  const rest = side - at - kerf;
  const share = Math.min(pieces - 1, Math.max(1, Math.round((pieces * at) / side)));
  const parts = isAcross
    ? [
        { width: at, height },
        { width: rest, height },
      ]
    : [
        { width, height: at },
        { width, height: rest },
      ];
  return [
    ...cutUp(parts[0] as Cut, share, kerf, random),
    ...cutUp(parts[1] as Cut, pieces - share, kerf, random),
  ];
}

function problemOf(
  sheets: readonly Cut[],
  pieces: number,
  kerf: number,
  turns: Turns,
  seed: number,
): Problem {
  const random = randomStream(seed, 0);
  const cuts = sheets.flatMap((sheet) => cutUp(sheet, pieces, kerf, random));
  return {
    kinds: cuts.map((cut, i): Kind => {
      const lies = turns === "both" && random.below(2) === 0;
      const [width, height] = lies ? [cut.height, cut.width] : [cut.width, cut.height];
      return { id: `${i + 1}`, quantity: 1, forms: [{ width, height, turns }] };
    }),
    sheets: sheets.map((sheet, i) => ({ id: `s${i + 1}`, ...sheet, stock: 2 })),
    mode: "guillotine",
    aim: "all",
    ...(kerf > 0 ? { kerf } : {}),
  };
}

const SHEETS = [
  { width: 425, height: 1000 },
  { width: 575, height: 640 },
];

describe("a plan of joined pieces", () => {
  test.each([
    ["that may not turn", 15, 0, "upright"],
    ["that may not turn, with a kerf", 15, 3, "upright"],
    ["that may turn", 12, 0, "both"],
    ["that may turn, with a kerf", 12, 2, "both"],
  ] as const)("finds sheets cut up without waste again, from pieces %s", (_, pieces, kerf, turns) => {
    for (const seed of [1, 2, 3]) {
      const problem = problemOf(SHEETS, pieces, kerf, turns, seed);
      const packing = pack(problem, { effort: "standard", seed: 1 });
      expect([packing.sheets, packing.cost]).toEqual([2, String(425 * 1000 + 575 * 640)]);
      expect(verify(problem, packing)).toEqual([]);
    }
  });

  test("is right where pieces may come from some sheets only, turn on some, and cuts are short", () => {
    const size = fc.record({
      width: fc.integer({ min: 20, max: 60 }),
      height: fc.integer({ min: 20, max: 60 }),
    });
    const turns = fc.constantFrom<Turns>("upright", "turned", "both");
    const use = fc.array(fc.record({ sheet: fc.constantFrom("s1", "s2"), turns }), {
      minLength: 1,
      maxLength: 1,
    });
    const each = fc.record({ uses: use, isFree: fc.boolean() });
    fc.assert(
      fc.property(
        size,
        size,
        fc.array(each, { minLength: 20, maxLength: 20 }),
        fc.nat(99),
        fc.boolean(),
        (a, b, uses, seed, short) => {
          const plain = problemOf([a, b], 8, 0, "both", seed);
          const problem: Problem = {
            ...plain,
            kinds: plain.kinds.map((kind, i): Kind => {
              const { uses: sheets, isFree } = uses[i] as (typeof uses)[number];
              return isFree ? kind : { ...kind, forms: kind.forms.map((form) => ({ ...form, sheets })) };
            }),
            sheets: plain.sheets.map((sheet) => (short ? { ...sheet, longestCut: 40 } : sheet)),
          };
          expect(verify(problem, pack(problem, { effort: "quick", seed: 1 }))).toEqual([]);
        },
      ),
      { numRuns: 30 },
    );
  });
});
