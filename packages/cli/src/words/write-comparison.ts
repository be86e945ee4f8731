import type { ComparedSize, Comparison, ComparisonRow } from "@sheetwright/planner";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { table } from "./table.js";

/** Lines of the table up to which every number of copies has its own; with more, a size has one. */
const MOST_LINES = 40;

/** Tells a comparison to a person: a table, the least waste first, and what it comes to. Gives lines without breaks. */
export function writeComparison(
  comparison: Comparison,
  { written }: { readonly written: string | null },
): readonly string[] {
  const sums = sumsOf(comparison);
  const isShort = comparison.rows.length <= MOST_LINES && comparison.copies.length > 1;
  const whole = sums.filter(({ mean }) => mean !== null);
  const small = sums.filter(({ tooLarge }) => tooLarge.length > 0);
  return [
    ...(whole.length === 0 ? [] : [...(isShort ? everyNumber(whole) : oneASize(whole)), ""]),
    ...small.map(
      ({ size, tooLarge }) =>
        `${size.name} is too small for ${listed(tooLarge.slice(0, 5))}${more(tooLarge)}.`,
    ),
    ...(small.length === 0 ? [] : [""]),
    ...verdict(whole),
    ...(written === null ? [] : [`Written: ${written}, the chart.`]),
  ];
}

function more(tooLarge: readonly string[]): string {
  return tooLarge.length > 5 ? ` and ${counted(tooLarge.length - 5, "other piece")}` : "";
}

interface Sum {
  readonly size: ComparedSize;
  /** By rising copies. */
  readonly rows: readonly ComparisonRow[];
  /** Mean waste in tenths of a percent; `null` where some row tells none. */
  readonly mean: number | null;
  readonly tooLarge: readonly string[];
}

function sumsOf({ sizes, rows }: Comparison): readonly Sum[] {
  const all = sizes.map((size): Sum => {
    const own = rows.filter((row) => row.size === size.id).sort((a, b) => a.copies - b.copies);
    const known = own.flatMap(({ wastePercent }) => (wastePercent === null ? [] : [wastePercent]));
    const sum = known.reduce((total, each) => total + Math.round(each * 10), 0);
    const mean = known.length === 0 || known.length < own.length ? null : Math.round(sum / known.length);
    return { size, rows: own, mean, tooLarge: [...new Set(own.flatMap((row) => row.tooLarge))] };
  });
  return [...all].sort((a, b) => (a.mean ?? 1001) - (b.mean ?? 1001));
}

/** A line a size and number of copies. */
function everyNumber(sums: readonly Sum[]): readonly string[] {
  const hasCost = sums.some(({ size }) => size.cost !== null);
  const head = [
    "sheet size",
    "copies",
    "sheets",
    "",
    "waste",
    "of it to keep",
    "cuts",
    ...(hasCost ? ["cost"] : []),
  ];
  const body = sums.flatMap(({ size, rows }) =>
    rows.map((row, index) => [index === 0 ? size.name : "", `${row.copies}`, ...cells(row, hasCost)]),
  );
  return table([head, ...body]);
}

/** A line a size: the mean waste, and the largest number of copies in full. */
function oneASize(sums: readonly Sum[]): readonly string[] {
  const hasCost = sums.some(({ size }) => size.cost !== null);
  const [first] = sums;
  const copies = first?.rows.map((row) => row.copies) ?? [];
  const last = copies.at(-1) ?? 0;
  const isOne = copies.length === 1;
  const head = [
    "sheet size",
    ...(isOne ? [] : [`mean waste, ${whatCopies(copies)}`]),
    isOne ? `sheets for ${counted(last, "copy", "copies")}` : `sheets for ${last}`,
    "",
    "waste",
    "of it to keep",
    "cuts",
    ...(hasCost ? ["cost"] : []),
  ];
  const body = sums.map(({ size, rows, mean }) => {
    const row = rows.at(-1) as ComparisonRow;
    return [size.name, ...(isOne ? [] : [`${tenths(mean ?? 0)} %`]), ...cells(row, hasCost)];
  });
  return table([head, ...body]);
}

/** The numbers of copies in words; one that was not looked at is never among them. */
function whatCopies(copies: readonly number[]): string {
  const [first = 0, last = first] = [copies[0], copies.at(-1)];
  if (last - first + 1 === copies.length) return `${first} to ${last} copies`;
  return `${copies.length} numbers of copies from ${first} to ${last}`;
}

function cells(row: ComparisonRow, hasCost: boolean): readonly string[] {
  const { sheets, atLeast, wastePercent, keptPercent, cuts, cost } = row;
  const bound = sheets === atLeast ? "fewest possible" : `at least ${atLeast}`;
  const percent = (number: number | null): string => `${tenths(Math.round((number ?? 0) * 10))} %`;
  return [
    `${sheets}`,
    bound,
    percent(wastePercent),
    percent(keptPercent),
    `${cuts}`,
    ...(hasCost ? [cost ?? "not known"] : []),
  ];
}

function verdict(whole: readonly Sum[]): readonly string[] {
  const [best] = whole;
  if (best === undefined || best.mean === null) return [];
  const equal = whole.filter(({ mean }) => mean === best.mean).map(({ size }) => size.name);
  const mean = best.rows.length > 1 ? " on average" : "";
  const least = `Least waste: ${listed(equal)}, ${tenths(best.mean)} %${mean}.`;
  const priced = whole.filter(({ size }) => size.cost !== null);
  const cheapest = [...priced].sort((a, b) => lastCost(a) - lastCost(b))[0];
  const row = cheapest?.rows.at(-1);
  if (cheapest === undefined || row === undefined || priced.length < 2) return [least];
  const same = priced.filter((one) => lastCost(one) === lastCost(cheapest)).map(({ size }) => size.name);
  return [least, `Least cost for ${counted(row.copies, "copy", "copies")}: ${listed(same)}, ${row.cost}.`];
}

/** Cost of the largest number of copies, in 1/10,000 of the currency. */
function lastCost({ rows }: Sum): number {
  const [whole = "0", part = ""] = (rows.at(-1)?.cost ?? "0").split(".");
  return Number(whole) * 10_000 + Number(part.padEnd(4, "0"));
}

function tenths(number: number): string {
  return `${Math.floor(number / 10)}.${number % 10}`;
}
