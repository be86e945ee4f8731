import { type Problem, pack } from "@sheetwright/packing";
import { type PlanFinding, type PlanFindingCode, verifyPlan } from "../../src/index.js";
import { enough, type Sample } from "./sample-plans.js";

// Ways to damage a plan: a value at a path is changed, and where it is of a problem, the problem is packed anew, so that
// the packing is right and only the problem says what the project does not.

/** What becomes of a value. */
export type Change = (value: unknown) => unknown;

/** One kind of damage. */
export interface Damage {
  /** `a plan that ...` */
  readonly does: string;
  readonly code: PlanFindingCode;
  /** What is changed. */
  readonly path: string;
  readonly change: Change;
  /** What is damaged; default: the plan with enough of everything. */
  readonly of?: Sample;
  /** The path of the finding, or its beginning; default: what is changed. */
  readonly at?: string;
}

/** A number that is so much more. */
export const more =
  (by: number): Change =>
  (value) =>
    (value as number) + by;

/** Another value. */
export const to =
  (value: unknown): Change =>
  () =>
    value;

/** The other of true and false. */
export const opposite: Change = (value) => !value;

/** No value. */
export const gone: Change = () => undefined;

/** A list without its last entry. */
export const shorter: Change = (value) => (value as readonly unknown[]).slice(0, -1);

/** A list with entries more. */
export const longer =
  (...entries: readonly unknown[]): Change =>
  (value) => [...(value as readonly unknown[]), ...entries];

type Fields = Record<string, unknown>;

/** A copy of a sample's plan after the damage. */
function damaged({ path, change, of = enough }: Damage): Fields {
  const plan = JSON.parse(JSON.stringify(of.plan)) as Fields;
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  const parent = keys.slice(0, -1).reduce<Fields>((value, key) => value[key] as Fields, plan);
  const last = keys.at(-1) ?? "";
  parent[last] = change(parent[last]);
  const [holder] =
    /^(groups\[\d+\](?:\.endless)?|shortages\[\d+\]\.withMore)(?=\.problem(?!.*\bname$))/.exec(path) ?? [];
  if (holder !== undefined) repack(plan, holder);
  return JSON.parse(JSON.stringify(plan));
}

function repack(plan: Fields, holder: string): void {
  const at = holder
    .split(/[.[\]]+/)
    .filter((key) => key !== "")
    .reduce<Fields>((value, key) => value[key] as Fields, plan);
  at.packing = pack(at.problem as Problem, { effort: "quick" });
}

/** What is found of a damaged plan under the code and at the place where it is due; or all that is found instead. */
export function findingOf(damage: Damage): PlanFinding | readonly PlanFinding[] {
  const { code, path, of = enough, at = path } = damage;
  const found = verifyPlan(of.project, damaged(damage) as never);
  return found.find((one) => one.code === code && one.path.startsWith(at)) ?? found.slice(0, 5);
}
