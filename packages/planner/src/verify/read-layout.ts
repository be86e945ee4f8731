import type { CutNode, Layout, Share } from "@sheetwright/packing";
import type { SheetFacts } from "./project-facts.js";

/** What one place of a layout yields on all sheets of its run together. */
export interface Place {
  /** On the sheet as it lies, in ticks. */
  readonly width: number;
  readonly height: number;
  /** No shares at a leftover. */
  readonly shares: readonly Share[];
  /** Sheets of the run on which nothing is taken from the place. */
  readonly left: number;
  /** Where the place stands in the layout, such as `.tree.parts[0].node`. */
  readonly path: string;
}

/** Walks the cut tree of a layout that was proven right, part by part, and gives all its places. */
export function readLayout(layout: Layout, sheet: SheetFacts): readonly Place[] {
  const places: Place[] = [];
  const ahead: { node: CutNode; width: number; height: number; path: string }[] = [
    { node: layout.tree, ...sheet.usable, path: ".tree" },
  ];
  for (let part = ahead.shift(); part !== undefined; part = ahead.shift()) {
    const { node, width, height, path } = part;
    if (node.type === "split") {
      for (const [i, { size, node: child }] of node.parts.entries()) {
        const extent = node.axis === "x" ? { width: size, height } : { width, height: size };
        ahead.push({ node: child, ...extent, path: `${path}.parts[${i}].node` });
      }
    } else if (node.type !== "stopped") {
      const shares = node.type === "piece" ? node.shares : [];
      const taken = shares.reduce((sum, { count }) => sum + count, 0);
      places.push({ width, height, shares, left: layout.run - taken, path });
    }
  }
  return places;
}
