import type { Project } from "@sheetwright/cards";
import { formatSize } from "@sheetwright/measure";
import type { Form, Kind, Problem, Sheet } from "@sheetwright/packing";
import type { PaperGroup } from "../plan-model.js";
import { type Difference, firstDifference, shown } from "./first-difference.js";
import type { PlanFindingCode, PlanReport } from "./plan-finding.js";
import { mayLie, type ProjectFacts, type SheetFacts } from "./project-facts.js";
import type { CutFacts } from "./read-cuts.js";

/** How the problem that bounds all strips differs from that of the group. */
export interface ProblemRules {
  readonly mode: Problem["mode"];
  readonly longestCut: Sheet["longestCut"];
}

/** What cuts of the project's trimmer may be. */
export function trimmerRules({ trimmer }: Project): ProblemRules {
  return {
    mode: trimmer.cuts === "edge-to-edge" ? "guillotine" : "shelf",
    longestCut: trimmer.longestCut,
  };
}

/**
 * Checks that the problem of a group says what the project says. Takes a problem that packing's verifier could read.
 *
 * @param cuts What each kind is, by its id.
 * @param spares Spare copies that the plan says to have, by card; whether it has them is counted elsewhere.
 */
export function checkProblem(
  { problem, designs }: Pick<PaperGroup, "problem" | "designs">,
  cuts: ReadonlyMap<string, CutFacts>,
  rules: ProblemRules,
  spares: ReadonlyMap<number, number>,
  path: string,
  facts: ProjectFacts,
  report: PlanReport,
): void {
  const same = comparing(report);
  const { trimmer } = facts.project;
  const tool = {
    mode: rules.mode,
    aim: "all",
    kerf: trimmer.kerf,
    smallestOffcut: { width: trimmer.smallestOffcut.width, height: trimmer.smallestOffcut.height },
  };
  const { mode, aim, kerf = 0, smallestOffcut, stages } = problem;
  same("wrong-tool", { mode, aim, kerf, smallestOffcut, stages: stages ?? undefined }, tool, path);

  const sheets = [...facts.sheets.values()].filter((sheet) => designs.includes(sheet.design.id));
  const whole = sheets.filter(({ offcut }) => offcut === null);
  const costs = whole.map(({ design }) => design.cost);
  const isPriced = !costs.includes(null) && costs.some((cost) => Number(cost) > 0);
  const hasFree = isPriced && costs.some((cost) => Number(cost) === 0);
  for (const sheet of sheets) {
    const index = problem.sheets.findIndex(({ id }) => id === sheet.id);
    const found = problem.sheets[index];
    if (found === undefined) {
      report(
        "sheet-missing",
        `${path}.sheets`,
        `Sheet ${sheet.id} is left out of the papers planned together.`,
      );
    } else {
      checkSheet(
        found,
        sheet,
        facts.project,
        rules,
        { isPriced, hasFree },
        `${path}.sheets[${index}]`,
        report,
      );
    }
  }
  for (const [i, { id }] of problem.sheets.entries()) {
    if (sheets.some((sheet) => sheet.id === id)) continue;
    report("unknown-sheet", `${path}.sheets[${i}].id`, `Sheet ${shown(id)} is none of the group's papers.`);
  }
  const asked = new Map<string, number>();
  for (const [i, kind] of problem.kinds.entries()) {
    const cut = cuts.get(kind.id);
    if (cut === undefined) continue;
    const { piece, holds } = cut;
    asked.set(piece.id, (asked.get(piece.id) ?? 0) + holds * (kind.quantity ?? 0));
    checkKind(kind, cut, problem, facts, `${path}.kinds[${i}]`, report);
  }
  for (const [id, copies] of asked) {
    const piece = facts.pieces.get(id);
    const wanted = (piece?.quantity ?? 0) + (spares.get(piece?.card ?? 0) ?? 0);
    const first = problem.kinds.findIndex((kind) => cuts.get(kind.id)?.piece.id === id);
    same("wrong-quantity", copies, wanted, `${path}.kinds[${first}].quantity`);
  }
}

type Compare = (code: PlanFindingCode, found: unknown, expected: unknown, path: string) => void;

