import { verify } from "@sheetwright/packing";
import type { PaperGroup, Plan } from "../plan-model.js";
import { bagFacts } from "./bag-facts.js";
import { checkProblem } from "./check-problem.js";
import { shown } from "./first-difference.js";
import type { PlanReport } from "./plan-finding.js";
import { mayLie, type ProjectFacts } from "./project-facts.js";
import { type CutFacts, endlessForms, MOST_SHAPES, readCuts, whyNoStrip } from "./read-cuts.js";

/**
 * Checks that every strip of a plan stands for shapes that may be cut in strips, goes through the die machine, and is there
 * only where everything is planned; and that what bounds all ways to cut strips is there where there is more than one, is
 * what the die blanks make it, and is proven. Sizes and numbers of strips are compared where the problem is.
 */
export function checkStrips(
  plan: Plan,
  spares: ReadonlyMap<number, number>,
  facts: ProjectFacts,
  report: PlanReport,
): void {
  for (const [g, group] of plan.groups.entries()) {
    const own = bagFacts(group, facts);
    const cuts = readCuts(group, own);
    checkList(group, cuts, `groups[${g}]`, own, report);
    checkEndless(group, cuts, spares, `groups[${g}].endless`, own, report);
  }
}

function checkList(
  { problem, packing, strips = [] }: PaperGroup,
  cuts: ReadonlyMap<string, CutFacts>,
  group: string,
  facts: ProjectFacts,
  report: PlanReport,
): void {
  if (strips.length > 0 && packing.outcome !== "complete")
    report("strips-too-soon", `${group}.strips`, "Strips are planned where pieces are missing.");
  const seen = new Set<string>();
  for (const [s, { kind, piece: id, holds, along }] of strips.entries()) {
    const path = `${group}.strips[${s}]`;
    const form = problem.kinds.find((one) => one.id === kind);
    const piece = facts.pieces.get(id);
    const isList = along.length === new Set(along).size && along.length === form?.forms.length;
    if (
      form === undefined ||
      piece === undefined ||
      facts.pieces.has(kind) ||
      seen.has(kind) ||
      holds < 2 ||
      holds > MOST_SHAPES ||
      !isList
    ) {
      const message = `${shown({ kind, piece: id, holds, along })} is no strip for several shapes of a piece of the group.`;
      report("wrong-strip", path, message);
      continue;
    }
    seen.add(kind);
    const reasons = new Set((cuts.get(kind)?.forms ?? []).map((one) => whyNoStrip(piece, one, facts)));
    if (reasons.has("forbidden"))
      report("strip-forbidden", path, `${piece.label} is not to be cut in strips, but one by one.`);
    if (reasons.has("too-wide"))
      report(
        "strip-too-wide",
        path,
        `A strip of ${holds} for ${piece.label} does not go between the plates.`,
      );
  }
}

/** The problem that bounds all strips is that of the group, with shares of strips in place of die blanks. */
function checkEndless(
  { designs, endless, problem, strips = [] }: PaperGroup,
  cuts: ReadonlyMap<string, CutFacts>,
  spares: ReadonlyMap<number, number>,
  path: string,
  facts: ProjectFacts,
  report: PlanReport,
): void {
  const sheets = [...facts.sheets.values()].filter(({ design }) => designs.includes(design.id));
  const shares = new Map<string, CutFacts>();
  let hasShares = false;
  for (const { id } of problem.kinds) {
    const piece = cuts.get(id)?.piece;
    if (piece === undefined || shares.has(piece.id)) continue;
    const wanted = piece.quantity + (spares.get(piece.card) ?? 0);
    const lies = (sheet: (typeof sheets)[number], turned: boolean) =>
      piece.forms.every((form) => mayLie(piece, form, sheet, turned));
    const forms = endlessForms(piece, wanted, sheets, lies, facts);
    hasShares ||= forms.length > 0;
    const own = forms.length > 0 ? forms : piece.forms;
    shares.set(piece.id, { piece, holds: 1, name: piece.label, forms: own });
  }
  const wrong = (at: string, message: string) => report("wrong-endless", at, message);
  if (endless === undefined || !hasShares) {
    if (hasShares || endless !== undefined || strips.length > 0) {
      const found = endless === undefined ? "nothing" : "something";
      wrong(
        path,
        `${found} bounds the strips of die blanks; ${hasShares ? "some" : "none"} may be cut in strips.`,
      );
    }
    return;
  }
  for (const finding of verify(endless.problem, endless.packing))
    wrong(`${path}.${finding.path}`, finding.message);
  const ids = endless.problem.kinds.map(({ id }) => id);
  if (JSON.stringify(ids) !== JSON.stringify([...shares.keys()]))
    wrong(
      `${path}.problem.kinds`,
      `The pieces are ${shown(ids)}, those of the group ${shown([...shares.keys()])}.`,
    );
  // Where not all can be had there is nothing to look for: all is one set that is wanted once.
  const kinds = endless.problem.kinds.map((kind) => {
    const piece = facts.pieces.get(kind.id);
    const isWhole = kind.set?.of === "all" && kind.set.each === Math.max(1, kind.quantity ?? 0);
    if (piece === undefined || !isWhole) return kind;
    // Where all that is asked for is cut already, only spares are wanted, and these belong to no set.
    const isInSet = !facts.hopeless.has(piece.card) && piece.quantity > 0;
    return { ...kind, set: isInSet ? { of: String(piece.card), each: 1 } : undefined };
  });
  checkProblem(
    { problem: { ...endless.problem, kinds }, designs },
    shares,
    { mode: "guillotine", longestCut: null },
    spares,
    `${path}.problem`,
    facts,
    (_, at, message) => wrong(at, message),
  );
}
