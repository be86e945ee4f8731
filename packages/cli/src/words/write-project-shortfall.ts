import { formatSize, type Unit } from "@sheetwright/measure";
import type { Plan, Shortage } from "@sheetwright/planner";
import { designNames } from "../project-plan/design-names.js";
import type { ItemSummary, ProjectPlanSummary } from "../project-plan/project-plan-summary.js";
import { counted } from "./counted.js";
import { isItemShort } from "./item-use-in-words.js";
import { listed } from "./listed.js";
import { moreItems } from "./more-items.js";
import { moreSheets } from "./more-sheets.js";
import { rollLength } from "./roll-length.js";

/**
 * Says what of a project cannot be planned as asked: which pieces of which papers are missing, and of which items there is too
 * little, whether that is proven, and what would help. Gives lines without a break at their end; none where nothing is missing.
 *
 * @param place writes where a value stands in the project file.
 */
export function writeProjectShortfall(
  summary: ProjectPlanSummary,
  plan: Plan,
  place: (path: string) => string,
): readonly string[] {
  const { pieces, cards, noPaper } = summary;
  const items = (summary.items ?? []).filter(isItemShort);
  if (pieces.missing.length + items.length === 0) return [];
  const missing = pieces.missing.reduce((total, one) => total + one.count, 0);
  const reasons = [
    ...(missing === 0 ? [] : [`${missing} of ${counted(pieces.wanted, "piece")} missing`]),
    ...(items.length === 0 ? [] : [`too little of ${listed(items.map(({ item }) => item))}`]),
  ];
  const lines = [`Cannot be planned as asked: ${reasons.join(", ")}.`];
  for (const one of noPaper) lines.push("", `${place(one.path)}: ${one.message}`);
  for (const one of plan.shortages) lines.push("", ...writeShortage(one, plan));
  for (const one of items) lines.push("", ...writeItemShortage(one, plan.units, summary.kits !== undefined));
  const short = cards.filter(({ complete, wanted }) => complete < wanted);
  const copies = short.map(({ name, complete, wanted }) => `${complete} of ${wanted} ${name}`);
  const whole = items.length === 0 ? "every piece" : "every piece and item";
  if (copies.length > 0) lines.push("", `Copies with ${whole}: ${copies.join(", ")}${others(summary)}.`);
  return lines;
}

/** Nobody asks whether nothing is enough. */
const NONE = "There is none on hand.";

function atLeastInWords(count: number): string {
  return ` At least ${count === 1 ? "1 is" : `${count} are`} needed, proven.`;
}

function writeItemShortage(one: ItemSummary, unit: Unit, isInBags: boolean): readonly string[] {
  const { item, roll, onHand, needed, atLeast } = one;
  const have = onHand ?? 0;
  const count = (number: number): string => (roll === null ? `${number}` : counted(number, "roll"));
  const what = roll === null ? item : `${item}, rolls of ${rollLength(roll, unit)}`;
  const isProven = atLeast > have;
  const answer = isProven ? "No, proven." : "Not found; nothing proves that it cannot be done.";
  const least = isProven && roll !== null ? atLeastInWords(atLeast) : "";
  const asked = `${have === 1 ? "Is" : "Are"} ${count(have)} enough? ${answer}`;
  return [
    `Missing of ${what}: ${needed - have} of ${needed}`,
    `${have === 0 ? NONE : asked}${least}`,
    `With ${moreItems(one, needed - have, isInBags)} there is enough for all copies.`,
  ];
}

function others({ cards }: ProjectPlanSummary): string {
  return cards.some(({ complete, wanted }) => complete >= wanted) ? "; all of the other cards" : "";
}

function writeShortage(shortage: Shortage, plan: Plan): readonly string[] {
  const { papers, units } = plan;
  const designs = plan.groups[shortage.group]?.designs ?? [];
  const names = designNames(papers);
  const paper = listed(
    designs.map((id) => names.get(id) ?? id),
    "or",
  );
  const missing = shortage.pieces.map(({ piece: id, missing: count }) => {
    const piece = plan.pieces.find((one) => one.id === id);
    const sizes = (piece?.forms ?? []).map(({ width, height }) => formatSize(width, height, { unit: units }));
    const size = sizes.length === 0 ? "" : `, ${sizes.join(" or ")}`;
    return `  ${count} of ${piece?.quantity ?? 0} ${piece?.label ?? id}${size}`;
  });
  return [`Missing from ${paper}:`, ...missing, writeStock(shortage, plan), ...writeHelp(shortage, plan)];
}

/** Answers 'is there enough' with `no, proven`, or `not found` and what is proven. */
function writeStock({ group, outcome, atLeast }: Shortage, { groups, papers }: Plan): string {
  const designs = papers
    .flatMap((paper) => paper.designs)
    .filter(({ id }) => groups[group]?.designs.includes(id));
  const onHand = designs.reduce((total, { count }) => total + (count ?? 0), 0);
  const offcuts = designs.flatMap((one) => one.offcuts).reduce((total, { count }) => total + count, 0);
  const unlimited = designs.some(({ count }) => count === null);
  const have =
    offcuts === 0
      ? counted(onHand, "sheet")
      : `${counted(onHand, "sheet")} and ${counted(offcuts, "offcut")}`;
  const asked = unlimited ? "Can they all be cut?" : `Are ${have} enough?`;
  const answer = outcome === "short" ? "No, proven." : "Not found; nothing proves that it cannot be done.";
  const needed = atLeast === null || atLeast <= onHand + offcuts ? "" : atLeastInWords(atLeast);
  if (!unlimited && onHand + offcuts === 0) return `${NONE}${needed}`;
  return `${asked.replace(/^Are 1 sheet enough/, "Is 1 sheet enough")} ${answer}${needed}`;
}

function writeHelp({ wouldHelp, outcome }: Shortage, { papers, search }: Plan): readonly string[] {
  const more = wouldHelp.filter((one) => one.more > 0).map((one) => moreSheets(papers, one.design, one.more));
  if (more.length > 0) return [`With ${listed(more)} a plan for all was found.`];
  // What is proven impossible stays so however long one searches.
  if (outcome === "not-found" && search.effort !== "thorough") return ["--effort thorough searches longer."];
  return [];
}