function comparing(report: PlanReport): Compare {
  return (code, found, expected, path) => {
    const difference = firstDifference(found, expected, path);
    if (difference !== null) report(code, difference.path, saying(difference));
  };
}

function saying({ path, found, expected }: Difference): string {
  return `${path} is ${found}, but the project makes it ${expected}.`;
}

function checkSheet(
  found: Sheet,
  facts: SheetFacts,
  { units }: Project,
  rules: ProblemRules,
  { isPriced, hasFree }: { readonly isPriced: boolean; readonly hasFree: boolean },
  path: string,
  report: PlanReport,
): void {
  const same = comparing(report);
  const { width, height, trim = {}, longestCut = null, stock = null } = found;
  const { left = 0, right = 0, top = 0, bottom = 0 } = trim;
  const { paper, design, offcut } = facts;
  const none = { left: 0, right: 0, top: 0, bottom: 0 };
  const expected = {
    width: facts.width,
    height: facts.height,
    trim: offcut === null ? paper.trim : none,
    longestCut: rules.longestCut,
  };
  same("wrong-sheet", { width, height, trim: { left, right, top, bottom }, longestCut }, expected, path);
  same("wrong-stock", stock, facts.stock, `${path}.stock`);
  // A cost is in 1/10,000 of the currency; without costs the search weighs the area of the sheets. Among free sheets a
  // cost counts ten thousandfold, and a free one counts 1: offcuts count nothing and go before it.
  const money = tenThousandths(design.cost ?? "");
  const own = !isPriced ? width * height : !hasFree ? money : money === 0 ? 1 : money * 10_000;
  same("wrong-sheet-cost", found.cost ?? width * height, offcut === null ? own : 0, `${path}.cost`);
  const name = paper.material === "pad" ? `${paper.name}: ${design.name}` : paper.name;
  const size = formatSize(facts.width, facts.height, { unit: units });
  const full = offcut === null ? name : `${name}, offcut ${size}`;
  same("wrong-name", found.name, full, `${path}.name`);
}

function tenThousandths(decimal: string): number {
  const [whole = "", part = ""] = decimal.split(".");
  return Number(`${whole}${`${part}0000`.slice(0, 4)}`);
}

function checkKind(
  kind: Kind,
  { piece, holds, name, forms }: CutFacts,
  problem: Problem,
  facts: ProjectFacts,
  path: string,
  report: PlanReport,
): void {
  const same = comparing(report);
  same("wrong-name", kind.name, name, `${path}.name`);
  const { least = 0, value, together, set } = kind;
  // Strips are planned only where everything is, so that they belong to no set.
  const isInSet = holds === 1 && piece.quantity > 0 && !facts.hopeless.has(piece.card);
  const plain = { least: 0, set: isInSet ? { of: String(piece.card), each: 1 } : undefined };
  same("wrong-kind", { least, value, together, set }, plain, path);
  const sizes = forms.map(({ width, height }) => ({ width, height }));
  const found = kind.forms.map(({ width, height, hidden }) => ({ width, height, hidden }));
  same("wrong-forms", found, sizes, `${path}.forms`);
  for (const [f, form] of forms.entries()) {
    const stated = kind.forms[f];
    if (stated === undefined) continue;
    for (const { id } of problem.sheets) {
      const sheet = facts.sheets.get(id);
      if (sheet === undefined) continue;
      for (const turned of [false, true]) {
        const may = mayLie(piece, form, sheet, turned);
        if (may === stateAllows(stated, id, turned)) continue;
        const way = turned ? "turned" : "upright";
        const message = `${name} ${may ? "may" : "may not"} lie ${way} on ${id}, but the problem says otherwise.`;
        report("wrong-turns", `${path}.forms[${f}]`, message);
      }
    }
  }
}

/** What a form of a problem says itself. */
function stateAllows(form: Form, sheet: string, turned: boolean): boolean {
  const own = form.turns ?? "both";
  const use = form.sheets === undefined ? { turns: own } : form.sheets.find((one) => one.sheet === sheet);
  if (use === undefined) return false;
  const turns = use.turns ?? own;
  return turns === "both" || (turns === "turned") === turned;
}
