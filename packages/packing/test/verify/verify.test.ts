import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verify } from "../../src/verify/verify.js";
import { validPlans } from "../valid-plan.js";

describe("verify", () => {
  it("accepts every plan that is right by construction", () => {
    fc.assert(
      fc.property(validPlans(), ({ problem, packing }) => {
        expect(verify(problem, packing)).toEqual([]);
      }),
    );
  });
});
