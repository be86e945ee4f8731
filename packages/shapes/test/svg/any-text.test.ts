import fc from "fast-check";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import { areaOf, perimeterOf, signedAreaOf } from "../../src/measure/area.js";
import { arcOf } from "../../src/outline/arc.js";
import { checkOutline } from "../../src/outline/check-outline.js";
import { type Outline, type Ring, ringsOf, spansOf } from "../../src/outline/outline.js";
import { OutlineReadError, outlinesOfPath, type ReadOutlines, readOutlines } from "../../src/svg/index.js";
import { IDENTITY } from "../../src/svg/matrix.js";
import { Notes } from "../../src/svg/outline-note.js";
import { Faults } from "../../src/svg/outline-read-error.js";
import { parsePath } from "../../src/svg/path-data.js";
import { ReadBudget } from "../../src/svg/read-budget.js";
import { settingsOf } from "../../src/svg/read-options.js";
import { ringsOfPath } from "../../src/svg/rings-of-path.js";
import { anyOutline } from "../random-outline.js";
import { badFiles, goodFiles } from "./outline-fixtures.js";
import { anyCommand } from "./random-path.js";

/** How path data may be written: absolute or relative, and what stands between numbers. */
const anyHand = fc.record({ isRelative: fc.boolean(), between: fc.constantFrom(" ", ",", "\n", " , ") });

function pathOf(
  ring: Ring,
  { isRelative, between }: { readonly isRelative: boolean; readonly between: string },
): string {
  const spans = spansOf(ring);
  const write = (letter: string, ...numbers: readonly number[]) => letter + numbers.join(between);
  const start = spans[0]?.from ?? { x: 0, y: 0 };
  const parts = spans.map((span) => {
    const { from, to } = span;
    const end = isRelative ? [to.x - from.x, to.y - from.y] : [to.x, to.y];
    const arc = arcOf(span);
    if (arc !== null) {
      const flags = [Math.abs(arc.turn) > Math.PI ? 1 : 0, arc.turn > 0 ? 1 : 0];
      return write(isRelative ? "a" : "A", arc.radius, arc.radius, 0, ...flags, ...end);
    }
    if (from.y === to.y) return write(isRelative ? "h" : "H", end[0] as number);
    return write(isRelative ? "l" : "L", ...end);
  });
  return `${write("M", start.x, start.y)}${parts.join("")}Z`;
}

const areaOfAll = (outlines: readonly Outline[]) =>
  outlines.reduce((sum, outline) => sum + areaOf(outline), 0);

describe("any outline", () => {
  test("reads back from path data with the same area", () => {
    fc.assert(
      fc.property(anyOutline, anyHand, (outline, hand) => {
        const data = ringsOf(outline)
          .map((ring) => pathOf(ring, hand))
          .join(hand.between.trim() === "," ? " " : hand.between);
        const { outlines } = outlinesOfPath(data, { unitsPerInch: 40640, specks: 0 });
        // Arcs are read within a tick, and half of that on average.
        expect(Math.abs(areaOfAll(outlines) - areaOf(outline))).toBeLessThan(perimeterOf(outline));
      }),
    );
  });
});

// The second reader makes cubic curves of everything; the area below a cubic curve is an integral of a polynomial.
// It makes arcs a little too large, by less than 0.03 % of what a quarter of them covers.
function areaBySecondReader(data: string): {
  readonly area: number;
  readonly swept: number;
  readonly length: number;
} {
  let twice = 0;
  let swept = 0;
  let length = 0;
  let start: readonly [number, number] = [0, 0];
  let at = start;
  const line = (to: readonly [number, number]) => {
    const step = at[0] * to[1] - at[1] * to[0];
    twice += step;
    swept += Math.abs(step) / 2;
    length += Math.hypot(to[0] - at[0], to[1] - at[1]);
    at = to;
  };
  svgpath(data)
    .abs()
    .unshort()
    .unarc()
    .iterate((segment, _, x, y) => {
      const [letter, ...numbers] = segment as readonly [string, ...number[]];
      at = [x, y];
      if (letter === "M") {
        start = [numbers[0] as number, numbers[1] as number];
        at = start;
      } else if (letter === "C" || letter === "Q") {
        const points = [
          at,
          ...numbers.flatMap((n, i) => (i % 2 === 0 ? [[n, numbers[i + 1] as number] as const] : [])),
        ];
        const steps = 400;
        for (let step = 1; step <= steps; step += 1) {
          let level = points;
          while (level.length > 1) {
            level = level.slice(1).map(([x1, y1], i) => {
              const [x0, y0] = level[i] as readonly [number, number];
              return [x0 + ((x1 - x0) * step) / steps, y0 + ((y1 - y0) * step) / steps] as const;
            });
          }
          line(level[0] as readonly [number, number]);
        }
      } else if (letter === "Z") line(start);
      else if (letter === "H") line([numbers[0] as number, y]);
      else if (letter === "V") line([x, numbers[0] as number]);
      else line([numbers[0] as number, numbers[1] as number]);
    });
  return { area: twice / 2, swept, length };
}

