/** A fault of what was asked or given, as plain data, so that all can be collected before any is shown. */
export interface Fault {
  /** Stable name of the fault, such as `not-a-length`. */
  readonly code: string;
  readonly place: Place;
  /** What was found, what is expected and what would help, as full sentences. */
  readonly message: string;
  /** For a value of a project file: what was found, in short, what is expected, and the word that was probably meant. */
  readonly found?: string;
  readonly expected?: string;
  readonly suggestion?: string;
}

/** Where a fault is: an option, a place in a piece list, or a place in a project file. */
export type Place =
  | { readonly option: string }
  | {
      /** The file's path as it was given. */
      readonly file: string;
      /** Line, from 1. */
      readonly line?: number;
      /** Character of that line, from 1. */
      readonly column?: number;
      /** Where the value stands in the project, such as `cards[2].front[0].border`; empty for the file as a whole. */
      readonly path: string;
    }
  | {
      /** The file's path as it was given. */
      readonly file: string;
      /** Line, from 1. */
      readonly line?: number;
      /** Cell of that line, from 1. */
      readonly column?: number;
      /** Name of the column. */
      readonly heading?: string;
    };

/** Faults that end a run with exit code 2. */
export class FaultsFound extends Error {
  override readonly name = "FaultsFound";
  readonly faults: readonly Fault[];

  /** Takes at least one fault. */
  constructor(faults: readonly Fault[], options?: ErrorOptions) {
    super(faults.map(writeFault).join("\n"), options);
    this.faults = faults;
  }
}

/** Faults shown before the rest is only counted. */
const SHOWN = 10;

/** Writes a fault as one line: place, then message. */
export function writeFault(fault: Fault): string {
  return `${writePlace(fault.place)}: ${fault.message}`;
}

/** The command whose faults are told: its name, `sheetwright` for none, and whether it writes files. */
export interface FaultyCommand {
  readonly name: string;
  readonly writes: boolean;
}

/** Writes faults for a person: the first ten, the number of the rest, and that nothing was written. */
export function writeFaults(faults: readonly Fault[], { name, writes }: FaultyCommand): string {
  const lines = faults.slice(0, SHOWN).map(writeFault);
  const rest = faults.length - lines.length;
  if (rest > 0) lines.push(`and ${rest} more ${rest === 1 ? "fault" : "faults"}; --json lists them all.`);
  const help = faults.some(({ place }) => "option" in place) ? ` ${name} --help explains the options.` : "";
  const count = faults.length === 1 ? "1 fault" : `${faults.length} faults`;
  lines.push(`${count}${writes ? "; no file was written" : ""}.${help}`);
  return `${lines.join("\n")}\n`;
}

/** Writes a place as it stands before a message. */
export function writePlace(place: Place): string {
  if ("option" in place) return place.option;
  const line = place.line === undefined ? "" : `:${place.line}`;
  if ("path" in place) {
    const column = place.column === undefined ? "" : `:${place.column}`;
    return `${place.file}${line}${column}${place.path === "" ? "" : ` ${place.path}`}`;
  }
  const heading = place.heading === undefined ? "" : ` (${place.heading})`;
  const column = place.column === undefined ? "" : `, column ${place.column}${heading}`;
  return `${place.file}${line}${column}`;
}

/**
 * Puts found text in quotes for a message: cut to 40 characters, with control characters shown as escapes, so that one
 * odd value neither floods nor garbles a terminal.
 */
export function quote(text: string): string {
  const letters = [...text];
  const shown = letters.length > 40 ? `${letters.slice(0, 39).join("")}…` : text;
  // A quote mark is also the inch mark: "8.5"" reads better than an escaped one.
  return `"${JSON.stringify(shown).slice(1, -1).replaceAll('\\"', '"')}"`;
}
