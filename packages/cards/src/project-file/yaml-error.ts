import type { YAMLError } from "yaml";
import type { Mistake } from "./fault-list.js";
import { printable } from "./say-value.js";

type Said = Pick<Mistake, "expected" | "message" | "found">;

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

/** Says an error of the YAML reader in words for whoever wrote the file. */
export function sayYamlError({ code, pos, message }: YAMLError, text: string): Said {
  const found = printable((text.slice(pos[0]).split("\n", 1)[0] ?? "").trim());
  const said = special(code, message, text) ?? SAID[code] ?? OTHER;
  return found === "" ? said : { ...said, found };
}

function special(code: string, message: string, text: string): Said | null {
  const closing = /(?:end with a |Expected flow \w+ to end with )(?<bracket>[\]}])/.exec(message)?.groups
    ?.bracket;
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
        "A quote mark is opened and never closed. An inch mark inside double quotes ends them: use single quotes, or in.",
    };
  }
  const json = text.trimStart().startsWith("{");
  return json && code === "MISSING_CHAR"
    ? {
        expected: "a comma or a closing bracket",
        message: "A comma, a colon or a bracket is missing or too many here.",
      }
    : null;
}
