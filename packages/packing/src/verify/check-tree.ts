/**
 * Walks the cut tree of a layout and checks every cut by its definition: a part is its children and one kerf for each
 * cut between them; a remainder of at most one kerf vanishes in a last cut. Each node is visited once.
 */

import type { Size } from "../model.js";
import { checkPiece } from "./check-piece.js";
import { checkStoppedCuts } from "./check-stopped-cuts.js";
import { enterLevel } from "./enter-level.js";
import { type Fields, readFields, readList, readWhole, readWord } from "./read-value.js";
import type { Ground, Part, Walk } from "./walk.js";

const nodeTypes = ["piece", "offcut", "waste", "split", "stopped"] as const;

/** Every field that a node of any type may have. */
export type NodeFields = Fields<
  | "type"
  | "shares"
  | "window"
  | "axis"
  | "parts"
  | "hand"
  | "x1"
  | "x2"
  | "y1"
  | "y2"
  | "top"
  | "right"
  | "bottom"
  | "left"
  | "centre"
>;

/** Checks a tree, with the trees of its windows, and gathers its pieces into the walk's grounds and tally. */
export function checkTree(walk: Walk, tree: unknown, path: string, ground: Ground): void {
  walk.grounds.push(ground);
  walk.waiting.push({ node: tree, path, ...ground.bounds, ground, axis: null, level: 0, lastTrim: null });
  for (let part = walk.waiting.pop(); part !== undefined; part = walk.waiting.pop()) {
    if (walk.tally.nodesLeft === 0) {
      const message = `${part.path} and what follows is not checked: the packing has too many nodes. Split the plan.`;
      walk.report("too-large", part.path, message);
      walk.tally.isWhole = false;
      return;
    }
    walk.tally.nodesLeft -= 1;
    checkNode(walk, part);
  }
  for (const { path, pieces } of walk.lastTrims) {
    if (pieces === 1) continue;
    const message =
      `${path} is a third level of cuts with ${pieces} pieces. In shelf mode the last cuts trim one piece: ` +
      "give the other pieces a place of their own in the strip, or use guillotine mode.";
    walk.report("not-shelf", path, message, pieces, 1);
  }
}

function checkNode(walk: Walk, part: Part): void {
  const node: NodeFields | undefined = readFields(walk.report, part.node, part.path);
  const type = node && readWord(walk.report, node.type, `${part.path}.type`, nodeTypes);
  if (node === undefined || type === undefined) {
    walk.tally.isWhole = false;
  } else if (type === "piece") {
    checkPiece(walk, part, node);
  } else if (type === "split") {
    checkSplit(walk, part, node);
  } else if (type === "stopped") {
    checkStoppedCuts(walk, part, node);
  } else {
    checkLeftover(walk, part, type);
  }
}

function checkSplit(walk: Walk, part: Part, node: NodeFields): void {
  const { report, sheet } = walk;
  const axis = readWord(report, node.axis, `${part.path}.axis`, ["x", "y"]);
  const items = readList(report, node.parts, `${part.path}.parts`);
  if (axis === undefined || items === undefined) {
    walk.tally.isWhole = false;
    return;
  }
  const { level, lastTrim } = enterLevel(walk, part, axis);
  const sizes: number[] = [];
  const children: Part[] = [];
  let offset = 0;
  for (const [index, item] of items.entries()) {
    const here = `${part.path}.parts[${index}]`;
    const fields = readFields<"size" | "node">(report, item, here);
    const size = fields && readWhole(report, fields.size, `${here}.size`, 1);
    if (fields === undefined || size === undefined) {
      walk.tally.isWhole = false;
      continue;
    }
    const rectangle =
      axis === "x"
        ? { x: part.x + offset, y: part.y, width: size, height: part.height }
        : { x: part.x, y: part.y + offset, width: part.width, height: size };
    children.push({
      node: fields.node,
      path: `${here}.node`,
      ...rectangle,
      ground: part.ground,
      axis,
      level,
      lastTrim,
    });
    sizes.push(size);
    offset += size + walk.facts.kerf;
  }
  if (sizes.length === items.length) checkSizes(walk, part, axis, sizes);
  const across = axis === "x" ? part.height : part.width;
  if (sheet.longestCut !== null && across > sheet.longestCut) {
    const message =
      `The cuts of ${part.path} are ${across} long, but the longest cut on sheet "${sheet.id}" is ` +
      `${sheet.longestCut}. Divide the part along the other axis first.`;
    report("cut-too-long", part.path, message, across, sheet.longestCut);
  }
  for (let index = children.length - 1; index >= 0; index -= 1) walk.waiting.push(children[index] as Part);
}

