import { formatSize, type Size, type Unit } from "@sheetwright/measure";
import { offcutCounts } from "./offcut-counts.js";
import type { Stock, StockFault, StockPaper } from "./stock.js";
import type { StockChange } from "./stock-change.js";

/** A stock after a change, or why it cannot be made. */
export interface ChangedStock {
  /** The stock as it was where there are faults. */
  readonly stock: Stock;
  readonly faults: readonly StockFault[];
}

/**
 * Takes from a stock what is cut into, and adds what is left. Nothing is changed where a design is not in the stock, is
 * of another size there, or has less on hand than is taken. Sheets that are not counted stay so.
 *
 * @param unit The unit that lengths are told in.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5 } }
 * cards: [{ name: Plain, size: 8 x 8, fold: flat, base: night, copies: 2 }]
 * `);
 * const found = plan(project);
 * const changes = stockChange(found, wholePlan(found));
 * const { stock } = applyStockChange({ papers: stockOfProject(project) }, changes, "in");
 * stock.papers[0].sheets // => 3
 * stock.papers[0].offcuts // => [{ width: 345440, height: 121920, count: 2 }]
 * applyStockChange({ papers: [] }, changes, "in").faults[0].code // => "not-in-stock"
 */
export function applyStockChange(stock: Stock, changes: readonly StockChange[], unit: Unit): ChangedStock {
  const known = new Map(stock.papers.map((paper) => [paper.design, paper]));
  const faults: StockFault[] = [];
  const changed = new Map<string, StockPaper>();
  for (const change of changes) {
    const paper = known.get(change.design);
    const wrong = paper === undefined ? [missing(change.design)] : shortfalls(paper, change, unit);
    faults.push(...wrong);
    if (paper === undefined || wrong.length > 0) continue;
    const offcuts = offcutCounts(paper.offcuts);
    for (const { count, ...size } of change.taken) offcuts.add(size, -count);
    for (const { count, ...size } of change.left) offcuts.add(size, count);
    const sheets = paper.sheets === null ? null : paper.sheets - change.sheets;
    changed.set(change.design, { ...paper, sheets, offcuts: offcuts.all() });
  }
  if (faults.length > 0) return { stock, faults };
  return {
    stock: { ...stock, papers: stock.papers.map((paper) => changed.get(paper.design) ?? paper) },
    faults,
  };
}

function missing(design: string): StockFault {
  return {
    code: "not-in-stock",
    design,
    at: null,
    found: "no such paper",
    expected: design,
    message: `The plan cuts ${design}, and the stock has no paper of that key. Add it first.`,
  };
}

function shortfalls(paper: StockPaper, change: StockChange, unit: Unit): readonly StockFault[] {
  const { design, name } = paper;
  const write = ({ width, height }: Size): string => formatSize(width, height, { unit });
  if (paper.sheet.width !== change.sheet.width || paper.sheet.height !== change.sheet.height) {
    const [found, expected] = [write(paper.sheet), write(change.sheet)];
    const message = `The plan cuts ${name} from sheets of ${expected}, and the stock has it in sheets of ${found}. Is it the same paper?`;
    return [{ code: "other-size", design, at: "sheet", found, expected, message }];
  }
  const faults: StockFault[] = [];
  const help = "Correct the stock by hand if it is wrong, or plan again with what is on hand.";
  if (paper.sheets !== null && paper.sheets < change.sheets) {
    const [found, expected] = [`${paper.sheets}`, `${change.sheets}`];
    const message = `The plan takes ${expected} sheets of ${name}, and ${found} are on hand. ${help}`;
    faults.push({ code: "not-enough", design, at: "sheets", found, expected, message });
  }
  const offcuts = offcutCounts(paper.offcuts);
  for (const { count, width, height } of change.taken) {
    const size = { width, height };
    const have = offcuts.countOf(size);
    if (have >= count) continue;
    const [found, expected] = [`${have}`, `${count}`];
    const message = `The plan takes ${expected} of the offcuts ${write(size)} of ${name}, and ${found} are on hand. ${help}`;
    faults.push({ code: "not-enough", design, at: size, found, expected, message });
  }
  return faults;
}
