import type { StartTask } from "@sheetwright/packing";

/** What a thread is sent. */
export interface SentStart {
  readonly task: StartTask;
  /** Shared with the thread: 1 in the first place asks it to end early; in the second it says the work done so far. */
  readonly shared: Int32Array<SharedArrayBuffer>;
}

/** Name of the worker's function. */
export const START_FUNCTION = "makeStart";
