import type { Paper } from "@sheetwright/cards";
import type { Sheet } from "@sheetwright/packing";
import { groupBound, type PaperGroup } from "@sheetwright/planner";

/**
 * How good the plan of papers that are planned together is proven to be.
 * - `fewest`: no plan for all pieces uses fewer whole sheets. `least`: none costs less.
 * - `sheets`: at most so many whole sheets more than the fewest. `percent`: at most so much above the least cost.
 * - `nothing`: not all pieces are planned, so that there is nothing to compare.
 */
export interface GroupProof {
  readonly designs: readonly string[];
  readonly proven: "fewest" | "least" | "sheets" | "percent" | "nothing";
  /** The most that the plan may be above what is proven: whole sheets, or percent rounded up to one decimal; else 0. */
  readonly above: number;
  /** What `least` and `percent` speak of: money where every paper of the group has a cost, else the area of the sheets. */
  readonly measure: "cost" | "area";
}

/**
 * Says what the bound of a group's packing proves: of all ways to cut it, and where die blanks may be cut in strips so of all
 * strips.
 */
export function groupProof(group: PaperGroup, papers: readonly Paper[]): GroupProof {
  const { designs, problem, packing, sheets, endless, bags = 1 } = group;
  const costs = papers
    .flatMap((paper) => paper.designs)
    .filter(({ id }) => designs.includes(id))
    .map(({ cost }) => cost);
  const measure = costs.some((cost) => cost === null) ? "area" : "cost";
  const proof = (proven: GroupProof["proven"], above = 0): GroupProof => ({
    designs,
    proven,
    above,
    measure,
  });
  const { cost: total, outcome } = packing;
  const bound = groupBound(group);
  if (outcome !== "complete" || bound.aim !== "all" || bound.cost === null) return proof("nothing");
  const whole = problem.sheets.filter(({ id }) =>
    sheets.some((one) => one.sheet === id && one.offcut === null),
  );
  const [first, ...others] = whole.map(costOf);
  const cost = BigInt(total);
  const least = BigInt(bound.cost);
  const isBest = cost === least || (endless === undefined && packing.proven);
  if (first !== undefined && first > 0n && others.every((one) => one === first)) {
    const above = Number((cost - least) / first);
    return isBest || above === 0 ? proof("fewest") : proof("sheets", above * bags);
  }
  if (isBest) return proof("least");
  return least === 0n
    ? proof("nothing")
    : proof("percent", Number(((cost - least) * 1000n + least - 1n) / least) / 10);
}

function costOf({ cost, width, height }: Sheet): bigint {
  return cost === undefined ? BigInt(width) * BigInt(height) : BigInt(cost);
}
