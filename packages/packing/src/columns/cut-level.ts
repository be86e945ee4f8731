import type { CutNode, SplitPart } from "../model.js";

/**
 * One level of cuts across a part of an extent, with what is left over as waste. A part that is cut along the same axis joins
 * the level, and what fills the whole extent needs no cut.
 */
export function cutLevel(
  axis: "x" | "y",
  extent: number,
  kerf: number,
  parts: readonly SplitPart[],
): CutNode {
  const [first, ...others] = parts;
  if (first && others.length === 0 && first.size === extent) return first.node;
  const flat = parts.flatMap((part) =>
    part.node.type === "split" && part.node.axis === axis ? part.node.parts : [part],
  );
  const rest = flat.reduce((left, part) => left - part.size - kerf, extent);
  return { type: "split", axis, parts: rest > 0 ? [...flat, { size: rest, node: { type: "waste" } }] : flat };
}
