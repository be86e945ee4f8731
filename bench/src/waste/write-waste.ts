/** The tables of the suite `waste`, as text that reads well in a terminal and as Markdown. */
import { markdownTable } from "markdown-table";
import { type Machine, writeMachine } from "../machine.js";
import type { SetMeasure } from "./measure-set.js";
import type { SheetWaste, WasteRequest } from "./measure-waste.js";
import { type SheetYields, YIELD_WAYS } from "./measure-yields.js";
import { sheetLabel } from "./sheet-label.js";
import { type SetsSum, sumSets } from "./sum-sets.js";
import { wasteOf } from "./waste-of.js";

const INTRODUCTION = `Ways of cutting, all in this run:
- guillotine: Sheetwright, edge-to-edge cuts in any order
- shelf: Sheetwright, strips, pieces from the strips, one last trim a piece
- first-fit shelves: plain comparison, pieces by falling height, each on the first strip with room
- grid: plain comparison, all copies side by side one way, every kind on sheets of its own
- bound: by area for one size; for sets the number of sheets that is proven to be needed at least`;

/** Where and how long; left out of what is kept, since it differs from run to run. */
export interface Circumstances {
  readonly machine: Machine;
  /** Of the whole run. */
  readonly seconds: number;
}

/** Writes all tables. Without circumstances the text depends on the request alone. */
export function writeWaste(
  request: WasteRequest,
  results: readonly SheetWaste[],
  circumstances?: Circumstances,
): string {
  const { seed, effort, sets, list } = request;
  const what = list ? `the list ${list.name}` : `${sets} seeded sets of each family`;
  const blocks = [
    "# Waste by sheet size",
    `Common pieces, and ${what}; effort ${effort}, seed ${seed}.`,
    INTRODUCTION,
    ...results.flatMap((result) => [
      `## ${sheetLabel(result.sheet)}`,
      ...writeYields(result.yields),
      ...writeSets(result, circumstances !== undefined),
    ]),
  ];
  if (results.length > 1) blocks.push("## All sheets", writeOverview(results));
  if (circumstances) {
    const { machine, seconds } = circumstances;
    blocks.push(`Measured in ${seconds.toFixed(1)} s on ${writeMachine(machine)}.`);
  }
  return `${blocks.join("\n\n")}\n`;
}

/** One line a sheet: the mean use by common pieces, and the sheets of all sets. */
function writeOverview(results: readonly SheetWaste[]): string {
  const head = [
    "sheet",
    "use % by grid",
    "use % by guillotine",
    "sheets by grid",
    "by first-fit shelves",
    "by shelf",
    "by guillotine",
    "bound",
    "waste %",
    "at least %",
  ];
  const rows = results.map(({ sheet, yields: { meanUsePercent }, sets }) => {
    const uses = [meanUsePercent?.bestGrid, meanUsePercent?.guillotine].map((use) => use?.toFixed(1) ?? "-");
    if (sets.length === 0) return [sheet.id, ...uses, ...head.slice(3).map(() => "-")];
    const { ways, bound } = sumSets(sheet, sets);
    const counts = [ways.gridByKind, ways.firstFitShelves, ways.shelf, ways.guillotine, bound];
    const wastes = [ways.guillotine, bound].map(({ usePercent }) => waste(usePercent));
    return [sheet.id, ...uses, ...counts.map(({ sheets }) => whole(sheets)), ...wastes];
  });
  return markdownTable([head, ...rows], { align: ["l", ...head.slice(1).map(() => "r")] });
}

function writeYields({ pieces, tooLarge, meanUsePercent }: SheetYields): readonly string[] {
  if (meanUsePercent === null) return ["No common piece fits on this sheet."];
  const head = ["piece (in)", "guillotine", "shelf", "first-fit shelves", "grid", "bound", "use %"];
  const rows = pieces.map(({ piece, counts, usePercent }) => [
    piece.replace(/ in$/, ""),
    ...YIELD_WAYS.map((way) => String(counts[way])),
    usePercent.toFixed(1),
  ]);
  const means = YIELD_WAYS.map((way) => meanUsePercent[way].toFixed(1));
  const more = pieces.filter(({ counts }) => counts.guillotine > counts.bestGrid).length;
  const unfit = tooLarge === 0 ? "" : ` ${tooLarge} more of the common pieces are larger than the sheet.`;
  return [
    "### Pieces of one size from one sheet",
    markdownTable([head, ...rows, ["mean use %", ...means, ""]], {
      align: ["l", ...head.slice(1).map(() => "r")],
    }),
    `Guillotine gives more than the grid for ${more} of ${pieces.length} ${pieces.length === 1 ? "piece" : "pieces"}.${unfit}`,
  ];
}

function writeSets({ sheet, sets }: SheetWaste, withSeconds: boolean): readonly string[] {
  if (sets.length === 0) return [];
  const families = [...new Set(sets.map(({ family }) => family))];
  const head = [
    "sets",
    "of",
    "kinds",
    "copies",
    "guillotine",
    "shelf",
    "first-fit shelves",
    "grid by kind",
    "bound",
    "proven",
    "waste %",
    "at least %",
    ...(withSeconds ? ["guillotine s", "shelf s"] : []),
  ];
  const line = (name: string, chosen: readonly SetMeasure[]): readonly string[] => {
    const sum = sumSets(sheet, chosen);
    const { guillotine, shelf, firstFitShelves, gridByKind } = sum.ways;
    const sheets = [guillotine, shelf, firstFitShelves, gridByKind, sum.bound].map((way) =>
      whole(way.sheets),
    );
    return [
      // A bare | would end the cell.
      name.replaceAll("|", "\\|"),
      ...[sum.sets, sum.kinds, sum.copies].map(String),
      ...sheets,
      `${guillotine.proven} of ${sum.sets}`,
      waste(guillotine.usePercent),
      waste(sum.bound.usePercent),
      ...(withSeconds ? secondsOf(sum) : []),
    ];
  };
  const rows = families.map((family) =>
    line(
      family,
      sets.filter((set) => set.family === family),
    ),
  );
  if (families.length > 1) rows.push(line("all", sets));
  return [
    "### Mixed pieces, sheets used",
    markdownTable([head, ...rows], { align: ["l", ...head.slice(1).map(() => "r")] }),
    ...sets
      .filter(({ missing }) => missing.length > 0)
      .map(({ id, missing }) => `Not planned from ${id} on this sheet: ${missing.join(", ")}.`),
  ];
}

function secondsOf({ ways: { guillotine, shelf } }: SetsSum): readonly string[] {
  return [guillotine.seconds.toFixed(2), shelf.seconds.toFixed(2)];
}

function whole(count: number | null): string {
  return count === null ? "-" : String(count);
}

function waste(usePercent: number | null): string {
  return wasteOf(usePercent)?.toFixed(1) ?? "-";
}
