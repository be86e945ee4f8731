import fc from "fast-check";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import { cosineAndSineOfDegrees, mapPoint, parseTransform } from "../../src/svg/matrix.js";

const anyNumber = fc.integer({ min: -4000, max: 4000 }).map((n) => n / 16);
const anyTransform = fc.oneof(
  fc.tuple(anyNumber, anyNumber).map(([x, y]) => `translate(${x},${y})`),
  anyNumber.map((x) => `translate(${x})`),
  fc.tuple(anyNumber, anyNumber).map(([x, y]) => `scale(${x / 100} ${y / 100})`),
  anyNumber.map((x) => `scale( ${x / 100} )`),
  anyNumber.map((angle) => `rotate(${angle})`),
  fc.tuple(anyNumber, anyNumber, anyNumber).map(([angle, x, y]) => `rotate(${angle} ${x} ${y})`),
  fc.integer({ min: -80, max: 80 }).map((angle) => `skewX(${angle})`),
  fc.integer({ min: -80, max: 80 }).map((angle) => `skewY(${angle})`),
  fc
    .tuple(anyNumber, anyNumber, anyNumber, anyNumber)
    .map(([a, b, c, d]) => `matrix(${a / 100} ${b / 100} ${c / 100} ${d / 100} ${a} ${b})`),
);

describe("transforms", () => {
  test("a quarter turn is exact", () => {
    expect([90, -90, 180, 270, 450, -360].map(cosineAndSineOfDegrees)).toEqual([
      [expect.closeTo(0, 20), 1],
      [expect.closeTo(0, 20), -1],
      [-1, expect.closeTo(0, 20)],
      [expect.closeTo(0, 20), -1],
      [expect.closeTo(0, 20), 1],
      [1, expect.closeTo(0, 20)],
    ]);
    const turn = parseTransform("rotate(90)");
    expect(mapPoint(turn as never, { x: 3, y: 4 })).toEqual({ x: -4, y: 3 });
  });

  test("any list maps a point where a second reader maps it", () => {
    fc.assert(
      fc.property(
        fc.array(anyTransform, { minLength: 1, maxLength: 4 }),
        fc.constantFrom("", " ", ", "),
        anyNumber,
        anyNumber,
        (list, between, x, y) => {
          const matrix = parseTransform(list.join(between));
          expect(matrix).not.toBeNull();
          const found = mapPoint(matrix as never, { x, y });
          let expected: readonly [number, number] = [0, 0];
          svgpath(`M${x} ${y}`)
            .transform(list.join(" "))
            .iterate((segment) => {
              expected = [segment[1] as number, segment[2] as number];
            });
          const size = 1 + Math.abs(expected[0]) + Math.abs(expected[1]);
          expect(Math.abs(found.x - expected[0]) / size).toBeLessThan(1e-6);
          expect(Math.abs(found.y - expected[1]) / size).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test.each(["", " ", "none", "scale(1)", "translate(1px, 2px)", "rotate(30deg)", "scaleX(2) translateY(3)"])(
    "%j is one",
    (text) => expect(parseTransform(text)).not.toBeNull(),
  );

  test.each([
    "turn(3)",
    "scale",
    "scale()",
    "scale(1",
    "scale(1 2 3)",
    "rotate(1 2)",
    "matrix(1 2 3 4 5)",
    "skewX(90)",
  ])("%j is none", (text) => expect(parseTransform(text)).toBeNull());
});
