import type { Piece } from "@sheetwright/cards";
import type { Share } from "@sheetwright/packing";
import type { FoldGrain, Plan } from "../plan-model.js";
import { bagsOf } from "./bag-facts.js";
import type { PlanReport } from "./plan-finding.js";
import { facesOn, grainAllows, type ProjectFacts, patternAllows, type SheetFacts } from "./project-facts.js";
import { type CutFacts, readCuts } from "./read-cuts.js";
import { type Place, readLayout } from "./read-layout.js";

/** What all layouts of a plan come to. */
export interface PlanCount {
  /** Sheets cut, by the id of the sheet. */
  readonly used: ReadonlyMap<string, number>;
  /** Copies cut, by the id of the piece, those in strips among them. */
  readonly placed: ReadonlyMap<string, number>;
  /** Leftovers by design and size: `night 1200 x 800`. */
  readonly leftovers: ReadonlyMap<string, Leftovers>;
  readonly folds: ReadonlyMap<string, Omit<FoldGrain, "piece">>;
}

/** Leftovers of one size. */
interface Leftovers {
  readonly design: string;
  readonly width: number;
  readonly height: number;
  readonly count: number;
}

/**
 * Counts what the layouts of all groups hold, and checks on the way that every piece comes from one of its papers, in its
 * size, as pattern and required grain allow, and that no sheet is cut more often than there are. Takes packings that were
 * proven right for their problems; the problems themselves are not looked at.
 */
export function countPlan(
  plan: Plan,
  spares: ReadonlyMap<number, number>,
  facts: ProjectFacts,
  report: PlanReport,
): PlanCount {
  const used = new Map<string, number>();
  const placed = new Map<string, number>();
  const leftovers = new Map<string, Leftovers>();
  const folds = new Map(
    [...facts.pieces.values()]
      .filter(({ forms }) => forms.some(({ scores }) => scores.length > 0))
      .map(({ id }) => [id, { along: 0, across: 0, unknown: 0, none: 0 }]),
  );
  for (const [g, group] of plan.groups.entries()) {
    const cuts = readCuts(group, facts);
    // What one bag holds, every one does.
    const times = bagsOf(group, facts) ?? 1;
    for (const [i, layout] of group.packing.layouts.entries()) {
      const sheet = facts.sheets.get(layout.sheet);
      // A sheet that the project does not have is reported where the problem is judged.
      if (sheet === undefined) continue;
      used.set(sheet.id, (used.get(sheet.id) ?? 0) + layout.run * times);
      for (const place of readLayout(layout, sheet)) {
        if (place.left > 0) addLeftover(leftovers, sheet.design.id, { ...place, left: place.left * times });
        for (const share of place.shares) {
          const cut = cuts.get(share.kind);
          if (cut === undefined) continue;
          const { piece, holds } = cut;
          placed.set(piece.id, (placed.get(piece.id) ?? 0) + holds * share.count * times);
          checkPlace(cut, share, sheet, place, `groups[${g}].packing.layouts[${i}]${place.path}`, report);
          const fold = folds.get(piece.id);
          if (fold !== undefined) fold[lieOfFold(piece, share, sheet)] += share.count * times;
        }
      }
    }
  }
  checkStock(facts, used, report);
  for (const piece of facts.pieces.values()) {
    const count = placed.get(piece.id) ?? 0;
    const wanted = piece.quantity + (spares.get(piece.card) ?? 0);
    if (count <= wanted) continue;
    report("too-many-pieces", "groups", `${count} copies of ${piece.label} are cut; ${wanted} are wanted.`);
  }
  return { used, placed, leftovers, folds };
}

function checkPlace(
  { piece, name, forms }: CutFacts,
  { form: index, turned }: Share,
  sheet: SheetFacts,
  place: Place,
  path: string,
  report: PlanReport,
): void {
  const lies = turned ? "turned" : "upright";
  const { design, paper } = sheet;
  if (facesOn(piece, design).length === 0) {
    const wanted = piece.faces.join(" or ");
    report("wrong-paper", path, `${name} is cut from ${design.id}; it may be cut from ${wanted}.`);
  } else if (!patternAllows(piece, design, turned)) {
    report("pattern-broken", path, `${name} lies ${lies} on ${design.id}; its pattern must stay upright.`);
  }
  const form = forms[index];
  if (form === undefined) {
    report("piece-size", path, `${name} is cut by form ${index}; it has ${forms.length} of them.`);
    return;
  }
  if (!grainAllows(piece, form, paper, turned)) {
    const grain = paper.grain === "unknown" ? "of unknown grain" : `with its grain along the ${paper.grain}`;
    const wanted = `the grain must run along its ${form.grainAlong}`;
    report("grain-broken", path, `${name} lies ${lies} on ${design.id}, ${grain}; ${wanted}.`);
  }
  const [width, height] = turned ? [form.height, form.width] : [form.width, form.height];
  if (place.width !== width || place.height !== height) {
    const found = `${place.width} x ${place.height}`;
    report("piece-size", path, `${name} is cut ${found}; lying ${lies} it is ${width} x ${height}.`);
  }
}

/** How the grain lies at the first score: along where it runs the way the score does on the sheet. */
function lieOfFold(piece: Piece, share: Share, { paper }: SheetFacts): keyof Omit<FoldGrain, "piece"> {
  const score = piece.forms[share.form]?.scores[0];
  if (score === undefined || paper.grain === "unknown") return "unknown";
  if (paper.grain === "none") return "none";
  // A score that divides the width runs along the height; a quarter turn swaps the two.
  const runsDown = (score.along === "width") !== share.turned;
  return runsDown === (paper.grain === "height") ? "along" : "across";
}

function addLeftover(leftovers: Map<string, Leftovers>, design: string, place: Place): void {
  const { width, height, left } = place;
  const key = `${design} ${width} x ${height}`;
  const count = (leftovers.get(key)?.count ?? 0) + left;
  leftovers.set(key, { design, width, height, count });
}

function checkStock(facts: ProjectFacts, used: ReadonlyMap<string, number>, report: PlanReport): void {
  for (const [id, count] of used) {
    const stock = facts.sheets.get(id)?.stock ?? null;
    if (stock === null || count <= stock) continue;
    report("over-stock", "groups", `${count} sheets of ${id} are cut; there are ${stock}.`);
  }
}
