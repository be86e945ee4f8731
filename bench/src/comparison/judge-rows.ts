import type { BenchIo } from "../bench-io.js";
import type { Row } from "./row.js";

/** Says which layouts failed their check and what was not placed; gives the exit code. */
export function judgeRows(rows: readonly Row[], faults: readonly string[], io: BenchIo): 0 | 1 {
  for (const fault of faults) io.stderr.write(`A plan failed its check: ${fault}\n`);
  const unplanned = rows.flatMap(({ family, rotation, effort, solver, details }) =>
    details
      .filter(({ sheets }) => sheets === null)
      .map(({ id }) => `${family} ${id}, ${rotation ? "turned" : "fixed"}, ${effort ?? solver}`),
  );
  for (const name of unplanned)
    io.stderr.write(`${name}: not all pieces were placed on the sheets in stock.\n`);
  return faults.length + unplanned.length > 0 ? 1 : 0;
}
