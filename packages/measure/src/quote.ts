// Control, zero-width, direction-changing and lone surrogate characters, by fixed ranges: property classes
// such as \p{Cf} grow with each Unicode version, and with them a message would differ between engines.
const UNPRINTABLE =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff]/gu;

/**
 * Puts a piece of input in double quotes for a message: cut to 40 characters, with unprintable characters
 * shown as escapes, so that one odd value neither floods nor garbles a terminal.
 *
 * @internal
 */
export function quote(text: string): string {
  const shown = text.length > 40 ? `${text.slice(0, 39)}…` : text;
  return `"${shown.replace(UNPRINTABLE, escapeCharacter)}"`;
}

function escapeCharacter(character: string): string {
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}
