import type { LinearSolver } from "@sheetwright/packing";
import type { Holder } from "./stock/holder.js";
import type { StartThreads } from "./threads/start-threads.js";

/** Everything a run may touch. Nothing else reaches the process, so that a test can stand in for all of it. */
export interface Io {
  /** For data: the summary, or with `--json` one JSON document. */
  readonly stdout: Output;
  /** For talk: faults, progress, and with `--json` the summary. */
  readonly stderr: Output;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Absolute path that relative paths start from. */
  readonly cwd: string;
  readonly files: Files;
  /** Set to end a search early; the best plan so far is then written. */
  readonly signal?: { readonly aborted: boolean };
  /** Lets the process hear of a signal between two steps of a search. */
  readonly pause?: () => Promise<void>;
  /** Loads a solver for linear programs; without one, searches solve theirs themselves. */
  readonly loadSolver?: () => Promise<LinearSolver>;
  /** Tells this run from others at work at the same time; without it no stock is written. */
  readonly holder?: Holder;
  /** Threads to spread searches over; without them searches take none. */
  readonly threads?: {
    /** How many can run at the same time. */
    readonly cores: number;
    readonly open: (most: number) => StartThreads;
  };
}

/** Where text goes. */
export interface Output {
  write(text: string): unknown;
  /** True where a person watches, so that colour and progress make sense. */
  readonly isTTY?: boolean | undefined;
}

/**
 * The few things done with files, all on absolute paths. A call that fails rejects with an error whose `code` is that of
 * the operating system, such as `ENOENT`.
 */
export interface Files {
  read(path: string): Promise<Uint8Array>;
  /** Writes a new file, UTF-8. */
  write(path: string, content: string): Promise<void>;
  /** Makes one folder; its parent must be there and it must not (`EEXIST`). */
  makeFolder(path: string): Promise<void>;
  /** Names of what is in a folder, in any order. */
  list(path: string): Promise<readonly string[]>;
  /** What stands at a path; a link counts as what it leads to. */
  look(path: string): Promise<"file" | "folder" | "other" | null>;
  /** Takes the place of a file that is there already, in one step. */
  rename(from: string, to: string): Promise<void>;
  /** Waits until a file, or what a folder says of its files, is on the disk to stay. */
  sync(path: string): Promise<void>;
  /** Where a path leads to once its links are followed; the path itself where there is nothing. */
  follow(path: string): Promise<string>;
  removeFile(path: string): Promise<void>;
  /** Removes an empty folder. */
  removeFolder(path: string): Promise<void>;
}

/** Code of an operating system's error, such as `EACCES`; `undefined` for every other value. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("code" in error) || typeof error.code !== "string") return undefined;
  return /^E[A-Z0-9]+$/.test(error.code) ? error.code : undefined;
}
