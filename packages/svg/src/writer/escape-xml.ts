// XML 1.0 (Fifth Edition), production 2: Char ::= #x9 | #xA | #xD | [#x20-#xD7FF] | [#xE000-#xFFFD] | [#x10000-#x10FFFF].
// The u flag makes a lone surrogate a code point of its own, which the class excludes.
const FORBIDDEN = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "\t": "&#9;",
  "\n": "&#10;",
  "\r": "&#13;",
};

/** Drops the characters that XML 1.0 forbids in any form: most control characters, lone surrogates, U+FFFE and U+FFFF. */
export function dropForbidden(text: string): string {
  return text.replace(FORBIDDEN, "");
}

/** Makes any string safe between double quotes. White space becomes references, since readers flatten it in attributes. */
export function escapeAttribute(text: string): string {
  return dropForbidden(text).replace(/[&<>"\t\n\r]/g, (character) => ENTITIES[character] ?? character);
}

/**
 * Makes any string safe as the text of an element. Readers turn a bare carriage return into a line feed, and some drop
 * text that is white space only, so both are written as references.
 */
export function escapeText(text: string): string {
  const escaped = escapeAttribute(text);
  return /^ +$/.test(escaped) ? escaped.replaceAll(" ", "&#32;") : escaped;
}
