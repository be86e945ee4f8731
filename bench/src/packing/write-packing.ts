/** The tables of the suite `packing`, as text that reads well in a terminal and as Markdown. */
import { type Circumstances, writeCircumstances } from "../comparison/circumstances.js";
import { type Remarkable, remarkableOf } from "../comparison/remarkable.js";
import type { GroupSums, Row, Sums } from "../comparison/row.js";
import { effortsOf, figuresTable, signed, turnsOf, whole } from "../comparison/write-figures.js";
import { writeMissedOptima } from "./write-missed-optima.js";

const INTRODUCTION = `Edge-to-edge cuts in any order, no kerf. Every plan is checked by \`verify\`, which re-proves its bound.
- found: sheets (or their area) for all pieces, where less is better; value or piece area from one sheet, where more is
- bound: no plan is better, by certificates of this run; published bound: the best that is published
- best published: by all published methods together; difference: found less best published
- to bound: what ideal plans could still gain at most, by the better of the two bounds of each instance
- optima: instances whose best is published one by one, and how many of these are reached
- proven: plans that reach their bound of this run
- s: of all instances together; median s: half of them take no longer`;

/** What the tables say besides the rows. */
export interface PackingText {
  readonly seed: number;
  /** What the short names of published methods stand for. */
  readonly methods: ReadonlyMap<string, string>;
  readonly circumstances: Circumstances;
}

/** Writes all tables. */
export function writePacking(rows: readonly Row[], { seed, methods, circumstances }: PackingText): string {
  const blocks = [
    "# Packing of published instances",
    `Effort ${effortsOf(rows)}; seed ${seed}.`,
    INTRODUCTION,
    "## All families",
    writeTotals(rows),
  ];
  blocks.push(...writeMethods(rows), ...writeUtilisations(rows), ...writeNames(rows, methods));
  const families = [...new Set(rows.map(({ family }) => family))];
  for (const family of families) {
    const grouped = rows.filter((row) => row.family === family && row.groups.length > 1);
    if (grouped.length > 0) blocks.push(`## ${family}`, writeGroups(grouped));
  }
  blocks.push("## Beside the publications", ...writeRemarkable(rows.flatMap(remarkableOf)));
  blocks.push(...writeMissedOptima(rows));
  blocks.push(writeCircumstances(circumstances));
  return `${blocks.join("\n\n")}\n`;
}

const FIGURES = [
  "of",
  "found",
  "bound",
  "published bound",
  "best published",
  "difference",
  "to bound",
  "to bound %",
  "optima",
  "proven",
  "use %",
  "work",
  "steps",
  "s",
  "median s",
];

function writeTotals(rows: readonly Row[]): string {
  const head = ["family", "turns", "effort", "measure", ...FIGURES];
  const lines = rows.map((row) => [
    row.family,
    turnsOf(row),
    row.effort ?? "",
    row.measure,
    ...figuresOf(row),
  ]);
  return figuresTable(head, lines, 4);
}

function writeGroups(rows: readonly Row[]): string {
  const head = ["group", "turns", "effort", ...FIGURES];
  const names = rows[0]?.groups.map(({ group }) => group) ?? [];
  const lines = names.flatMap((name) =>
    rows.map((row) => {
      const sums = row.groups.find(({ group }) => group === name) as GroupSums;
      return [name, turnsOf(row), row.effort ?? "", ...figuresOf(sums)];
    }),
  );
  return figuresTable(head, lines, 3);
}

function figuresOf(sums: Sums): readonly string[] {
  const { measured, bestPublished, bestBound, gap } = sums;
  const difference = measured === null || bestPublished === null ? null : measured - bestPublished;
  return [
    String(sums.instances),
    whole(measured),
    whole(sums.bound),
    whole(sums.publishedBound),
    whole(bestPublished),
    difference === null ? "-" : signed(difference),
    whole(sums.gap),
    gap === null || bestBound === null || bestBound === 0 ? "-" : ((100 * gap) / bestBound).toFixed(2),
    sums.known === 0 ? "-" : `${sums.reached} of ${sums.known}`,
    String(sums.proven),
    sums.utilisation?.toFixed(1) ?? "-",
    whole(sums.work),
    whole(sums.steps),
    sums.seconds.toFixed(1),
    sums.medianSeconds.toFixed(2),
  ];
}

