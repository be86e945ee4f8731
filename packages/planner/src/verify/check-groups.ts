import type { Piece } from "@sheetwright/cards";
import type { Plan } from "../plan-model.js";
import { bagsOf } from "./bag-facts.js";
import { firstDifference, shown } from "./first-difference.js";
import type { PlanReport } from "./plan-finding.js";
import type { ProjectFacts } from "./project-facts.js";
import { readCuts } from "./read-cuts.js";

/** Checks which papers are planned together, which sheets they are, and that every piece is in one group of its papers. */
export function checkGroups(plan: Plan, facts: ProjectFacts, report: PlanReport): void {
  const expected = connectedDesigns(facts);
  const found = plan.groups.map(({ designs }) => designs);
  const difference = firstDifference(found, expected, "groups");
  if (difference !== null) {
    const { path, found: is, expected: should } = difference;
    const message = `Papers that share pieces are planned together: found ${is} where ${should} is due.`;
    report("wrong-groups", path, message);
  }
  for (const [g, group] of plan.groups.entries()) {
    const bags = bagsOf(group, facts);
    if (group.bags !== bags) {
      const expected = bags === undefined ? "none, since its papers are cut for all" : `${bags}`;
      const message = `The bags that the group is planned for are ${shown(group.bags)}; expected ${expected}.`;
      report("wrong-bags", `groups[${g}].bags`, message);
    }
    const sheets = group.designs.flatMap((design) =>
      [...facts.sheets.values()]
        .filter((sheet) => sheet.design.id === design)
        .map(({ id: sheet, offcut }) => ({ sheet, design, offcut })),
    );
    const wrong = firstDifference(group.sheets, sheets, `groups[${g}].sheets`);
    if (wrong === null) continue;
    const message = `The sheets of these papers are listed as ${wrong.found} where ${wrong.expected} is due.`;
    report("wrong-sheet-list", wrong.path, message);
  }
  checkPieces(plan, facts, report);
}

function checkPieces(plan: Plan, facts: ProjectFacts, report: PlanReport): void {
  const seen = new Map<string, number>();
  for (const [g, group] of plan.groups.entries()) {
    const cuts = readCuts(group, facts);
    for (const [k, { id }] of group.problem.kinds.entries()) {
      const path = `groups[${g}].problem.kinds[${k}].id`;
      const piece = cuts.get(id)?.piece;
      if (piece === undefined || !designsOf(piece, facts).some((design) => group.designs.includes(design))) {
        const why = piece === undefined ? "the project has no such piece" : "it is not cut from these papers";
        report("unknown-piece", path, `The group cuts ${shown(id)}, but ${why}.`);
      }
      if (piece === undefined) continue;
      if ((seen.get(piece.id) ?? g) !== g)
        report("piece-twice", path, `Piece ${shown(piece.id)} is in another group as well.`);
      if (facts.homeless.has(piece.id)) {
        report("unknown-piece", path, `The group cuts ${shown(id)}, which is too large for all its papers.`);
      }
      seen.set(piece.id, g);
    }
  }
  for (const { id, label } of facts.pieces.values()) {
    if (seen.has(id) || facts.homeless.has(id)) continue;
    report(
      "piece-not-planned",
      "groups",
      `${label} is in no group. Plan it with the papers it may be cut from.`,
    );
  }
}

/** The designs of each group, by growing one from each design that some piece needs until nothing more joins it. */
function connectedDesigns(facts: ProjectFacts): readonly (readonly string[])[] {
  const links = [...facts.pieces.values()]
    .filter(({ id }) => !facts.homeless.has(id))
    .map((piece) => designsOf(piece, facts));
  const order = facts.expansion.papers.flatMap(({ designs }) => designs.map(({ id }) => id));
  const reached = new Set<string>();
  const groups: (readonly string[])[] = [];
  for (const start of order) {
    if (reached.has(start) || !links.some((link) => link.includes(start))) continue;
    const group = new Set([start]);
    for (let size = 0; size < group.size; ) {
      size = group.size;
      for (const link of links) {
        if (link.some((design) => group.has(design))) for (const design of link) group.add(design);
      }
    }
    for (const design of group) reached.add(design);
    groups.push(order.filter((design) => group.has(design)));
  }
  return groups;
}

function designsOf(piece: Piece, facts: ProjectFacts): readonly string[] {
  return facts.expansion.papers.flatMap(({ designs }) =>
    designs
      .filter(({ front, back }) =>
        [front, back].some((face) => face !== null && piece.faces.includes(face.id)),
      )
      .map(({ id }) => id),
  );
}
