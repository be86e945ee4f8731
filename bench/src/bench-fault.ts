/** A fault of what was asked or given, in words for the person: where, what was found, what is expected, what helps. */
export interface BenchFault {
  /** The option, or the file with line and column. */
  readonly where: string;
  readonly message: string;
}

/** Faults that end a run with exit code 2 before anything is measured. */
export class BenchFaults extends Error {
  override readonly name = "BenchFaults";
  readonly faults: readonly BenchFault[];

  /** Takes at least one fault. */
  constructor(faults: readonly BenchFault[], options?: ErrorOptions) {
    super(faults.map(({ where, message }) => `${where}: ${message}`).join("\n"), options);
    this.faults = faults;
  }
}

/** Faults shown before the rest is only counted. */
const SHOWN = 10;

/** Writes faults as lines: the first ten, and the number of the rest. */
export function writeBenchFaults(faults: readonly BenchFault[]): string {
  const lines = faults.slice(0, SHOWN).map(({ where, message }) => `${where}: ${message}`);
  const rest = faults.length - lines.length;
  if (rest > 0) lines.push(`and ${rest} more ${rest === 1 ? "fault" : "faults"}.`);
  return `${lines.join("\n")}\n`;
}
