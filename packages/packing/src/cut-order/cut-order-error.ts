/**
 * Thrown where a layout cannot be put in cutting order.
 * - `not-yet`: it has cuts that stop inside a part; their order is not worked out yet.
 * - `does-not-add-up`: the parts of a split and the cuts between them take more or less than the part has.
 *
 * @example
 * const tree = { type: "split", axis: "x", parts: [{ size: 5, node: { type: "waste" } }] };
 * cutOrder({ id: "cream", width: 12, height: 7 }, { sheet: "cream", run: 1, tree }) // throws CutOrderError: 5 along x
 */
export class CutOrderError extends Error {
  override readonly name = "CutOrderError";
  readonly code: "not-yet" | "does-not-add-up";
  /** Where in the layout, such as `tree.parts[1].node`. */
  readonly path: string;
  readonly details: { readonly found?: number; readonly expected?: number };

  constructor(code: CutOrderError["code"], path: string, message: string, details: CutOrderError["details"]) {
    super(`${path}: ${message}`);
    this.code = code;
    this.path = path;
    this.details = details;
  }
}
