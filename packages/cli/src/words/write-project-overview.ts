import { formatSize } from "@sheetwright/measure";
import { copiesCut, type Paper, type Piece, type Plan } from "@sheetwright/planner";
import { dieInPlainWords, paperInWords, revealInWords } from "@sheetwright/svg";
import { designNames } from "../project-plan/design-names.js";
import type { PaperLayout, ProjectPlanSummary } from "../project-plan/project-plan-summary.js";
import { countPieces } from "./count-pieces.js";
import { counted } from "./counted.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";
import { writeFinished, writeLeftOut } from "./write-finished.js";
import { writeItems, writeJoins } from "./write-items.js";
import { BLADE_CAUTION } from "./write-notes.js";
import { writeProjectSummary } from "./write-project-summary.js";
import { writeSolver } from "./write-solver.js";
import { stripsInWords } from "./write-strips.js";

/**
 * Writes the overview of a project's plan, the file `cut-list.txt`: the summary, what is missing, and over all papers the
 * sheets to cut, the pieces of each card, and the leftovers. How each layout is cut is in its own list.
 *
 * @param shortfall what is missing, as lines.
 */
export function writeProjectOverview(
  summary: ProjectPlanSummary,
  plan: Plan,
  shortfall: readonly string[],
): string {
  const counts = summary.layouts.map(({ group, layout }) => {
    const found = plan.groups[group]?.packing.layouts[layout];
    return found === undefined ? new Map<string, number>() : countPieces(found.tree);
  });
  const copies = summary.layouts.map(({ group }, index) => {
    const placed = [...(counts[index] ?? [])].map(([kind, count]) => ({ kind, count }));
    const of = plan.groups[group];
    return copiesCut([{ packing: { placed }, strips: of?.strips, bags: of?.bags }]);
  });
  const missing = shortfall.flatMap((line) => wrapped(line, line.startsWith("  ") ? "    " : ""));
  const lines = [
    ...writeProjectSummary(summary),
    "",
    ...(missing.length === 0 ? [] : ["MISSING", "", ...missing, ""]),
    "SHEETS TO CUT",
    ...writeSheets(summary, plan, counts),
    "",
    "PIECES",
    ...writePieces(summary, plan, copies),
    "",
    ...writeJoins(plan),
    ...writeItems(
      plan,
      (number) => {
        const card = summary.cards.find((one) => one.number === number);
        const copies = plan.cards.find((one) => one.number === number)?.copies ?? 0;
        return copies + (card?.spares?.made ?? 0);
      },
      summary.items,
    ),
    "FINISHED CARDS",
    "",
    ...writeFinished(summary.finished, plan.units).flatMap((line) => wrapped(line, "      ")),
    ...writeLeftOut(summary.finished),
    "",
    "LEFTOVERS",
    ...writeLeftovers(summary, plan),
    "",
    ...writeSolver(plan.search.lp),
    ...BLADE_CAUTION,
  ];
  return `${lines.map((line) => line.trimEnd()).join("\n")}\n`;
}

/** How many of each kind, or copies of each piece, by layout. */
type Counts = readonly ReadonlyMap<string, number>[];

function writeSheets({ layouts, papers }: ProjectPlanSummary, plan: Plan, counts: Counts): readonly string[] {
  const cut = papers.flatMap(({ design, name }) => {
    const lines = layouts.flatMap((layout, index) => {
      if (layout.design !== design) return [];
      const pieces = (plan.groups[layout.group]?.problem.kinds ?? [])
        .map(({ id, name: label = id }) => ({ label, count: counts[index]?.get(id) ?? 0 }))
        .filter(({ count }) => count > 0)
        // A count stays on the line of what it counts.
        .map(({ label, count }) => `${count} x ${label}`.replaceAll(" ", "\u00a0"));
      return [
        `  ${layout.name}: cut ${runOf(layout, plan.units)} like this, ${layout.cuts === 0 ? "no cut" : `${counted(layout.cuts, "cut")} each`}`,
        ...wrapped(`    ${pieces.join(", ")}`, "    ").map((line) => line.replaceAll("\u00a0", " ")),
      ];
    });
    return lines.length === 0 ? [] : ["", `${name}, ${sizeOf(design, plan)}`, ...lines];
  });
  return cut.length === 0 ? ["", "none"] : cut;
}

function runOf({ run, offcut, width, height, bags }: PaperLayout, unit: Plan["units"]): string {
  const inEach = bags === undefined ? "" : ` in each of ${counted(bags, "bag")}`;
  if (!offcut) return `${counted(run, "sheet")}${inEach}`;
  return `${counted(run, "offcut")} of ${formatSize(width, height, { unit })}${inEach}`;
}

