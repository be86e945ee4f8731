import { describe, expect, test } from "vitest";
import { findNamedSize, inches, type Size } from "../../src/index.js";

const sizeOf = (id: string): Size => {
  const size = findNamedSize(id, "sheet");
  if (size === undefined) throw new Error(`There is no sheet ${id}.`);
  return { width: size.width, height: size.height };
};

describe("ASME Y14.1 drawing sheets", () => {
  // ASME Y14.1: A is 8 1/2 x 11 in, and each size to E is two of the one before, side by side.
  test("A is letter, and each of B to E is two of the one before", () => {
    expect(sizeOf("asme-a")).toEqual({ width: inches(8.5), height: inches(11) });
    for (const [smaller, larger] of ["ab", "bc", "cd", "de"].map((pair) => pair.split(""))) {
      const { width, height } = sizeOf(`asme-${smaller}`);
      expect(sizeOf(`asme-${larger}`)).toEqual({ width: height, height: 2 * width });
    }
  });

  test("F stands apart with 28 x 40 in", () => {
    expect(sizeOf("asme-f")).toEqual({ width: inches(28), height: inches(40) });
  });

  test("A and B are letter and tabloid under their other names", () => {
    expect(sizeOf("asme-a")).toEqual(sizeOf("us-letter"));
    expect(sizeOf("asme-b")).toEqual(sizeOf("us-tabloid"));
    expect(sizeOf("ansi-d")).toEqual(sizeOf("asme-d"));
  });
});
