import { type Kind, type Problem, type Sheet, type SheetTurns, verify } from "@sheetwright/packing";
import type { PaperGroup, Plan, Shortage } from "../plan-model.js";
import { bagFacts, bagsOf } from "./bag-facts.js";
import type { PlanCount } from "./count-plan.js";
import { type Difference, firstDifference, shown } from "./first-difference.js";
import type { PlanReport } from "./plan-finding.js";
import type { ProjectFacts } from "./project-facts.js";
import { provenOutcome, readCuts } from "./read-cuts.js";

/** Checks what is said to be missing of each group, and re-proves how many sheets more would help. */
export function checkShortages(plan: Plan, facts: ProjectFacts, count: PlanCount, report: PlanReport): void {
  const expected = plan.groups.flatMap((group, index) => {
    const cut = new Set([...readCuts(group, facts).values()].map(({ piece }) => piece));
    const pieces = [...cut]
      .map(({ id, quantity }) => ({ piece: id, missing: quantity - (count.placed.get(id) ?? 0) }))
      .filter(({ missing }) => missing > 0);
    return pieces.length === 0 ? [] : [{ group: index, outcome: provenOutcome(group), pieces }];
  });
  const stated = plan.shortages.map(({ group, outcome, pieces }) => ({ group, outcome, pieces }));
  const difference = firstDifference(stated, expected, "shortages");
  if (difference !== null) {
    const { path, found, expected: should } = difference;
    report("wrong-shortage", path, `${path} is ${found}, but the layouts make it ${should}.`);
  }
  for (const [i, shortage] of plan.shortages.entries()) {
    const group = plan.groups[shortage.group];
    if (group === undefined) continue;
    for (const wrong of wrongProof(shortage, group, facts)) {
      report("wrong-more-sheets", `shortages[${i}].${wrong.path}`, wrong.message);
    }
  }
}

interface Wrong {
  readonly path: string;
  readonly message: string;
}

function wrongProof(shortage: Shortage, group: PaperGroup, facts: ProjectFacts): readonly Wrong[] {
  const { withMore, wouldHelp, atLeast } = shortage;
  if (withMore === null) {
    const claims = firstDifference({ wouldHelp, atLeast }, { wouldHelp: [], atLeast: null }, "");
    if (claims === null) return [];
    return [{ path: claims.path, message: `${claims.path} is ${claims.found}, but no plan proves it.` }];
  }
  const { problem, packing } = withMore;
  const faults = verify(problem, packing);
  if (faults.length > 0)
    return faults.map(({ path, message }) => ({ path: `withMore.packing.${path}`, message }));
  const difference = wrongSheets(problem, group, facts) ?? wrongPieces(problem, group);
  if (difference !== null) {
    const { path, found, expected } = difference;
    return [{ path, message: `${path} is ${found}, but the same papers and pieces make it ${expected}.` }];
  }
  const bags = bagsOf(group, facts);
  const times = bags ?? 1;
  const more = group.designs
    .map((design) => {
      const stock = facts.sheets.get(design)?.stock ?? null;
      const inOne = bagFacts(group, facts).sheets.get(design)?.stock ?? null;
      const used = packing.layouts
        .filter(({ sheet }) => plainId(sheet) === design)
        .reduce((sum, { run }) => sum + run, 0);
      // Sheets that do not divide among the bags help once there are enough of them.
      const lacks = stock !== null && inOne !== null && used > inOne;
      return { design, more: lacks ? used * times - stock : 0 };
    })
    .filter((one) => one.more > 0);
  // With die blanks in strips fewer sheets may do.
  const least = packing.bound.aim === "all" && group.endless === undefined ? packing.bound.sheets : null;
  const leastOfAll = least === null || least === undefined ? null : least * times;
  const proven =
    packing.outcome === "complete" ? { wouldHelp: more, atLeast: leastOfAll } : { wouldHelp: [] };
  const claims = firstDifference({ wouldHelp, atLeast }, proven, "");
  if (claims === null) return [];
  return [{ path: claims.path, message: `${claims.path} is ${claims.found}; proven is ${claims.expected}.` }];
}

/** A design's sheets beyond those on hand are called like it with a plus sign. */
function plainId(sheet: string): string {
  return sheet.endsWith("+") ? sheet.slice(0, -1) : sheet;
}

/** Sheets must be like those of the group: of the whole ones as many as needed, of offcuts those that there are. */
function wrongSheets(problem: Problem, group: PaperGroup, facts: ProjectFacts): Difference | null {
  const like = ({ name, width, height, trim, longestCut }: Sheet): unknown => ({
    name,
    width,
    height,
    trim,
    longestCut,
  });
  const path = "withMore.problem.sheets";
  for (const [i, sheet] of problem.sheets.entries()) {
    const own = group.problem.sheets.find(({ id }) => id === plainId(sheet.id));
    const named = own && (sheet.id === own.id ? own : { ...own, name: `${own.name}, more` });
    const difference = firstDifference(like(sheet), named && like(named), `${path}[${i}]`);
    if (difference !== null) return difference;
  }
  for (const own of group.problem.sheets) {
    const stocks = problem.sheets.filter(({ id }) => plainId(id) === own.id).map(({ stock = null }) => stock);
    const isWhole = facts.sheets.get(own.id)?.offcut === null;
    const isSound = isWhole ? stocks.includes(null) : stocks.length === 1 && stocks[0] === own.stock;
    const expected = isWhole ? `as many of ${own.id} as needed` : `${own.stock} of ${own.id}`;
    if (!isSound) return { path, found: `a stock of ${shown(stocks)}`, expected };
  }
  return null;
}

/** The pieces must be the same, and may be cut from sheets more just as from those on hand. */
function wrongPieces(problem: Problem, group: PaperGroup): Difference | null {
  const { sheets: _, kinds, ...rest } = group.problem;
  const { sheets, ...found } = problem;
  const withMore = ({ sheet, turns }: SheetTurns): readonly SheetTurns[] =>
    sheets.filter(({ id }) => plainId(id) === sheet).map(({ id }) => ({ sheet: id, turns }));
  const bySheet = (a: SheetTurns, b: SheetTurns): number => (a.sheet < b.sheet ? -1 : 1);
  const ordered = (kind: Kind, change: (use: SheetTurns) => readonly SheetTurns[]): Kind => ({
    ...kind,
    forms: kind.forms.map((form) => ({ ...form, sheets: form.sheets?.flatMap(change).sort(bySheet) })),
  });
  return firstDifference(
    { ...found, kinds: problem.kinds.map((kind) => ordered(kind, (use) => [use])) },
    { ...rest, kinds: kinds.map((kind) => ordered(kind, withMore)) },
    "withMore.problem",
  );
}
