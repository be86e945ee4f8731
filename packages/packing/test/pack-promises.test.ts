import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Packing, type Problem, pack, verify } from "../src/index.js";
import { anyProblem } from "./problems.js";

const quick = (problem: Problem, seed = 1): Packing => pack(problem, { effort: "quick", seed });

describe("pack, for any problem", () => {
  test("gives out only plans that verify (promises 1 and 3)", () => {
    fc.assert(
      fc.property(anyProblem, fc.nat(1000), (problem, seed) => {
        expect(verify(problem, quick(problem, seed))).toEqual([]);
      }),
    );
  });

  test("gives the same bytes for the same input and seed (promise 2)", () => {
    fc.assert(
      fc.property(anyProblem, fc.nat(1000), (problem, seed) => {
        const again = JSON.parse(JSON.stringify(problem)) as Problem;
        expect(JSON.stringify(quick(again, seed))).toBe(JSON.stringify(quick(problem, seed)));
      }),
    );
  });
});
