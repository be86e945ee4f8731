/**
 * Writes src/cutter/stroke-glyphs.ts from the npm package hersheytext: the one-stroke sans-serif ("futural") of the
 * Hershey fonts, printable ASCII. Run it from this package's folder after changing it: `node scripts/make-stroke-glyphs.mjs`.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
const fonts = JSON.parse(readFileSync(require.resolve("hersheytext/hersheytext.json"), "utf8"));
const { chars } = fonts.futural;

/** `M5,1 L5,15 6,16 M..` becomes `5 1 5 15 6 16;...`: strokes of points. */
const strokesOf = (d) =>
  d
    .split("M")
    .map((stroke) => (stroke.match(/-?\d+/g) ?? []).join(" "))
    .filter((stroke) => stroke !== "");

const entries = [];
for (let code = 0x21; code <= 0x7e; code += 1) {
  const { d, o } = chars[code - 0x21];
  const character = String.fromCharCode(code);
  // The source gives half the advance.
  entries.push(`  ${JSON.stringify(character)}: [${2 * o}, ${JSON.stringify(strokesOf(d).join(";"))}],`);
}

const text = `/*!
 * Written by scripts/make-stroke-glyphs.mjs from the npm package hersheytext 2.0.0; change that script, not this file.
 *
 * The Hershey Fonts were originally created by Dr. A. V. Hershey while working at the U. S. National Bureau of
 * Standards. The format of the font data in the distribution they were taken from was originally created by James Hurt,
 * Cognition, Inc., 900 Technology Park Drive, Billerica, MA 01821. See NOTICE.
 *
 * A glyph is its advance and its strokes: points \`x y\` in a row, strokes apart by a semicolon. y points down, capitals
 * stand from 1 to 22, and strokes reach from -3 to 29.
 */
// biome-ignore format: one glyph a line
export const STROKE_GLYPHS: Readonly<Record<string, readonly [advance: number, strokes: string]>> = {
  " ": [16, ""],
${entries.join("\n")}
};
`;
writeFileSync(new URL("../src/cutter/stroke-glyphs.ts", import.meta.url), text);
