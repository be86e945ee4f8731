import type { Progress } from "@sheetwright/packing";
import type { Output } from "../io.js";

/** Steps of the search (about a millisecond each) between two lines: often enough to see, seldom enough to read. */
const STEPS_PER_LINE = 100;

/** Shows on a terminal how far a search is, in one line that is written over; shows nothing elsewhere. */
export function showProgress(output: Output): {
  /** `where` says what is searched where there are several searches, such as `papers 2 of 5, `. */
  readonly show: (progress: Progress, where?: string) => void;
  readonly clear: () => void;
} {
  if (output.isTTY !== true) return { show: () => undefined, clear: () => undefined };
  let steps = 0;
  return {
    show: ({ share, best }, where = "") => {
      steps += 1;
      if (steps % STEPS_PER_LINE !== 0) return;
      const found =
        best === undefined ? "" : `, best so far ${best.sheets} ${best.sheets === 1 ? "sheet" : "sheets"}`;
      // Back to the start of the line, and clear what is right of what is written.
      output.write(
        `\rSearching: ${where}${Math.floor(100 * share)} % done${found}. Ctrl-C takes the best so far.\u001b[K`,
      );
    },
    clear: () => {
      if (steps >= STEPS_PER_LINE) output.write("\r\u001b[K");
    },
  };
}
