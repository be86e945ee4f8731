import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { costText, costUnits } from "../../src/group/cost-units.js";

describe("costs", () => {
  test.each([
    ["0", 0n, "0.00"],
    ["0.35", 3500n, "0.35"],
    ["1.2", 12_000n, "1.20"],
    ["12", 120_000n, "12.00"],
    ["0.3333", 3333n, "0.3333"],
    ["0.125", 1250n, "0.125"],
    ["90071992547409.93", 900_719_925_474_099_300n, "90071992547409.93"],
  ])("%s are %s ten-thousandths, and told as %s", (text, units, told) => {
    expect(costUnits(text)).toBe(units);
    expect(costText(units)).toBe(told);
  });

  test.each(["", "-1", "1.", ".5", "1.00001", "1e3", "1,2"])("refuses %j", (text) => {
    expect(() => costUnits(text)).toThrow(RangeError);
  });

  test("come back as they were told", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 20n }), (units) => {
        expect(costUnits(costText(units))).toBe(units);
      }),
    );
  });
});
