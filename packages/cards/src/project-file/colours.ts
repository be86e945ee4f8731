import type { Paper } from "../project.js";
import { colourSaid } from "./colour-words.js";
import type { Reading } from "./reading.js";
import { quote } from "./say-value.js";

/** Muted tints by material, all light enough to be read with dark ink on them. Our own choice. */
const TINTS: Readonly<Record<Paper["material"], readonly string[]>> = {
  cardstock: [
    "#b7c4d6",
    "#efe6d2",
    "#d9b8a7",
    "#bfd0b4",
    "#d3c3dc",
    "#c9c6bd",
    "#e3c98f",
    "#a9c8c6",
    "#e0b9c0",
    "#cdd7e4",
  ],
  paper: ["#dfe9e2", "#f3dfc9", "#dcdff0", "#f0dde0", "#e6ecc9", "#d4e6ec", "#eee4ee", "#e9e2d8"],
  pad: ["#c7dbe8", "#f2d7b6", "#d8e3b3", "#e9c9d8", "#cfcbe9", "#f1e7a9", "#bfe0d3", "#efc4b3"],
  glitter: ["#d8a878", "#c5cad0", "#dcc46a", "#d79aa5", "#9fc3a6", "#a9b4d8", "#c9a3cf", "#b9a48c"],
};

const SHORT = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/;
const FULL = /^#[0-9a-f]{6}$/;

/** Reads `#rgb` or `#rrggbb` and gives `#rrggbb` in lower case. */
export function readColour(
  value: string | number | undefined,
  path: string,
  { faults, writtenAt }: Reading,
): string | null {
  if (value === undefined) return null;
  const written = typeof value === "string" ? value : (writtenAt(path) ?? String(value));
  const text = written.trim().toLowerCase();
  if (FULL.test(text)) return text;
  const [, red, green, blue] = SHORT.exec(text) ?? [];
  if (red !== undefined && green !== undefined && blue !== undefined) {
    return `#${red}${red}${green}${green}${blue}${blue}`;
  }
  const withHash = `#${text}`;
  const suggestion = FULL.test(withHash) || SHORT.test(withHash) ? withHash : null;
  faults.report({
    code: "not-a-word",
    path,
    found: written,
    expected: 'a colour in quotes, such as "#22304f"',
    message: `${quote(written)} is not a colour.${suggestion === null ? "" : ` Did you mean "${suggestion}"?`} Write # and six digits from 0 to f in quotes, two each for red, green and blue, such as "#22304f".`,
    suggestion,
  });
  return null;
}

/** Shades of a tint before it is given out again: far more than papers. */
const MOST_SHADES = 400;

/** Gives a paper of a material and a name its colour. */
export type GiveColour = (material: Paper["material"], name: string) => string;

/**
 * Hands out quiet colours, each once, and none that the file names itself: the tint that the name says (`Fir green`), else
 * the next one of the material, and when those are taken a shade of one. The same file always gets the same.
 */
export function colourGiver(named: Iterable<string>): GiveColour {
  const used = new Set(named);
  const reached = new Map<string, number>();
  return (material, name) => {
    const said = colourSaid(name);
    const [from, tints] = said === null ? [material, TINTS[material]] : [said, [said]];
    for (let next = reached.get(from) ?? 0; next < MOST_SHADES * tints.length; next++) {
      const colour = shaded(tints[next % tints.length] ?? "#ffffff", Math.floor(next / tints.length));
      if (used.has(colour)) continue;
      used.add(colour);
      reached.set(from, next + 1);
      return colour;
    }
    return tints[0] ?? "#ffffff";
  };
}

/** A shade of a tint that is still light: each channel steps down in strides of its own and starts again above 0x98. */
function shaded(tint: string, shade: number): string {
  const channels = [1, 3, 5].map((at, index) => {
    const value = Number.parseInt(tint.slice(at, at + 2), 16);
    const range = Math.max(8, value - 0x98);
    return value - ((shade * (5 + 2 * index)) % range);
  });
  return `#${channels.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}