describe("any path data", () => {
  test("follow the curves of a second reader, crossing or not", () => {
    fc.assert(
      fc.property(fc.array(anyCommand, { minLength: 1, maxLength: 6 }), (commands) => {
        const data = `M0 0${commands.join("")}Z`;
        const settings = settingsOf({ specks: 0 });
        const state = {
          settings,
          budget: new ReadBudget(settings.limits),
          faults: new Faults(),
          notes: new Notes(),
        };
        const parsed = parsePath(data, 100).commands ?? [];
        // A unit is a millimetre.
        const rings = ringsOfPath(
          parsed,
          { ...IDENTITY, a: 1600, d: 1600 },
          { line: null, element: "" },
          state,
        );
        state.faults.throwAny();
        const found = rings.reduce((sum, ring) => sum + signedAreaOf(ring), 0) / 2_560_000;
        const expected = areaBySecondReader(data);
        // Curves are followed within 0.01 mm, and corners within a tick.
        const allowed = 0.011 * expected.length + 1e-3 * expected.swept + 0.01;
        expect(Math.abs(found - expected.area)).toBeLessThan(allowed);
      }),
    );
  });
});

describe("any text", () => {
  const onlyTyped = (read: () => ReadOutlines) => {
    try {
      expect(read().outlines.flatMap(checkOutline)).toEqual([]);
    } catch (error) {
      if (!(error instanceof OutlineReadError)) throw error;
      const { details, message, code } = error;
      expect(details[0]?.code).toBe(code);
      expect(message).not.toBe("");
    }
  };

  test("is read as right outlines or refused with the typed error", () => {
    const letter = fc.oneof(
      fc.constantFrom(..."<>&/!?-[]\"'= svg"),
      fc.nat(0xffff).map((code) => String.fromCharCode(code)),
    );
    fc.assert(
      fc.property(fc.string({ unit: letter }), (text) => {
        onlyTyped(() => readOutlines(text));
        onlyTyped(() => outlinesOfPath(text));
      }),
    );
  });

  test("of the letters of path data is read or refused with the typed error", () => {
    const letters = fc.string({
      unit: fc.constantFrom(..."MmLlHhVvCcSsQqTtAaZz0123456789..--  ,,eE+"),
      maxLength: 60,
    });
    fc.assert(
      fc.property(letters, fc.boolean(), (text, mergeCrossings) => {
        onlyTyped(() => outlinesOfPath(`M1 1${text}`, { mergeCrossings, closeGaps: 1_000_000 }));
      }),
    );
  });

  test("that was a file before it was damaged is read or refused with the typed error", () => {
    const files = [...goodFiles, ...badFiles].map(({ svg }) => svg);
    fc.assert(
      fc.property(
        fc.constantFrom(...files),
        fc.array(
          fc.tuple(
            fc.nat(2000),
            fc.nat(12),
            fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom(...files)),
          ),
          {
            minLength: 1,
            maxLength: 4,
          },
        ),
        (svg, damages) => {
          let text = svg;
          for (const [at, length, written] of damages) {
            const place = at % (text.length + 1);
            text = text.slice(0, place) + written + text.slice(place + length);
          }
          onlyTyped(() => readOutlines(text));
        },
      ),
    );
  });

  test("with numbers of any size in its attributes is read or refused with the typed error", () => {
    const values = fc.oneof(
      fc.double().map(String),
      fc.constantFrom(
        "0",
        "-0",
        "1e308",
        "-1e308",
        "1e-320",
        "NaN",
        "1e999",
        "50%",
        "3em",
        "",
        " ",
        "auto",
        "9mm",
      ),
    );
    fc.assert(
      fc.property(
        fc.array(values, { minLength: 12, maxLength: 12 }),
        ([a, b, c, d, e, f, g, h, i, j, k, l]) => {
          onlyTyped(() =>
            readOutlines(`<svg xmlns="http://www.w3.org/2000/svg" width="${a}" height="${b}" viewBox="0 0 ${c} ${d}">
            <g transform="matrix(${e} ${f} 1 1 0 0) rotate(${g}) skewX(${h})"><rect x="${i}" width="9" height="${j}" rx="${k}"/>
            <circle r="${l}" cx="${a}"/><ellipse rx="${b}" ry="${c}"/></g></svg>`),
          );
          onlyTyped(() =>
            outlinesOfPath(`M${a} ${b}C${c} ${d} ${e} ${f} ${g} ${h}A${i} ${j} ${k} 0 1 ${l} 3z`),
          );
        },
      ),
    );
  });
});
