/** Says in a plan's overview which solver its search had, as lines; none where it had none. */
export function writeSolver(lp: string): readonly string[] {
  return lp === "none" ? [] : [`Linear programs by ${lp}.`, ""];
}