/** Who gave the best published sums. */
function writeMethods(rows: readonly Row[]): readonly string[] {
  const sentences = new Set<string>();
  for (const { family, rotation, bestPublished, bestMethod, bestSingle } of rows) {
    if (bestMethod === null || bestSingle === null) continue;
    const alone =
      bestSingle.measured === bestPublished
        ? ""
        : `; the best of one alone is ${bestSingle.measured} (${bestSingle.method})`;
    sentences.add(
      `Best published of ${family}, ${rotation ? "turned" : "fixed"}: ${bestPublished} by ${bestMethod}${alone}.`,
    );
  }
  return sentences.size === 0 ? [] : [[...sentences].join("\n")];
}

/** The publications of the methods that the tables name. */
function writeNames(rows: readonly Row[], methods: ReadonlyMap<string, string>): readonly string[] {
  const named = rows.flatMap(({ bestMethod, bestSingle, bestUtilisation }) => [
    ...(bestSingle === null ? [] : [...(bestMethod ?? "").split(", "), bestSingle.method]),
    ...(bestUtilisation === null ? [] : [bestUtilisation.method]),
  ]);
  const lines = [...new Set(named)].flatMap((name) => {
    const publication = methods.get(name);
    return publication === undefined ? [] : [`- ${name}: ${publication}`];
  });
  return lines.length === 0 ? [] : [lines.join("\n")];
}

/** Mean utilisation, which is what is published of several sheet sizes. */
function writeUtilisations(rows: readonly Row[]): readonly string[] {
  const lines = rows
    .filter(({ question }) => question === "sizes")
    .map(({ family, rotation, effort, meanUtilisation, bestUtilisation }) => [
      family,
      rotation ? "turned" : "fixed",
      effort ?? "",
      meanUtilisation?.toFixed(2) ?? "-",
      bestUtilisation?.percent.toFixed(2) ?? "-",
      bestUtilisation?.method ?? "-",
    ]);
  if (lines.length === 0) return [];
  return [
    "Several sheet sizes in limited stock, mean use of the sheets:",
    figuresTable(["family", "turns", "effort", "mean use %", "best published %", "by"], lines, 3),
  ];
}

const KINDS: Readonly<Record<Remarkable["kind"], string>> = {
  "beats-bound": "better than a published bound: one of the two is wrong",
  "beats-best": "below the best published",
  "newly-proven": "proven best here",
  "meets-published-bound": "reaches the published bound",
};

function writeRemarkable(found: readonly Remarkable[]): readonly string[] {
  if (found.length === 0) {
    return [
      "No instance and no published sum is better than its best, and none is the first to reach a bound.",
    ];
  }
  const lines = new Map<string, { readonly efforts: string[]; readonly one: Remarkable }>();
  for (const one of found) {
    const { effort: _, bound: __, ...same } = one;
    const key = JSON.stringify(same);
    const line = lines.get(key);
    if (line) line.efforts.push(one.effort);
    else lines.set(key, { efforts: [one.effort], one });
  }
  const cells = [...lines.values()].map(({ efforts, one }) => [
    one.family,
    one.id,
    turnsOf(one),
    efforts.join(", "),
    KINDS[one.kind],
    String(one.measured),
    whole(one.bound),
    whole(one.publishedBound),
    whole(one.bestPublished),
  ]);
  const head = [
    ...["family", "instance or group", "turns", "effort", "what is new"],
    ...["found", "bound", "published bound", "best published"],
  ];
  return [
    "Sums and instances that are better than their best published, and instances that reach a bound though the best of each\nalone is not published (their authors may have reached it too).",
    figuresTable(head, cells, 5),
  ];
}
