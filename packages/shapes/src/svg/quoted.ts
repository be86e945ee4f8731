// Control, invisible and direction-changing characters and lone surrogates, by fixed ranges that no engine changes.
const UNPRINTABLE =
  /[\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ud800-\udfff]/gu;

/**
 * A piece of the file in double quotes, cut to 40 characters, so that one odd value neither floods nor garbles a message.
 *
 * @internal
 */
export function quoted(text: string): string {
  return `"${printable(text)}"`;
}

/**
 * The same without the quotes.
 *
 * @internal
 */
export function printable(text: string): string {
  const shown = text.length > 40 ? `${text.slice(0, 39)}…` : text;
  return shown.replace(UNPRINTABLE, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}
