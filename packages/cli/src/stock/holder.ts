/** Tells a run from others that may write the same file at the same time. */
export interface Holder {
  /** The machine by its name, in letters, digits, points and hyphens. */
  readonly host: string;
  /** The number of the process on that machine. */
  readonly process: number;
  /** Small letters and digits that no other run has. */
  readonly mark: string;
  /** Whether a process of this machine still runs; of one that nobody can tell of, true. */
  readonly isRunning: (process: number) => boolean;
  /** Lets others work for so long. */
  readonly wait: (milliseconds: number) => Promise<void>;
}
