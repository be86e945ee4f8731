import type { Unit } from "@sheetwright/measure";
import type { FaultList } from "./fault-list.js";
import { quote, writeNumber } from "./say-value.js";

/** What every part of the reader needs to know. */
export interface Reading {
  readonly faults: FaultList;
  /** The unit of numbers without one. */
  readonly unit: Unit;
  /** How a number or a bare word at a path was written, such as `007`; `null` where none stands. */
  readonly writtenAt: (path: string) => string | null;
}

// A text goes into drawings, which are XML: these characters are not allowed there, or garble a line.
const UNPRINTABLE =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufffe\uffff]/;

/**
 * Reads a text for people: white space at its ends goes, a run of white space becomes one space. A number is taken as it
 * was written. Gives `null` where there is none, and reports one that is empty, too long or not printable.
 */
export function readText(
  value: string | number | boolean | undefined,
  path: string,
  { faults, writtenAt }: Reading,
  longest: number,
): string | null {
  if (value === undefined) return null;
  const written = typeof value === "string" ? value : (writtenAt(path) ?? String(value));
  const text = written.replace(/\s+/g, " ").trim();
  if (text === "") {
    const message = "The text is empty. Write one, or leave the key out if it may be missing.";
    faults.report({ code: "missing", path, found: value, expected: "a text", message });
    return null;
  }
  if (text.length > longest) {
    const message = `The text has ${writeNumber(text.length)} characters, and ${longest} are the most. Shorten it.`;
    faults.report({
      code: "too-many",
      path,
      found: value,
      expected: `at most ${longest} characters`,
      message,
    });
    return null;
  }
  if (UNPRINTABLE.test(text) || !isWellFormed(text)) {
    const message = `${quote(text)} holds a character that cannot be printed. Take it out.`;
    faults.report({ code: "wrong-type", path, found: value, expected: "printable characters", message });
    return null;
  }
  return text;
}

/** Whether no half of a pair of UTF-16 units stands alone. */
function isWellFormed(text: string): boolean {
  return !/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(text);
}
