/** Says in a plan's overview which solver its search had, as lines; none where it had none. */
export function writeSolver(lp: string): readonly string[] {
  return lp === "none"
    ? []
    : [
        `Searched with the help of ${lp}, which works out how often to cut what; without it (--own-solver)`,
        "another plan may come out.",
        "",
      ];
}
