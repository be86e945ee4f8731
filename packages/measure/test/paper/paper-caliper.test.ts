import { describe, expect, it } from "vitest";
import { estimateCaliper, type PaperSort, TICKS_PER_INCH, TICKS_PER_MM } from "../../src/index.js";

describe("the estimated thickness of paper", () => {
  // Planning figures of caliper charts; those of uncoated cover lie within the ranges that charts give (from memory).
  it.each<[number, PaperSort, number, number]>([
    [176, "uncoated", 0.0085, 0.0095],
    [216, "uncoated", 0.01, 0.0125],
    [270, "uncoated", 0.013, 0.0145],
    [297, "uncoated", 0.0145, 0.0155],
    [352, "uncoated", 0.0175, 0.019],
  ])("of %d g/m2 cover lies in the range of the charts", (grammage, sort, least, most) => {
    const inches = estimateCaliper(grammage, sort) / TICKS_PER_INCH;
    expect(inches).toBeGreaterThanOrEqual(least);
    expect(inches).toBeLessThanOrEqual(most);
  });

  // Caliper charts of the paper trade: bond 20, 24, 28, 32 lb, uncoated cover, coated text and cover; within a tenth.
  it.each<[number, PaperSort, number]>([
    [75, "uncoated", 0.102],
    [90, "uncoated", 0.114],
    [105, "uncoated", 0.132],
    [120, "uncoated", 0.152],
    [250, "uncoated", 0.33],
    [300, "uncoated", 0.396],
    [200, "coated", 0.203],
    [350, "coated", 0.356],
  ])("of %d g/m2 %s paper is within a tenth of the chart's", (grammage, sort, millimetres) => {
    expect(Math.abs(estimateCaliper(grammage, sort) / TICKS_PER_MM / millimetres - 1)).toBeLessThan(0.1);
  });

  it("is never nothing", () => {
    expect(estimateCaliper(0.01)).toBe(1);
  });
});
