import type { YAMLError } from "yaml";
import type { Mistake } from "./fault-list.js";
import { printable } from "./say-value.js";

const QUOTES = 'Put the text in quotes, such as text: "Good night: sleep well".';
const INDENT =
  "Lines that belong together begin in the same column, and what belongs to a key stands further in.";

/** What each kind of error means to whoever wrote the file. */
const SAID: Readonly<Record<string, { readonly expected: string; readonly message: string }>> = {
  ALIAS_PROPS: {
    expected: "the value itself",
    message: "An alias (a word after *) is not read. Write the value out.",
  },
  BAD_ALIAS: {
    expected: "a value",
    message: "Text that begins with * or & means something else in YAML. Put it in quotes.",
  },
  BAD_DIRECTIVE: {
    expected: "a key",
    message: "A line that begins with % means something else in YAML. Leave it out.",
  },
  BAD_DQ_ESCAPE: {
    expected: "an escape that YAML knows",
    message:
      "A backslash in double quotes begins an escape, and this one is unknown. Use single quotes, or write \\\\.",
  },
  BAD_INDENT: {
    expected: "the same indentation",
    message: `The indentation does not fit what stands above. ${INDENT}`,
  },
  BAD_SCALAR_START: {
    expected: "a text that begins with a letter or digit",
    message: "A text cannot begin with this character unless it is in quotes.",
  },
  BLOCK_AS_IMPLICIT_KEY: {
    expected: "one key and its value",
    message: `A second key follows in what should be a value. ${QUOTES} A new key begins on a line of its own.`,
  },
  BLOCK_IN_FLOW: {
    expected: "values with commas between them",
    message: "A list of lines cannot stand inside brackets. Write all of it in brackets, or none of it.",
  },
  KEY_OVER_1024_CHARS: {
    expected: "a short key",
    message: "A key is longer than any that there is. Is a colon missing?",
  },
  MISSING_CHAR: {
    expected: "a key, a colon, a space and a value",
    message:
      "Something is missing here. After a key come a colon, a space and the value, such as border: 1/8.",
  },
  MULTILINE_IMPLICIT_KEY: {
    expected: "a key, a colon, a space and a value on one line",
    message: "A key runs over the end of its line. Is the space after a colon missing, or a quote mark?",
  },
  MULTIPLE_ANCHORS: {
    expected: "a value",
    message: "Text that begins with & means something else in YAML. Put it in quotes.",
  },
  MULTIPLE_TAGS: {
    expected: "a value",
    message: "Text that begins with ! means something else in YAML. Put it in quotes.",
  },
  TAB_AS_INDENT: { expected: "spaces", message: "The line is indented with a tab. YAML takes spaces only." },
  TAG_RESOLVE_FAILED: {
    expected: "a value",
    message: "Text that begins with ! means something else in YAML. Put it in quotes.",
  },
};

const OTHER = {
  expected: "a key, a colon, a space and a value",
  message: `This does not belong here. ${INDENT} A text with quote marks, colons or # in it goes in quotes.`,
};

/** An error of the YAML reader, and where it stands in the text. */
export interface ErrorAt extends Pick<YAMLError, "code" | "message"> {
  readonly offset: number;
}

/** An error in words, and where it stands. */
export interface SaidError extends Pick<Mistake, "expected" | "message" | "found"> {
  readonly offset: number;
}

/**
 * Says an error of the YAML reader in words for whoever wrote the file; `isJson` where it was meant to be JSON. `echoes`
 * are the errors of the same line, which help to tell what it is.
 */
export function sayYamlError(
  { code, offset, message }: ErrorAt,
  text: string,
  isJson: boolean,
  echoes: readonly ErrorAt[],
): SaidError {
  const comment = isMissingBracket(message) ? hidingComment(text, offset) : null;
  if (comment !== null) return { ...HIDDEN, offset: comment, found: lineFrom(text, comment) };
  const isIndent = echoes.some((echo) => echo.code === "MULTILINE_IMPLICIT_KEY" && echo.offset === offset);
  const said =
    afterQuote(message, text, offset) ?? special(code, message, isJson, isIndent) ?? SAID[code] ?? OTHER;
  const found = lineFrom(text, offset);
  return { ...said, offset, ...(found === "" ? {} : { found }) };
}

const HIDDEN = {
  expected: "a # in quotes",
  message:
    'A # after a space begins a comment, which hides the closing bracket here. Put a colour in quotes, such as "#22304f".',
};

const JSON_CODES = ["MISSING_CHAR", "UNEXPECTED_TOKEN", "MULTILINE_IMPLICIT_KEY", "BLOCK_IN_FLOW"];

/** What follows a closed quote mark in the same value: nearly always an inch mark closed it. */
function afterQuote(
  message: string,
  text: string,
  offset: number,
): Pick<Mistake, "expected" | "message"> | null {
  const before = text.slice(Math.max(0, offset - 20), offset);
  if (!message.includes("at node end") || !/["']\s*$/.test(before)) return null;
  return {
    expected: "the end of the value after its quote mark",
    message:
      "The quote mark before this ends the text, and more follows. An inch mark inside double quotes ends them: use single quotes, or in.",
  };
}

function isMissingBracket(message: string): boolean {
  return /end with an? [\]}]/.test(message);
}

/** Where a comment begins in the last line before `offset` that holds more than space, inside an open bracket. */
function hidingComment(text: string, offset: number): number | null {
  const before = text.slice(0, offset).trimEnd();
  const start = before.lastIndexOf("\n") + 1;
  const line = before.slice(start);
  const space = line.search(/\s#/);
  const isInside = space >= 0 && /[[{,:]/.test(line.slice(0, space)) && !/["']/.test(line.slice(0, space));
  return isInside ? start + space + 1 : null;
}

function lineFrom(text: string, offset: number): string {
  return printable((text.slice(offset).split("\n", 1)[0] ?? "").trim());
}

function special(
  code: string,
  message: string,
  isJson: boolean,
  isIndent: boolean,
): Pick<Mistake, "expected" | "message"> | null {
  const closing = /end with an? (?<bracket>[\]}])/.exec(message)?.groups?.bracket;
  if (closing !== undefined) {
    return {
      expected: `a closing ${closing}`,
      message: `A bracket is open before this, and its closing ${closing} is missing or stands too far to the left.`,
    };
  }
  if (code === "MISSING_CHAR" && message.includes("quote")) {
    return {
      expected: "a closing quote mark",
      message:
        "A quote mark is opened here and never closed. An inch mark inside double quotes ends them: use single quotes, or in.",
    };
  }
  if (!isJson && message.includes("without - indicator")) return SAID.BAD_INDENT ?? null;
  if (!isJson && code === "BLOCK_AS_IMPLICIT_KEY" && isIndent) {
    return {
      expected: "the same column for keys that belong together",
      message: `The line below stands further in than this key, so that it is read as a part of the value here. ${INDENT}`,
    };
  }
  if (!isJson || !JSON_CODES.includes(code)) return null;
  return {
    expected: "a comma or a closing bracket",
    message: "A comma, a colon, a quote mark or a bracket is missing or too many here.",
  };
}
