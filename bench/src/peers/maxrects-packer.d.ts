/**
 * What the bench uses of maxrects-packer 2.7.4. Its main file is no ES module, though its manifest says so, and its own
 * declarations cannot be followed from one; so its ES file is imported by name and described here.
 */
declare module "maxrects-packer/dist/maxrects-packer.mjs" {
  import type { Rectangle } from "@sheetwright/packing";

  export class MaxRectsPacker<Rect extends Rectangle> {
    constructor(
      width: number,
      height: number,
      padding: number,
      options: {
        readonly smart: boolean;
        readonly pot: boolean;
        readonly square: boolean;
        readonly allowRotation: boolean;
        readonly logic: number;
      },
    );
    readonly bins: readonly { readonly rects: readonly Rect[] }[];
    add(rect: Rect): Rect;
  }

  export const PACKING_LOGIC: { readonly MAX_AREA: number; readonly MAX_EDGE: number };
}
