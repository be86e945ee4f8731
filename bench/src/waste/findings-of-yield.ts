import {
  type Finding,
  type Mode,
  type Packing,
  type Problem,
  pack,
  type Size,
  verify,
  type Yield,
} from "@sheetwright/packing";

/**
 * What `verify` finds wrong with a yield. A yield is no packing, so it is put into the packing of as many copies as it
 * claims, whose bound and totals `verify` then judges with the layout.
 */
export function findingsOfYield(
  sheet: Size,
  piece: Size,
  mode: Exclude<Mode, "stopped">,
  { count, layout }: Yield,
): readonly Finding[] {
  const { width, height } = piece;
  const problem: Problem = {
    kinds: [{ id: "piece", quantity: count, forms: [{ width, height }] }],
    sheets: [{ id: layout.sheet, width: sheet.width, height: sheet.height }],
    mode,
    aim: "all",
  };
  const framed = pack(problem, { effort: "quick" });
  const packing: Packing = {
    ...framed,
    outcome: "complete",
    layouts: count === 0 ? [] : [layout],
    placed: [{ kind: "piece", count }],
    missing: [],
    sheets: count === 0 ? 0 : 1,
    cost: String(count === 0 ? 0 : sheet.width * sheet.height),
    value: String(count * width * height),
    proven: true,
  };
  return verify(problem, packing);
}
