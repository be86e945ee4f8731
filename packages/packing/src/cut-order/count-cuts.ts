import type { CutNode, Layout, Sheet, Size } from "../model.js";
import { childrenOf, usablePart } from "../placements.js";

/**
 * How many edge-to-edge cuts one sheet of a layout takes, the squaring-up of its sides among them: as many as
 * {@link cutOrder} lists, without working the order out. Throws RangeError for stopped cuts.
 *
 * @param kerf width lost by each cut, in the unit of the sheet (default 0).
 *
 * @example
 * const sheet = { id: "cream", width: 12, height: 12, trim: { left: 1 } };
 * const problem = {
 *   kinds: [{ id: "mat", quantity: 4, forms: [{ width: 5, height: 6 }] }],
 *   sheets: [sheet],
 *   mode: "guillotine",
 *   aim: "all",
 * };
 * const [layout] = pack(problem).layouts;
 * countCuts(sheet, layout) // => 5
 * cutOrder(sheet, layout, { narrowestHold: 1 }).cuts.length // => 5
 */
export function countCuts(sheet: Sheet, layout: Pick<Layout, "tree">, kerf = 0): number {
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  const trims = [left, right, top, bottom].filter((side) => side > 0).length;
  return trims + cutsIn(layout.tree, usablePart(sheet), kerf);
}

function cutsIn(node: CutNode, part: Size, kerf: number): number {
  if (node.type === "stopped") throw new RangeError("Expected edge-to-edge cuts, found stopped ones.");
  if (node.type !== "split") return 0;
  const between = node.parts.length - 1;
  const used = node.parts.reduce((sum, { size }) => sum + size, kerf * between);
  const last = used < (node.axis === "x" ? part.width : part.height) ? 1 : 0;
  return childrenOf(node, part, kerf).reduce(
    (sum, child) => sum + cutsIn(child.node, child, kerf),
    between + last,
  );
}
