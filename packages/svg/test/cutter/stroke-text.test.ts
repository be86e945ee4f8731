import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { STROKE_GLYPHS } from "../../src/cutter/stroke-glyphs.js";
import { CAPITAL_HEIGHT, spellForStrokes, strokeText, strokeWidth } from "../../src/cutter/stroke-text.js";

const require = createRequire(import.meta.url);

describe("the glyphs", () => {
  // Source: the npm package hersheytext 2.0.0, font "futural" (Hershey Sans, one stroke).
  test("are those of the Hershey font they were taken from", () => {
    const { futural } = JSON.parse(readFileSync(require.resolve("hersheytext/hersheytext.json"), "utf8")) as {
      futural: { chars: readonly { d: string; o: number }[] };
    };
    for (let code = 0x21; code <= 0x7e; code += 1) {
      const [advance, strokes] = STROKE_GLYPHS[String.fromCharCode(code)] ?? [0, ""];
      const source = futural.chars[code - 0x21];
      expect(advance).toBe(2 * Number(source?.o));
      expect(strokes.split(/[ ;]/).map(Number)).toEqual((source?.d.match(/-?\d+/g) ?? []).map(Number));
      expect(strokes.split(";").length).toBe(
        source?.d.split("M").filter((stroke) => stroke.trim() !== "").length,
      );
    }
    expect(Object.keys(STROKE_GLYPHS)).toHaveLength(95);
  });
});

describe("spellForStrokes", () => {
  test.each([
    ["Étoile filante", "Etoile filante"],
    ["große Übergröße", "grosse Ubergrosse"],
    ["żółć “Śnieg”…", 'zolc "Snieg"...'],
    ["3 × 4½", "3 x 41/2"],
    ["plain", "plain"],
    ["灯籠", null],
    ["Фонарик", null],
    ["🏮", null],
  ])("spells %s as %s", (text, spelled) => {
    expect(spellForStrokes(text)).toBe(spelled);
  });
});

describe("strokeText", () => {
  test("centres lines about its point, capitals as high as asked", () => {
    const { strokes, width, height } = strokeText(["HH", "H"], 4);
    const xs = strokes.flat().map(([x]) => x);
    const ys = strokes.flat().map(([, y]) => y);
    expect(Math.max(...xs)).toBeCloseTo(width / 2, 9);
    expect(Math.min(...xs)).toBeCloseTo(-width / 2, 9);
    expect(width).toBeCloseTo(strokeWidth("HH", 4), 9);
    expect(Math.max(...ys)).toBeLessThanOrEqual(height / 2);
    expect(Math.min(...ys)).toBeGreaterThanOrEqual(-height / 2);
    const upright = strokes[0]?.map(([, y]) => y) ?? [];
    expect(Math.max(...upright) - Math.min(...upright)).toBeCloseTo(4, 9);
    expect(CAPITAL_HEIGHT).toBe(21);
  });

  test("refuses what it has no strokes for", () => {
    expect(() => strokeText(["é"], 3)).toThrow('There are no strokes for "é".');
  });
});
