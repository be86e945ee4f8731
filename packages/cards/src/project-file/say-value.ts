// Control, zero-width, direction-changing and lone surrogate characters, by fixed ranges, so that a message is the same in
// every engine.
const UNPRINTABLE =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff]/gu;
const LONGEST = 40;

/** Puts text of a file in quotes for a message: cut to 40 characters, with what cannot be printed shown as escapes. */
export function quote(text: string): string {
  return `"${printable(text)}"`;
}

/** Cuts text to 40 characters and shows what cannot be printed as escapes. */
export function printable(text: string): string {
  const shown = text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
  return shown.replace(UNPRINTABLE, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}

/** Says in short what a value of a file is: `"sideways"`, `12`, `a list`, `the keys left and right`; empty for none. */
export function sayValue(value: unknown): string {
  if (value === undefined || value === null) return "";
  if (typeof value === "string") return quote(value);
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (typeof value !== "object") return sayNumber(value);
  const keys = Object.keys(value);
  if (keys.length === 0) return "nothing between the braces";
  const shown = keys.slice(0, 3).map(printable);
  return `the ${keys.length === 1 ? "key" : "keys"} ${listWords(keys.length > 3 ? [...shown, "more"] : shown, "and")}`;
}

function sayNumber(value: unknown): string {
  if (value === Number.POSITIVE_INFINITY) return ".inf";
  if (value === Number.NEGATIVE_INFINITY) return "-.inf";
  return typeof value === "number" && Number.isNaN(value) ? ".nan" : String(value);
}

/** Joins words as a sentence does: `a`, `a or b`, `a, b or c`. */
export function listWords(words: readonly string[], joint: "and" | "or"): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${joint} ${words.at(-1)}`;
}

/** Writes a whole number with commas between the thousands. */
export function writeNumber(number: number): string {
  return String(number).replace(/\B(?=(?:\d{3})+$)/g, ",");
}
