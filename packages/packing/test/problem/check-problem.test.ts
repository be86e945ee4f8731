import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkProblem, ProblemError, type ProblemFaultCode, pack } from "../../src/index.js";
import { anyProblem } from "../problems.js";

const sound = {
  mode: "guillotine",
  aim: "all",
  kinds: [{ id: "mat", quantity: 2, forms: [{ width: 4, height: 5 }] }],
  sheets: [{ id: "letter", width: 17, height: 22 }],
};
const kind = sound.kinds[0];
const sheet = sound.sheets[0];
const form = { width: 4, height: 5 };

describe("checkProblem", () => {
  test("finds nothing wrong with a sound problem", () => {
    expect(checkProblem(sound)).toEqual([]);
  });

  const faults: readonly [string, unknown, ProblemFaultCode, string][] = [
    ["no object", null, "not-an-object", ""],
    ["a list of lists", { ...sound, kinds: [[]] }, "not-an-object", "kinds[0]"],
    ["kinds that are no list", { ...sound, kinds: {} }, "not-a-list", "kinds"],
    ["an unknown mode", { ...sound, mode: "saw" }, "not-one-of", "mode"],
    ["an unknown aim", { ...sound, aim: "some" }, "not-one-of", "aim"],
    ["stopped cuts", { ...sound, mode: "stopped" }, "not-yet", "mode"],
    ["a kerf of half a tick", { ...sound, kerf: 0.5 }, "not-a-length", "kerf"],
    ["no stage at all", { ...sound, stages: 0 }, "not-a-count", "stages"],
    ["a kind without a form", { ...sound, kinds: [{ ...kind, forms: [] }] }, "no-form", "kinds[0].forms"],
    [
      "a piece without width",
      { ...sound, kinds: [{ ...kind, forms: [{ width: 0, height: 5 }] }] },
      "not-a-length",
      "kinds[0].forms[0].width",
    ],
    [
      "a length past ten metres",
      { ...sound, sheets: [{ ...sheet, width: 16_777_216 }] },
      "not-a-length",
      "sheets[0].width",
    ],
    [
      "a fraction of a copy",
      { ...sound, kinds: [{ ...kind, quantity: 1.5 }] },
      "not-a-count",
      "kinds[0].quantity",
    ],
    [
      "copies without limit",
      { ...sound, kinds: [{ ...kind, quantity: null }] },
      "unlimited",
      "kinds[0].quantity",
    ],
    ["sheets without limit to fill", { ...sound, aim: "fill" }, "unlimited", "sheets[0].stock"],
    ["two kinds of one id", { ...sound, kinds: [kind, kind] }, "duplicate-id", "kinds[1].id"],
    ["two sheets of one id", { ...sound, sheets: [sheet, sheet] }, "duplicate-id", "sheets[1].id"],
    ["an id that is no text", { ...sound, kinds: [{ ...kind, id: 7 }] }, "not-text", "kinds[0].id"],
    [
      "a form from an unknown sheet",
      { ...sound, kinds: [{ ...kind, forms: [{ ...form, sheets: [{ sheet: "leter" }] }] }] },
      "unknown-sheet",
      "kinds[0].forms[0].sheets[0].sheet",
    ],
    [
      "a form with a sheet twice",
      {
        ...sound,
        kinds: [{ ...kind, forms: [{ ...form, sheets: [{ sheet: "letter" }, { sheet: "letter" }] }] }],
      },
      "duplicate-sheet",
      "kinds[0].forms[0].sheets[1].sheet",
    ],
    [
      "an unknown turn",
      { ...sound, kinds: [{ ...kind, forms: [{ ...form, turns: "yes" }] }] },
      "not-one-of",
      "kinds[0].forms[0].turns",
    ],
    [
      "a trim that takes all",
      { ...sound, sheets: [{ ...sheet, trim: { left: 9, right: 8 } }] },
      "nothing-usable",
      "sheets[0].trim",
    ],
    [
      "a trim that the tool cannot cut",
      { ...sound, sheets: [{ ...sheet, longestCut: 20, trim: { left: 1 } }] },
      "trim-not-cuttable",
      "sheets[0].trim",
    ],
    [
      "more at least than at most",
      { ...sound, kinds: [{ ...kind, least: 3 }] },
      "least-over-quantity",
      "kinds[0].least",
    ],
    [
      "a window outside its piece",
      {
        ...sound,
        kinds: [
          { ...kind, forms: [{ ...form, hidden: { x: 2, y: 0, width: 3, height: 1, tool: "knife" } }] },
        ],
      },
      "hidden-outside",
      "kinds[0].forms[0].hidden",
    ],
    [
      "a set of nothing",
      { ...sound, kinds: [{ ...kind, set: { of: "card", each: 0 } }] },
      "not-a-count",
      "kinds[0].set.each",
    ],
    ["a cost below zero", { ...sound, sheets: [{ ...sheet, cost: -1 }] }, "not-a-count", "sheets[0].cost"],
  ];

  test.each(faults)("names %s", (_title, problem, code, path) => {
    const findings = checkProblem(problem);
    expect(findings.map((finding) => [finding.code, finding.path])).toContainEqual([code, path]);
    for (const finding of findings) expect(finding.message).toMatch(/\.$/);
  });

  test("names every fault at once, and the error shows the first ten", () => {
    const kinds = Array.from({ length: 12 }, (_, i) => ({ id: `${i}`, quantity: -1, forms: [form] }));
    const error = (() => {
      try {
        return pack({ ...sound, kinds } as never);
      } catch (thrown) {
        return thrown;
      }
    })();
    expect(error).toBeInstanceOf(ProblemError);
    expect((error as ProblemError).details).toHaveLength(12);
    expect((error as ProblemError).message.split("\n")).toHaveLength(11);
    expect((error as ProblemError).message).toContain("2 more of the kind follow.");
  });

  test("takes any value whatever without an exception", () => {
    fc.assert(fc.property(fc.anything(), (value) => void checkProblem(value)));
    const near = fc.record({
      mode: fc.anything(),
      aim: fc.anything(),
      kinds: fc.array(fc.anything()),
      sheets: fc.array(fc.anything()),
    });
    fc.assert(fc.property(near, (value) => void checkProblem(value)));
  });

  test("finds nothing wrong with any problem that the search plans", () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        expect(checkProblem(problem)).toEqual([]);
      }),
    );
  });
});
