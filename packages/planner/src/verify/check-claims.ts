import { explainNoPaper } from "@sheetwright/cards";
import type { Plan } from "../plan-model.js";
import type { ItemCount } from "./check-item-use.js";
import type { PlanCount } from "./count-plan.js";
import { firstDifference } from "./first-difference.js";
import type { PlanFindingCode, PlanReport } from "./plan-finding.js";
import type { ProjectFacts } from "./project-facts.js";
import { provenOutcome, readCuts } from "./read-cuts.js";

/** Checks what a plan says of itself against what its layouts were counted to hold. */
export function checkClaims(
  plan: Plan,
  facts: ProjectFacts,
  count: PlanCount,
  items: ItemCount,
  report: PlanReport,
): void {
  const same = (code: PlanFindingCode, found: unknown, expected: unknown, path: string): void => {
    const difference = firstDifference(found, expected, path);
    if (difference === null) return;
    const { path: place, found: is, expected: should } = difference;
    report(code, place, `${place} is ${is}, but the layouts make it ${should}.`);
  };
  const { papers, cards, pieces } = facts.expansion;
  const placed = (id: string): number => count.placed.get(id) ?? 0;

  const complete = cards.map(({ number: card, copies: wanted, copiesFor: { spares: wished } }) => {
    const own = pieces
      .filter((piece) => piece.card === card)
      .map(({ id, cutAlready = 0 }) => placed(id) + cutAlready);
    const least = own.reduce((fewest, one) => Math.min(fewest, one), Number.POSITIVE_INFINITY);
    // Which copies an item that is short should have gone into is not judged.
    const said = plan.complete.find((one) => one.card === card)?.complete ?? 0;
    const most = Math.min(wanted, least);
    const base = { card, wanted, complete: items.limited.has(card) ? Math.min(said, most) : most };
    if (wished === undefined) return base;
    return { ...base, spares: { wished, made: Math.min(wished, Math.max(0, least - wanted)) } };
  });
  same("wrong-complete", plan.complete, complete, "complete");

  const used = (id: string): number => count.used.get(id) ?? 0;
  const use = papers.flatMap(({ designs }) =>
    designs.map(({ id: design, count: stock, offcuts }) => ({
      design,
      used: used(design),
      left: stock === null ? null : stock - used(design),
      offcutsUsed: offcuts.reduce((sum, _, i) => sum + used(`${design}/${i + 1}`), 0),
    })),
  );
  same("wrong-use", plan.use, use, "use");
  same("wrong-cost", plan.cost, costOf(facts, used), "cost");
  const made = complete.map((one) => one.complete + ("spares" in one ? one.spares.made : 0));
  const copies = made.reduce((sum, one) => sum + one, 0);
  same("wrong-cost", plan.costs, workCosts(facts, copies, costOf(facts, used)), "costs");
  same("wrong-leftovers", plan.leftovers, leftoversOf(facts, count), "leftovers");
  const folds = [...count.folds].map(([piece, lies]) => ({ piece, ...lies }));
  same("wrong-folds", plan.folds, folds, "folds");

  const misses = plan.groups.some((group) =>
    [...readCuts(group, facts).values()].some(({ piece }) => placed(piece.id) < piece.quantity),
  );
  const isProvenShort = plan.groups.some((group) => provenOutcome(group) === "short");
  const isHomeless = pieces.some(({ id, quantity }) => quantity > 0 && facts.homeless.has(id));
  const isNo = isHomeless || isProvenShort || items.isProven;
  const withSpares = plan.complete.find(({ spares }) => (spares?.made ?? 0) > 0);
  if (withSpares !== undefined && (isNo || misses || items.lacks)) {
    const message = `Card ${withSpares.card} has spare copies, though not every copy that is asked for has its pieces and items.`;
    report("spares-too-soon", "complete", message);
  }
  same("wrong-enough", plan.enough, isNo ? "no" : misses || items.lacks ? "not-found" : "yes", "enough");
}

/** Checks which pieces are said to find no paper, and what is said of each. */
export function checkNoPaper(plan: Plan, facts: ProjectFacts, report: PlanReport): void {
  const expected = [...facts.homeless].filter((id) => (facts.pieces.get(id)?.quantity ?? 0) > 0);
  const found = plan.noPaper.map(({ piece }) => piece);
  const difference = firstDifference(found, expected, "noPaper");
  if (difference !== null) {
    const { path, found: is, expected: should } = difference;
    report(
      "wrong-no-paper",
      path,
      `Pieces too large for all their papers: found ${is} where ${should} is due.`,
    );
    return;
  }
  for (const [i, told] of plan.noPaper.entries()) {
    const piece = facts.pieces.get(told.piece);
    if (piece === undefined) continue;
    const wrong = firstDifference(told, explainNoPaper(facts.project, piece), `noPaper[${i}]`);
    if (wrong !== null)
      report(
        "wrong-no-paper",
        wrong.path,
        `${wrong.path} is ${wrong.found}; it should be ${wrong.expected}.`,
      );
  }
}

