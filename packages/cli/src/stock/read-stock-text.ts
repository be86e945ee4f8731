import type { Offcut } from "@sheetwright/cards";
import { formatSize, type Size, type Unit } from "@sheetwright/measure";
import type { StockPaper } from "@sheetwright/planner";
import type { z } from "zod";
import { type Fault, quote } from "../fault.js";
import { readExactSize } from "./exact-size.js";
import type { StockData } from "./stock-data.js";
import { type StockFile, stockFile } from "./stock-file.js";

/**
 * Reads the text of a stock file and finds every mistake in it. A file that somebody edited by hand is as good as any.
 *
 * @param file the file's path as it was given, for the faults.
 */
export function readStockText(text: string, file: string): StockData | readonly Fault[] {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? ` (${error.message})` : "";
    const message = `found text that is no JSON${why}, expected a stock file. Mend it, or go back to an earlier content.`;
    return [{ code: "not-json", place: { file, path: "" }, message }];
  }
  const read = stockFile.safeParse(value);
  if (!read.success) return read.error.issues.map((issue) => faultOf(issue, value, file));
  const { revision, units, papers, booked } = read.data;
  const faults: Fault[] = [];
  const all = Object.entries(papers).map(([design, paper]) =>
    readPaper(design, paper, units, (path, found, message) => {
      faults.push({ code: "not-a-size", place: { file, path }, message, found, expected: "width x height" });
    }),
  );
  for (const [index, { plan }] of booked.entries()) {
    if (booked.findIndex((one) => one.plan === plan) === index) continue;
    const message = "this plan is booked twice, expected once. Put the two together.";
    faults.push({ code: "twice", place: { file, path: `booked[${index}].plan` }, message });
  }
  return faults.length > 0 ? faults : { revision, units, papers: all, booked };
}

function readPaper(
  design: string,
  { name, sheet: sheetText, grain, sheets, offcuts: written }: StockFile["papers"][string],
  unit: Unit,
  report: (path: string, found: string, message: string) => void,
): StockPaper {
  const path = `papers.${design}`;
  const read = (text: string, at: string): Size | null => {
    const size = readExactSize(text, unit);
    const help = "expected width x height, such as 8 1/2 x 11 in or 215.9 x 279.4 mm";
    if (size === null) report(at, quote(text), `found ${quote(text)}, ${help}.`);
    return size;
  };
  const sheet = read(sheetText, `${path}.sheet`);
  const offcuts: Offcut[] = [];
  for (const [text, count] of Object.entries(written)) {
    const at = `${path}.offcuts`;
    const size = read(text, at);
    if (size === null) continue;
    if (sheet !== null && (size.width > sheet.width || size.height > sheet.height)) {
      const whole = formatSize(sheet.width, sheet.height, { unit });
      const message = `an offcut of ${text} does not come out of a sheet of ${whole}. Width comes first, as it lay on the sheet.`;
      report(at, quote(text), message);
    }
    if (offcuts.some(({ width, height }) => width === size.width && height === size.height))
      report(at, quote(text), `the size ${text} stands there twice, expected once. Add the two up.`);
    offcuts.push({ ...size, count });
  }
  return {
    design,
    name,
    sheet: sheet ?? { width: 1, height: 1 },
    grain,
    sheets: sheets === "as needed" ? null : sheets,
    offcuts,
  };
}

function faultOf(issue: z.core.$ZodIssue, value: unknown, file: string): Fault {
  const { path, code } = issue;
  const message = (code === "invalid_key" ? issue.issues[0]?.message : undefined) ?? issue.message;
  const at = path.reduce<string>(
    (text, key) =>
      typeof key === "number" ? `${text}[${key}]` : `${text === "" ? "" : `${text}.`}${String(key)}`,
    "",
  );
  const found = path.reduce<unknown>(
    (inner, key) => (typeof inner === "object" && inner !== null ? Reflect.get(inner, key) : undefined),
    value,
  );
  // What zod words itself begins in capitals; ours says what is expected.
  const expected = message.startsWith("expected ") ? message : `expected something else: ${message}.`;
  const what = code === "invalid_key" ? quote(String(path.at(-1))) : sayValue(found);
  return { code: "not-a-stock", place: { file, path: at }, message: `found ${what}, ${expected}` };
}

function sayValue(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") return quote(value);
  if (typeof value === "object" && value !== null) return Array.isArray(value) ? "a list" : "an object";
  return String(value);
}
