/**
 * Leaves the largest possible offcut without more stages ('the first cut should leave the largest offcut': common
 * practice, no source). The corner that a level of strips leaves free can go to either of two neighbours:
 *
 *     +---+---+---+-----+        +---+---+---+-----+
 *     | A | B | C |     |        | A | B | C |     |
 *     +---+   |   |  l  |  lift  +   |---+   |     |
 *     |   +---+   |     |  --->  |---+   +---+-----+      sink is the way back
 *     |   |   +---+     |        +-------------------+
 *     |   |   |   |     |        |         h         |
 *     +---+---+---+-----+        +-------------------+
 *
 * Lift gathers the ends of the strips and the level's own leftover into one leftover across them; sink shares a
 * leftover out among the strips before it. Both keep every piece and its size.
 */

import type { CutNode, LeftoverLeaf, Size, Split, SplitPart } from "../model.js";
import { isLeftover, isOffcut, largestOffcut, type NormalFormRules, normalForm } from "./normal-form.js";

interface Rearrangement {
  readonly tree: CutNode;
  /** Area of the largest offcut that it makes; there may be larger ones that it leaves alone. */
  readonly promise: number;
}

const waste: LeftoverLeaf = { type: "waste" };

function across(axis: "x" | "y"): "x" | "y" {
  return axis === "x" ? "y" : "x";
}

function extentOf(axis: "x" | "y", part: Size): number {
  return axis === "x" ? part.width : part.height;
}

/** How much of a strip's far end is leftover; endless for a strip that is all leftover. */
function freeEnd(strip: SplitPart, axis: "x" | "y"): number {
  if (isLeftover(strip.node)) return Number.POSITIVE_INFINITY;
  if (strip.node.type !== "split" || strip.node.axis === axis) return 0;
  return strip.node.parts.find(({ node }) => isLeftover(node))?.size ?? 0;
}

/** A strip without its leftover: what stands in it needs no more length than this, whatever the extent. */
function withoutEnd(strip: SplitPart): SplitPart {
  if (strip.node.type !== "split") return strip;
  const parts = strip.node.parts.filter(({ node }) => !isLeftover(node));
  return { size: strip.size, node: { ...strip.node, parts } };
}

function areaIfOffcut(width: number, height: number, rules: NormalFormRules): number {
  return isOffcut({ width, height }, rules.smallestOffcut) ? width * height : 0;
}

function lifts(split: Split, part: Size, rules: NormalFormRules): Rearrangement[] {
  const { axis, parts } = split;
  const { kerf } = rules;
  const found: Rearrangement[] = [];
  const ends = parts.map((strip) => freeEnd(strip, axis));
  const depth = extentOf(across(axis), part);
  for (const end of new Set(ends)) {
    if (end === 0 || end === Number.POSITIVE_INFINITY) continue;
    const lifted = parts.filter((_, i) => ends[i]! >= end);
    if (lifted.length < 2) continue;
    const whole = lifted.length === parts.length;
    const span = whole
      ? extentOf(axis, part)
      : lifted.reduce((sum, { size }) => sum + size, kerf * (lifted.length - 1));
    const strips: Split = { type: "split", axis, parts: lifted.map(withoutEnd) };
    const group: Split = {
      type: "split",
      axis: across(axis),
      parts: [
        { size: depth - end - kerf, node: strips },
        { size: end, node: waste },
      ],
    };
    const others = parts.filter((_, i) => ends[i]! < end);
    found.push({
      tree: whole ? group : { type: "split", axis, parts: [...others, { size: span, node: group }] },
      promise: areaIfOffcut(span, end, rules),
    });
  }
  return found;
}

function sinks(split: Split, rules: NormalFormRules): Rearrangement[] {
  const { axis, parts } = split;
  const { kerf } = rules;
  const end = parts.find(({ node }) => isLeftover(node));
  if (end === undefined) return [];
  const found: Rearrangement[] = [];
  for (const block of parts) {
    if (block.node.type !== "split" || block.node.axis === axis) continue;
    const inner = block.node;
    const size = block.size + kerf + end.size;
    const strips = inner.parts.map((strip) => ({
      size: strip.size,
      node: {
        type: "split",
        axis,
        parts: [
          { size: block.size, node: strip.node },
          { size: end.size, node: waste },
        ],
      },
    })) satisfies SplitPart[];
    const group: Split = { type: "split", axis: inner.axis, parts: strips };
    const promises = inner.parts.map((strip) => {
      const free = freeEnd(strip, inner.axis);
      const grown = free === Number.POSITIVE_INFINITY ? size : end.size + (free === 0 ? 0 : free + kerf);
      return areaIfOffcut(grown, strip.size, rules);
    });
    const others = parts.filter((other) => other !== block && other !== end);
    found.push({
      tree: others.length === 0 ? group : { type: "split", axis, parts: [...others, { size, node: group }] },
      promise: Math.max(...promises),
    });
  }
  return found;
}

/**
 * Finds a better arrangement of one level and what is directly below it: one whose largest offcut is larger than the
 * largest of the level as it is, and that `mayStand` accepts. The most promising is tried first. The level is in
 * normal form, and so is the result.
 */
export function enlargeOffcut(
  split: Split,
  part: Size,
  rules: NormalFormRules,
  mayStand: (tree: CutNode) => boolean,
): CutNode | undefined {
  const offered = [...lifts(split, part, rules), ...sinks(split, rules)];
  if (offered.length === 0) return undefined;
  const now = largestOffcut(split, part, rules);
  const better = offered.filter(({ promise }) => promise > now).sort((a, b) => b.promise - a.promise);
  for (const { tree } of better) {
    const normal = normalForm(tree, part, rules);
    if (mayStand(normal)) return normal;
  }
  return undefined;
}
