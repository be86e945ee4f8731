import { itemKey, type Project } from "@sheetwright/cards";
import { formatLength, formatSize } from "@sheetwright/measure";
import { copiesCut, type Plan } from "@sheetwright/planner";
import { designNames } from "../project-plan/design-names.js";
import type { ProjectPlanSummary } from "../project-plan/project-plan-summary.js";
import { counted } from "./counted.js";
import { isItemShort, itemUseOf, rollCutsInWords, rollOf } from "./item-use-in-words.js";
import { rollLength } from "./roll-length.js";
import { wrapped } from "./wrapped.js";
import { BLADE_CAUTION } from "./write-notes.js";

/** The name of the list in the folder of a plan. */
export const PACKING_LIST_FILE = "packing-list.txt";

/**
 * Writes what goes into each bag of a kit project, all of which are alike: whole sheets by paper, pieces that are cut before,
 * ribbons by their length, extras and envelopes, what the guest has to cut of the sheets, and what to mind.
 */
export function writePackingList(summary: ProjectPlanSummary, plan: Plan, project: Project): string {
  const bags = project.kits?.bags ?? 1;
  const { papers, units: unit, use } = plan;
  const names = designNames(papers);
  const inOne = (count: number): number => Math.floor(count / bags);
  const whole = papers.flatMap(({ bags: out, sheet, designs }) =>
    out === undefined ? [] : designs.map(({ id }) => ({ id, sheet })),
  );
  const isWhole = (face: string): boolean =>
    papers.some(
      ({ bags: out, designs }) =>
        out !== undefined && designs.some(({ front, back }) => front.id === face || back?.id === face),
    );
  const cut = copiesCut(plan.groups);
  const sheets = whole.flatMap(({ id, sheet }) => {
    const found = use.find(({ design }) => design === id);
    const used = inOne(found?.used ?? 0);
    const offcuts = inOne(found?.offcutsUsed ?? 0);
    const name = `${names.get(id) ?? id}, ${formatSize(sheet.width, sheet.height, { unit })}`;
    return [
      ...(used > 0 ? [`${counted(used, "sheet")} of ${name}`] : []),
      ...(offcuts > 0 ? [`${counted(offcuts, "offcut")} of ${names.get(id) ?? id}`] : []),
    ];
  });
  const pieces = plan.pieces
    .filter(({ faces }) => !faces.some(isWhole))
    .map(({ id, label, forms, cutAlready = 0 }) => {
      const sizes = forms.map(({ width, height }) => formatSize(width, height, { unit })).join(" or ");
      return { count: inOne((cut.get(id) ?? 0) + cutAlready), words: `${label}, ${sizes}` };
    })
    .filter(({ count }) => count > 0)
    .map(({ count, words }) => `${count} x ${words}`);
  const completed = new Map(plan.complete.map(({ card, complete }) => [card, complete]));
  /** Copies of a card that an item is there for. */
  const copiesWith = (name: string, card: number, copies: number): number => {
    const use = itemUseOf(name, plan);
    return use !== undefined && isItemShort(use) ? (completed.get(card) ?? 0) : copies;
  };
  const rolls = (plan.itemUse ?? []).filter((use) => use.bags !== undefined && use.used > 0);
  const items = [
    ...rolls.map(({ item, used }) => {
      const first = plan.items.find(({ name }) => itemKey(name) === itemKey(item));
      const wide = first === undefined ? "" : `, ${formatLength(first.width, { unit })} wide`;
      return `${counted(inOne(used), "roll")} of ${item}, ${rollLength(rollOf(item, project) ?? 0, unit)}${wide}`;
    }),
    ...plan.items
      .filter(({ name }) => itemUseOf(name, plan)?.bags === undefined)
      .map((one) => ({ ...one, count: inOne(copiesWith(one.name, one.card, one.quantity)) }))
      .filter(({ count }) => count > 0)
      .map(
        ({ count, label, name, width, length }) =>
          `${count} x ${label}: ${name}, ${formatLength(length, { unit })}, ${formatLength(width, { unit })} wide`,
      ),
  ];
  const extras = new Map<string, number>();
  for (const { number, copies, extras: own = [] } of plan.cards) {
    for (const { name, count } of own) {
      const all = (extras.get(name) ?? 0) + count * inOne(copiesWith(name, number, copies));
      if (all > 0) extras.set(name, all);
    }
  }
  const envelopes = plan.cards.map(({ number, name, copies }) => {
    const size = summary.finished.find((one) => one.number === number)?.envelope;
    const of = size === undefined ? "" : ` of ${formatSize(size.width, size.height, { unit })}`;
    return `${counted(inOne(copies), "envelope")}${of} for ${name}`;
  });
  const lacking = (plan.itemUse ?? []).some(isItemShort) ? "pieces or items" : "pieces";
  const cards = plan.cards.map(({ name, copies, number }) => {
    const complete = plan.complete.find(({ card }) => card === number)?.complete ?? 0;
    const lacks = complete < copies ? ` (${lacking} are missing: see cut-list.txt)` : "";
    return `${inOne(copies)} x ${name}${lacks}`;
  });
  const out = summary.layouts.filter((layout) => layout.bags !== undefined);
  const toCut = [
    ...out.map(
      ({ name, run }) => `${name}: cut ${counted(run, "sheet")} like this; put ${name}.svg or ${name}.txt in`,
    ),
    ...rolls.flatMap((use) =>
      rollCutsInWords(use, rollOf(use.item, project) ?? 0, unit).map((words) => `${use.item}: ${words}`),
    ),
  ];
  const hasSmallParts = project.cards.some((card) => card.extras.some(({ isSmallPart }) => isSmallPart));
  const lines = [
    plan.title,
    `Packing list for each of ${counted(bags, "bag")}, all alike`,
    ...part("WHOLE SHEETS", sheets),
    ...part("CUT BEFORE", pieces),
    ...part("RIBBONS AND TAPES", items),
    ...part(
      "EXTRAS",
      [...extras].map(([name, count]) => `${count} x ${name}`),
    ),
    ...part("ENVELOPES", envelopes),
    ...part("WHAT IT MAKES", cards),
    ...part("CUT BY THE GUEST", toCut),
    ...(out.length === 0 ? [] : ["", ...BLADE_CAUTION]),
    ...(hasSmallParts ? ["", ...SMALL_PARTS] : []),
  ];
  return `${lines.join("\n")}\n`;
}

/** Put into a bag, where small parts are in it. */
const SMALL_PARTS = [
  "Small parts: a small child can choke on them. Keep this bag, and the cards made from it, from children",
  "under three.",
] as const;

function part(title: string, lines: readonly string[]): readonly string[] {
  if (lines.length === 0) return [];
  return ["", title, ...lines.flatMap((line) => wrapped(`[ ] ${line}`, "    "))];
}
