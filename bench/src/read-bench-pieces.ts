/** Reads a piece list for the bench: CSV with the header name,width,height,quantity,turn, as `sheetwright plan` takes it. */
import { tryParseLength } from "@sheetwright/measure";
import { CsvError, parse } from "csv-parse/sync";
import type { BenchFault } from "./bench-fault.js";
import type { ListedPiece } from "./listed-piece.js";

const HEADINGS = ["name", "width", "height", "quantity", "turn"] as const;
type Heading = (typeof HEADINGS)[number];

/** A row with the line it starts on. */
interface Row {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/** The list, or all that is wrong with it. */
export type PieceListResult =
  | { readonly ok: true; readonly pieces: readonly ListedPiece[] }
  | { readonly ok: false; readonly faults: readonly BenchFault[] };

const LARGEST_QUANTITY = 100_000;

/**
 * Reads the text of a piece list. Bare lengths are inches; lines that start with `#` are left out.
 *
 * @param file the file's path as it was given, for the messages.
 */
export function readBenchPieces(text: string, file: string): PieceListResult {
  let rows: readonly Row[];
  try {
    rows = parse(text, {
      bom: true,
      comment: "#",
      comment_no_infix: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      trim: true,
      relax_quotes: true,
    }) as unknown as readonly Row[];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { ok: false, faults: [{ where: file, message: `no CSV: ${error.message}.` }] };
  }
  const [header, ...lines] = rows;
  const found = (header?.record ?? []).map((cell) => cell.toLowerCase());
  const missing = HEADINGS.filter((heading) => !found.includes(heading));
  const unknown = found.filter((cell) => cell !== "" && !HEADINGS.some((heading) => heading === cell));
  const twice = HEADINGS.filter((heading) => found.indexOf(heading) !== found.lastIndexOf(heading));
  if (missing.length + unknown.length + twice.length > 0) {
    const columns = found.length === 0 ? "nothing" : `"${found.join(",")}"`;
    const message = `found ${columns} as the header, expected ${HEADINGS.join(",")}, each once.`;
    return { ok: false, faults: [{ where: `${file}:${header?.info.lines ?? 1}`, message }] };
  }
  const faults: BenchFault[] = [];
  const names = new Map<string, number>();
  const pieces: ListedPiece[] = [];
  for (const { record, info } of lines) {
    const line = info.lines;
    const cell = (heading: Heading): string => record[found.indexOf(heading)] ?? "";
    const report = (heading: Heading, message: string): void => {
      faults.push({ where: `${file}:${line}, column ${found.indexOf(heading) + 1} (${heading})`, message });
    };
    if (record.slice(found.length).some((value) => value !== "")) {
      const message = `found ${record.length} cells, expected ${found.length}. A decimal takes a dot (8.5).`;
      faults.push({ where: `${file}:${line}`, message });
      continue;
    }
    const length = (heading: "width" | "height"): number => {
      const read = tryParseLength(cell(heading), { unit: "in" });
      if (read.ok) return read.ticks;
      report(heading, read.problem.message);
      return 1;
    };
    const name = cell("name");
    const earlier = names.get(name);
    if (name === "") report("name", "found nothing, expected a name.");
    else if (earlier !== undefined)
      report("name", `"${name}" is the name of the piece in line ${earlier} as well.`);
    names.set(name, earlier ?? line);
    const size = { width: length("width"), height: length("height") };
    const quantity = /^\d{1,6}$/.test(cell("quantity")) ? Number(cell("quantity")) : Number.NaN;
    if (!(quantity <= LARGEST_QUANTITY)) {
      report(
        "quantity",
        `found "${cell("quantity")}", expected a whole number from 0 to ${LARGEST_QUANTITY}.`,
      );
    }
    const turn = cell("turn").toLowerCase();
    if (turn !== "yes" && turn !== "no") report("turn", `found "${cell("turn")}", expected yes or no.`);
    pieces.push({ name, ...size, quantity, turn: turn === "yes" });
  }
  if (faults.length === 0 && pieces.every((piece) => piece.quantity === 0)) {
    const why = pieces.length === 0 ? "the list has no pieces" : "every quantity is 0";
    faults.push({ where: file, message: `${why}, expected at least one piece to cut.` });
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, pieces };
}