/** Checks that the plan's record of its search agrees with those of its packings. */
export function checkSearch(plan: Plan, report: PlanReport): void {
  const { effort, seed, lp, cancelled } = plan.search;
  const solvers = plan.groups.map(({ packing }) => packing.search.lp).filter((name) => name !== "none");
  const solver = solvers[0] ?? "none";
  if (lp !== solver) {
    report("wrong-search", "search.lp", `search.lp is ${lp}, but the groups were searched with ${solver}.`);
  }
  for (const [g, { packing }] of plan.groups.entries()) {
    const { search } = packing;
    // A group that has no use for a solver is searched without.
    const own = { effort: search.effort, seed: search.seed, lp: search.lp === "none" ? lp : search.lp };
    const difference = firstDifference({ effort, seed, lp }, own, "search");
    if (difference !== null) {
      const { path, found, expected } = difference;
      report("wrong-search", path, `${path} is ${found}, but group ${g} was searched with ${expected}.`);
    }
    if (search.ended === "cancelled" && !cancelled) {
      report("wrong-search", "search.cancelled", `Group ${g} was ended early, but the plan says it was not.`);
    }
  }
}

function costOf(facts: ProjectFacts, used: (sheet: string) => number): string | null {
  let hundredMillionths = 0n;
  for (const { id, offcut, design } of facts.sheets.values()) {
    if (offcut !== null || used(id) === 0) continue;
    if (design.cost === null) return null;
    const [whole = "", part = ""] = design.cost.split(".");
    hundredMillionths += BigInt(used(id)) * BigInt(whole + part.padEnd(8, "0"));
  }
  const digits = hundredMillionths.toString().padStart(9, "0");
  return `${digits.slice(0, -8)}.${digits.slice(-8).replace(/0{1,6}$/, "")}`;
}

/** What so many copies cost in work, and with the paper: whole numbers only, the last step up to the next hundredth. */
function workCosts({ project }: ProjectFacts, copies: number, paper: string | null): Plan["costs"] {
  if (project.rates === undefined) return undefined;
  const { currency, hour, minutesPerCard } = project.rates;
  const minutes = minutesPerCard === null ? null : tenThousandths(minutesPerCard) * BigInt(copies);
  // Ten-thousandths of minutes times ten-thousandths of the currency, of which sixty make an hour.
  const exact = minutes === null || hour === null ? null : minutes * tenThousandths(hour);
  const work = exact === null ? null : exact / 60_000_000n + (exact % 60_000_000n > 0n ? 1n : 0n);
  const total = work === null || paper === null ? null : work * 100n + tenThousandths(paper);
  const money = (value: bigint | null): string | null =>
    value === null ? null : decimalOf(value).replace(/(\.\d\d\d*?)0+$/, "$1");
  return {
    currency,
    copies,
    minutes: minutes === null ? null : decimalOf(minutes).replace(/\.?0+$/, ""),
    work: work === null ? null : money(work * 100n),
    total: money(total),
  };
}

function tenThousandths(decimal: string): bigint {
  const [whole = "", part = ""] = decimal.split(".");
  return BigInt(whole + part.padEnd(4, "0"));
}

/** With four decimals. */
function decimalOf(value: bigint): string {
  const digits = value.toString().padStart(5, "0");
  return `${digits.slice(0, -4)}.${digits.slice(-4)}`;
}

function leftoversOf({ expansion, project }: ProjectFacts, count: PlanCount): Plan["leftovers"] {
  const { smallestOffcut } = project.trimmer;
  const long = Math.max(smallestOffcut.width, smallestOffcut.height);
  const short = Math.min(smallestOffcut.width, smallestOffcut.height);
  const order = expansion.papers.flatMap(({ designs }) => designs.map(({ id }) => id));
  return [...count.leftovers.values()]
    .map((one) => ({
      ...one,
      keep: Math.max(one.width, one.height) >= long && Math.min(one.width, one.height) >= short,
    }))
    .sort(
      (a, b) =>
        order.indexOf(a.design) - order.indexOf(b.design) ||
        b.width * b.height - a.width * a.height ||
        b.width - a.width,
    );
}
