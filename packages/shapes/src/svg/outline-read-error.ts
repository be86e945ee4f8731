/** What can be wrong with a file or path data that outlines are read from, as data. */

/** What kind of mistake it is. */
export type OutlineReadFaultCode =
  /** More characters, elements, nesting, style rules, path commands or corners than are read. */
  | "over-limit"
  /** Not well-formed XML; undefined entities too. */
  | "not-well-formed"
  /** A document type that declares something, such as entities. */
  | "doctype"
  /** Well-formed, but no SVG. */
  | "not-svg"
  /** A width, a height, a radius or a viewBox that is negative, or zero where it may not be. */
  | "bad-size"
  /** A number beyond what a computer holds, or a point beyond 10 m. */
  | "too-far"
  /** A length in a unit that depends on fonts or windows, or in none that SVG knows. */
  | "unknown-unit"
  /** An attribute that is not what SVG says. */
  | "malformed-value"
  /** Path data that stop making sense. */
  | "malformed-path"
  /** A line whose ends do not meet. */
  | "open-path"
  /** A path that runs across itself. */
  | "self-crossing"
  /** Text, or something else that cannot be read as an outline. */
  | "unsupported"
  /** A part that lies in another file. */
  | "external-reference"
  /** A part that is used but is not there. */
  | "missing-reference"
  /** A part that uses itself. */
  | "circular-reference"
  /** Only pictures made of pixels. */
  | "bitmap-only"
  /** Nothing that could be an outline. */
  | "no-outline";

/** Where something stands. */
export interface OutlinePlace {
  /** The line in the file, from 1, at which the element's tag starts; `null` for path data and for the whole file. */
  readonly line: number | null;
  /** The element, such as `path#leaf`; empty for the whole file. */
  readonly element: string;
}

/** One mistake. */
export interface OutlineReadFault extends OutlinePlace {
  readonly code: OutlineReadFaultCode;
  /** What stands there, in short. */
  readonly found: string;
  readonly expected: string;
  /** A sentence that says what would help. */
  readonly help: string;
  /** All of it in full sentences, without the place. */
  readonly message: string;
}

/**
 * A file or path data from which no outlines can be read, with the mistakes found; the first ten are in its message.
 *
 * @example
 * outlinesOfPath("M 0 0 H 30 V 20") // throws OutlineReadError: Close the line
 */
export class OutlineReadError extends Error {
  override readonly name = "OutlineReadError";
  /** The code of the first mistake. */
  readonly code: OutlineReadFaultCode;
  readonly details: readonly OutlineReadFault[];

  /** Takes at least one fault. */
  constructor(faults: readonly OutlineReadFault[]) {
    const shown = faults.slice(0, MOST_SHOWN).map((fault) => `${saidPlace(fault)}${fault.message}`);
    const rest = faults.length - shown.length;
    super([...shown, ...(rest > 0 ? [`And ${rest} more.`] : [])].join("\n"));
    this.code = (faults[0] as OutlineReadFault).code;
    this.details = faults;
  }
}

const MOST_SHOWN = 10;

/** No more are kept: a file of a million mistakes is one bad file. */
const MOST_KEPT = 100;

/**
 * Collects mistakes while a file is read.
 *
 * @internal
 */
export class Faults {
  readonly #faults: OutlineReadFault[] = [];

  get isEmpty(): boolean {
    return this.#faults.length === 0;
  }

  add(code: OutlineReadFaultCode, place: OutlinePlace, story: FaultStory): void {
    if (this.#faults.length < MOST_KEPT) this.#faults.push(faultOf(code, place, story));
  }

  /** Throws what has been collected. */
  throwAny(): void {
    if (!this.isEmpty) throw new OutlineReadError(this.#faults);
  }
}

/**
 * A mistake in words.
 *
 * @internal
 */
export interface FaultStory {
  /** A full sentence. */
  readonly wrong: string;
  readonly found: string;
  readonly expected: string;
  /** A full sentence. */
  readonly help: string;
}

/**
 * An error after which there is no use in reading on.
 *
 * @internal
 */
export function fatal(code: OutlineReadFaultCode, place: OutlinePlace, story: FaultStory): OutlineReadError {
  return new OutlineReadError([faultOf(code, place, story)]);
}

function faultOf(
  code: OutlineReadFaultCode,
  { line, element }: OutlinePlace,
  { wrong, found, expected, help }: FaultStory,
): OutlineReadFault {
  return { code, line, element, found, expected, help, message: `${wrong} ${help}` };
}

/**
 * A place at the head of a message.
 *
 * @internal
 */
export function saidPlace({ line, element }: OutlinePlace): string {
  const parts = [...(line === null ? [] : [`line ${line}`]), ...(element === "" ? [] : [element])];
  return parts.length === 0 ? "" : `${parts.join(", ")}: `;
}

/**
 * The place of a mistake that belongs to no element.
 *
 * @internal
 */
export const WHOLE_FILE: OutlinePlace = { line: null, element: "" };
