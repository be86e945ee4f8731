import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Problem, pack, verify } from "../src/index.js";
import { anyProblem } from "./problems.js";

describe("pack, for any problem", () => {
  test("gives out only plans that verify, and the same bytes again (promises 1, 2 and 3)", () => {
    fc.assert(
      fc.property(anyProblem, fc.nat(1000), fc.constantFrom(0, 0, 8, 20), (problem, seed, narrowestHold) => {
        const options = { effort: "quick", seed, narrowestHold } as const;
        const packing = pack(problem, options);
        expect(verify(problem, packing)).toEqual([]);
        const copy = JSON.parse(JSON.stringify(problem)) as Problem;
        expect(JSON.stringify(pack(copy, options))).toBe(JSON.stringify(packing));
      }),
    );
  });
});
