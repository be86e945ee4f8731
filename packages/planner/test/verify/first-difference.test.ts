import { describe, expect, test } from "vitest";
import { firstDifference, shown } from "../../src/verify/first-difference.js";

describe("firstDifference", () => {
  test.each([
    [1, 1],
    [null, null],
    [
      { a: 1, b: 2 },
      { b: 2, a: 1 },
    ],
    [{ a: undefined }, {}],
    [
      [1, [2]],
      [1, [2]],
    ],
  ])("finds none between %j and %j", (found, expected) => {
    expect(firstDifference(found, expected, "x")).toBeNull();
  });

  test.each([
    [1, "1", "x", "1", '"1"'],
    [{ a: [1, 2] }, { a: [1] }, "x.a[1]", "2", "nothing"],
    [{ a: [1] }, { a: [1, { b: null }] }, "x.a[1]", "nothing", '{"b":null}'],
    [{ a: 0 }, {}, "x.a", "0", "nothing"],
    [{ a: 1 }, [1], "x", '{"a":1}', "[1]"],
    [null, {}, "x", "null", "{}"],
  ])("between %j and %j lies at the first place", (found, expected, path, is, should) => {
    expect(firstDifference(found, expected, "x")).toEqual({ path, found: is, expected: should });
  });

  test("shows long values in short", () => {
    expect(shown("x".repeat(200))).toHaveLength(80);
    expect(shown(() => 0)).toBe("function");
  });
});
