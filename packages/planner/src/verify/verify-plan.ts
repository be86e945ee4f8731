/**
 * Proves a plan right, or says what is wrong with it and where, from the project and the plan alone.
 *
 * It guarantees, where it finds nothing: the cards and pieces are what the project works out to; every piece that some
 * paper can give is planned once, with its papers, bag by bag where these go out whole, in its size, a die blank with its shape and margin, by itself or in a
 * strip that goes through the die machine, in the ways that pattern and required grain allow; the stock, costs, trims and cuts are the project's; every packing is right for its problem (by the verifier of packing); and
 * what is said of enough, complete copies, items on hand, shortages, use, leftovers, folds and cost is what the layouts hold. It shares no
 * code with what makes a plan, but for the working out of the project by cards and the reasons why a piece finds no paper.
 * It does not judge whether more pieces could lie along the grain, nor which pieces a short plan should have cut first, or
 * which copies should have had an item that is short.
 */

import { type Expansion, expandProject, type Project, ProjectError } from "@sheetwright/cards";
import { verify } from "@sheetwright/packing";
import type { Plan } from "../plan-model.js";
import { bagFacts } from "./bag-facts.js";
import { checkClaims, checkNoPaper, checkSearch } from "./check-claims.js";
import { checkDieBlanks } from "./check-die-blanks.js";
import { checkGroups } from "./check-groups.js";
import { checkItemUse } from "./check-item-use.js";
import { checkProblem, trimmerRules } from "./check-problem.js";
import { checkShape } from "./check-shape.js";
import { checkShortages } from "./check-shortages.js";
import { checkStrips } from "./check-strips.js";
import { countPlan } from "./count-plan.js";
import { firstDifference, shown } from "./first-difference.js";
import { type PlanFinding, type PlanReport, startFindings } from "./plan-finding.js";
import { type ProjectFacts, readFacts } from "./project-facts.js";
import { readCuts } from "./read-cuts.js";

/**
 * Checks a plan against its project and gives what is wrong; an empty list means that the plan is right. Any JSON may come
 * in as the plan: what is missing or malformed is a finding, and nothing throws. What the layouts come to is counted only
 * where every packing is right.
 *
 * @example
 * const text = `{ sheetwright: 1, title: One, papers: { cream: { cardstock: us-letter } },
 *   cards: [{ name: Plain, format: us-a2, base: cream }] }`;
 * const { project } = cards.readProject(text);
 * const found = plan(project);
 * verifyPlan(project, found) // => []
 * const [finding] = verifyPlan(project, { ...found, enough: "no" });
 * [finding.code, finding.path] // => ["wrong-enough", "enough"]
 * planFindingCodes[finding.code] // => "Whether there is enough is not what the packings amount to."
 */
export function verifyPlan(project: Project, plan: Plan): readonly PlanFinding[] {
  const { list, report } = startFindings();
  const expansion = expand(project, report);
  if (expansion === null || !checkShape(plan, report)) return list;
  const facts = readFacts(project, expansion);
  if (plan.version !== 1)
    report("wrong-version", "version", `version is ${shown(plan.version)}, but version 1 is checked here.`);
  const { title, units, papers, cards, pieces, items } = plan;
  const difference = firstDifference({ title, units, papers, cards, pieces, items }, expansion, "");
  if (difference !== null) {
    const { path, found, expected } = difference;
    report("wrong-expansion", path, `${path} is ${found}, but the project works out to ${expected}.`);
  }
  checkNoPaper(plan, facts, report);

  if (!checkPackings(plan, report)) return list;
  checkGroups(plan, facts, report);
  const spares = sparesOf(plan, facts);
  for (const [g, group] of plan.groups.entries())
    checkProblem(
      group,
      readCuts(group, bagFacts(group, facts)),
      trimmerRules(project),
      spares,
      `groups[${g}].problem`,
      bagFacts(group, facts),
      report,
    );
  checkStrips(plan, spares, facts, report);
  checkDieBlanks(plan, facts, report);
  const count = countPlan(plan, spares, facts, report);
  checkShortages(plan, facts, count, report);
  checkClaims(plan, facts, count, checkItemUse(plan, spares, facts, report), report);
  checkSearch(plan, report);
  return list;
}

/** The spare copies that a plan says to have, as far as they are wished for, by the number of the card. */
function sparesOf(plan: Plan, { expansion }: ProjectFacts): ReadonlyMap<number, number> {
  return new Map(
    expansion.cards.map(({ number, copiesFor: { spares: wished = 0 } }) => {
      const said = plan.complete.find(({ card }) => card === number)?.spares?.made ?? 0;
      return [number, Math.min(said, wished)];
    }),
  );
}

function expand(project: Project, report: PlanReport): Expansion | null {
  try {
    return expandProject(project);
  } catch (error) {
    if (!(error instanceof ProjectError)) throw error;
    report("bad-project", error.path === "" ? "project" : error.path, error.message);
    return null;
  }
}

function checkPackings(plan: Plan, report: PlanReport): boolean {
  let areRight = true;
  for (const [g, { problem, packing }] of plan.groups.entries()) {
    for (const { path, message } of verify(problem, packing)) {
      areRight = false;
      const place = path.startsWith("problem") ? path : path === "packing" ? path : `packing.${path}`;
      report("packing-wrong", `groups[${g}].${place}`, message);
    }
  }
  return areRight;
}