function sizeOf(design: string, { papers, units }: Plan): string {
  const paper = papers.find(({ designs }) => designs.some(({ id }) => id === design));
  return paper === undefined ? "" : paperSize(paper, units);
}

function paperSize({ sheet, sheetName }: Paper, unit: Plan["units"]): string {
  const size = formatSize(sheet.width, sheet.height, { unit });
  return sheetName === null ? size : `${sheetName}, ${size}`;
}

function writePieces({ layouts, cards }: ProjectPlanSummary, plan: Plan, copies: Counts): readonly string[] {
  const made = new Map(cards.map(({ number, spares }) => [number, spares?.made ?? 0]));
  const sheets = plan.pieces.map(({ id }) =>
    layouts
      .map(({ name }, index) => ({ name, count: copies[index]?.get(id) ?? 0 }))
      .filter(({ count }) => count > 0),
  );
  const rows = plan.pieces.map((piece, index): readonly string[] => {
    const cut = (sheets[index] ?? []).reduce((total, { count }) => total + count, 0);
    const wanted = piece.quantity + (made.get(piece.card) ?? 0);
    const before = piece.cutAlready === undefined ? "" : `, ${piece.cutAlready} cut already`;
    const number = `${cut === wanted ? cut : `${cut} of ${wanted}`}${before}`;
    const paper = asksForAny(piece) ? piece.paperText : paperInWords(piece, plan.papers);
    return [`  ${piece.label}`, sizesOf(piece, plan.units), paper, number];
  });
  const [head = "", ...all] = table([["  piece", "width x height", "paper", "number"], ...rows]);
  return plan.cards.flatMap(({ number, name, copies, reveals = [] }) => {
    const own = all.flatMap((line, index) => {
      const planned = plan.pieces[index];
      if (planned?.card !== number) return [];
      const from = (sheets[index] ?? []).map((sheet) => `${sheet.count} from ${sheet.name}`).join(", ");
      const may = anyOf(planned, plan.papers);
      const die = planned.die;
      const cut = die === undefined ? "" : `cut by ${dieInPlainWords(die, plan.units)}`;
      const shows = reveals
        .filter(({ piece }) => piece === planned.id)
        .map((reveal) => revealInWords(reveal, plan.units));
      const strips = stripsInWords(planned.id, plan);
      const notes = [may, from, strips, cut, ...shows].filter((words) => words !== "");
      return [line, ...notes.flatMap((words) => wrapped(`      ${words}`, "      "))];
    });
    const spares = made.get(number) ?? 0;
    const more = spares === 0 ? "" : ` and ${counted(spares, "spare")}`;
    return ["", `${number} ${name}, ${counted(copies, "copy", "copies")}${more}`, head, ...own];
  });
}

/** Whether a piece may come from any paper of a kind; no paper that is named has a space in its name. */
function asksForAny({ paperText }: Piece): boolean {
  return /(?:^| )any /.test(paperText);
}

/** The papers that are meant by any of a kind. */
function anyOf(piece: Piece, papers: readonly Paper[]): string {
  if (!asksForAny(piece)) return "";
  const meant = [...designNames(papers)].filter(([id]) =>
    piece.faces.some((face) => face === id || face === `${id}.back`),
  );
  return `from any of ${meant.map(([, name]) => name).join(", ")}`;
}

function sizesOf({ forms }: Piece, unit: Plan["units"]): string {
  return forms.map(({ width, height }) => formatSize(width, height, { unit })).join(" or ");
}

function writeLeftovers({ leftovers, units }: ProjectPlanSummary, { papers }: Plan): readonly string[] {
  const lines = [...designNames(papers)].flatMap(([design, name]) => {
    const own = leftovers.filter((one) => one.design === design);
    if (own.length === 0) return [];
    const kept = own.filter(({ keep }) => keep);
    const small = own.filter(({ keep }) => !keep).reduce((total, { count }) => total + count, 0);
    const smallOnes = `  ${kept.length === 0 ? "" : "and "}${counted(small, "leftover")} too small to keep`;
    return [
      "",
      name,
      ...kept.map(({ count, width, height }) => {
        const size = formatSize(width, height, { unit: units.shown });
        return `  ${counted(count, "leftover")} of ${size}`;
      }),
      ...(small === 0 ? [] : [smallOnes]),
    ];
  });
  return lines.length === 0 ? ["", "none"] : lines;
}
