import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isWithin, parentOf, pathOf, pathTo } from "../../src/project-file/value-path.js";

describe("paths of values", () => {
  it("are written as a maker reads them", () => {
    expect(pathOf(["cards", 2, "front", 0, "border"])).toBe("cards[2].front[0].border");
    expect(pathOf(["trimmer", "longest-cut"])).toBe("trimmer.longest-cut");
    expect(pathOf(["papers", "off white"])).toBe('papers["off white"]');
    expect(pathOf([])).toBe("");
  });

  it("cut a key that is too long", () => {
    expect(pathTo("papers", "x".repeat(100)).length).toBeLessThan(60);
  });

  it("know what stands below them", () => {
    expect(isWithin("cards[1].name", "cards[1]")).toBe(true);
    expect(isWithin("cards[1]", "cards[1]")).toBe(true);
    expect(isWithin("cards[12].name", "cards[1]")).toBe(false);
    expect(isWithin("papers.nightly", "papers.night")).toBe(false);
    expect(isWithin("title", "")).toBe(true);
  });

  it("lead to the top from what is no path", () => {
    expect([parentOf("a."), parentOf("]"), parentOf("")]).toEqual(["", "", ""]);
  });

  it("find the way up from any key", () => {
    const step = fc.oneof(
      fc.nat({ max: 30 }),
      fc.string({ minLength: 1, maxLength: 8 }),
      fc.constantFrom("a.b", 'a"]', "[0]"),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 5 }), step, (steps, last) => {
        const path = pathOf(steps);
        expect(parentOf(pathTo(path, last))).toBe(path);
        expect(isWithin(pathTo(path, last), path)).toBe(true);
      }),
    );
  });
});