/** Checks that the sizes of a split's parts, with the kerfs, are the part that is cut. */
function checkSizes(walk: Walk, part: Part, axis: "x" | "y", sizes: readonly number[]): void {
  const { path } = part;
  const kerf = BigInt(walk.facts.kerf);
  const extent = BigInt(axis === "x" ? part.width : part.height);
  const sum = sizes.reduce((total, size) => total + BigInt(size), 0n);
  if (sizes.length === 0) {
    walk.report("no-cut", path, `The split ${path} has no parts. Put an offcut or waste in its place.`, 0);
    return;
  }
  const needed = sum + kerf * BigInt(sizes.length - 1);
  const remainder = extent - needed;
  if (remainder < 0n) {
    const message =
      `The parts of ${path} need ${needed} along ${axis}, kerfs included, but the part that is cut gives ${extent}. ` +
      hint(walk, part, axis, sum, needed);
    walk.report("parts-too-large", path, message, needed, extent);
  } else if (remainder > kerf) {
    const message =
      `The parts of ${path} need ${needed} along ${axis}, kerfs included, and leave ${remainder} of ${extent}; ` +
      `at most one kerf (${kerf}) may vanish in a last cut. Add an offcut or waste for the rest.`;
    walk.report("parts-too-small", path, message, needed, extent);
  } else if (sizes.length === 1 && remainder === 0n) {
    const message = `The split ${path} has one part as large as itself, so nothing is cut. Put that part in its place.`;
    walk.report("no-cut", path, message, 1);
  }
}

/** Names the likely reason why parts are too large. */
function hint(walk: Walk, part: Part, axis: "x" | "y", sum: bigint, needed: bigint): string {
  const { sheet, facts } = walk;
  if (part.level === 0 && part.ground.name === "sheet") {
    const untrimmed = BigInt(axis === "x" ? sheet.width : sheet.height);
    if (needed === untrimmed && needed > BigInt(axis === "x" ? part.width : part.height)) {
      return "They fit the sheet with its trim: cut what is inside the trim only.";
    }
  }
  if (facts.kerf > 0 && sum === BigInt(axis === "x" ? part.width : part.height)) {
    return `They would fit without kerf: leave ${facts.kerf} for each cut between two parts.`;
  }
  return "Make the parts smaller or take one out.";
}

function checkLeftover(walk: Walk, part: Part, type: "offcut" | "waste"): void {
  const smallest = walk.facts.smallestOffcut;
  const expected = smallest === null || reaches(part, smallest) ? "offcut" : "waste";
  if (type === expected) return;
  const rule =
    smallest === null
      ? "the problem sets no smallest offcut, so every leftover is one"
      : `the smallest offcut is ${smallest.width} x ${smallest.height}`;
  const message = `${part.path} is called ${type}, but it is ${part.width} x ${part.height} and ${rule}. Call it ${expected}.`;
  walk.report("wrong-leftover", `${part.path}.type`, message, type, expected);
}

/** Whether a size is at least as large as another one, in either direction. */
function reaches(size: Size, smallest: Size): boolean {
  return (
    Math.min(size.width, size.height) >= Math.min(smallest.width, smallest.height) &&
    Math.max(size.width, size.height) >= Math.max(smallest.width, smallest.height)
  );
}
