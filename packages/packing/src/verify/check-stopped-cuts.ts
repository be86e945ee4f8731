/** Checks five blocks round a centre: four cuts that enter at an edge and stop on the line of the next. */

import type { Rectangle } from "../model.js";
import type { NodeFields } from "./check-tree.js";
import { enterLevel } from "./enter-level.js";
import { readWhole, readWord } from "./read-value.js";
import type { Part, Walk } from "./walk.js";

const blocks = ["top", "right", "bottom", "left", "centre"] as const;
type Block = (typeof blocks)[number];

/** Checks the lines and the lengths of four stopped cuts, and puts the five blocks on the walk's waiting list. */
export function checkStoppedCuts(walk: Walk, part: Part, node: NodeFields): void {
  const { report } = walk;
  const { path } = part;
  walk.hasStoppedCuts = true;
  if (walk.facts.mode !== "stopped") {
    const message =
      `The cuts of ${path} stop inside the part, but in ${walk.facts.mode} mode every cut goes from edge to edge. ` +
      "Use the mode stopped, or cut it another way.";
    report("stopped-cuts", path, message, "stopped", walk.facts.mode);
  }
  const { level, lastTrim } = enterLevel(walk, part, null);
  const hand = readWord(report, node.hand, `${path}.hand`, ["clockwise", "anticlockwise"]);
  const x1 = readWhole(report, node.x1, `${path}.x1`, 1);
  const x2 = readWhole(report, node.x2, `${path}.x2`, 1);
  const y1 = readWhole(report, node.y1, `${path}.y1`, 1);
  const y2 = readWhole(report, node.y2, `${path}.y2`, 1);
  if (hand === undefined || x1 === undefined || x2 === undefined || y1 === undefined || y2 === undefined) {
    walk.tally.isWhole = false;
    return;
  }
  const { kerf } = walk.facts;
  const { width, height } = part;
  const places = layOut(hand === "clockwise", { x1, x2, y1, y2, kerf, width, height });
  const cramped = blocks.filter((block) => places[block].width < 1 || places[block].height < 1);
  if (cramped.length > 0) {
    const message =
      `The lines of ${path} (x1 ${x1}, x2 ${x2}, y1 ${y1}, y2 ${y2}) leave nothing for the block ${cramped.join(", ")} ` +
      `in a part of ${width} x ${height} with a kerf of ${kerf}. Keep every line one kerf and more from the next one.`;
    report("wrong-lines", path, message);
    walk.tally.isWhole = false;
    return;
  }
  checkLengths(walk, path, places);
  for (const block of [...blocks].reverse()) {
    const place = places[block];
    walk.waiting.push({
      ...place,
      x: part.x + place.x,
      y: part.y + place.y,
      node: node[block],
      path: `${path}.${block}`,
      ground: part.ground,
      axis: null,
      level,
      lastTrim,
    });
  }
}

interface Lines {
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
  readonly kerf: number;
  readonly width: number;
  readonly height: number;
}

/** Places the blocks within the part. Each line is the near side of its cut, and the kerf lies beyond it. */
function layOut(isClockwise: boolean, lines: Lines): Readonly<Record<Block, Rectangle>> {
  const { x1, x2, y1, y2, kerf, width, height } = lines;
  const beyondX1 = x1 + kerf;
  const beyondX2 = x2 + kerf;
  const beyondY1 = y1 + kerf;
  const beyondY2 = y2 + kerf;
  const between = (x: number, y: number, endX: number, endY: number): Rectangle => ({
    x,
    y,
    width: endX - x,
    height: endY - y,
  });
  const centre = between(beyondX1, beyondY1, x2, y2);
  return isClockwise
    ? {
        top: between(0, 0, x2, y1),
        right: between(beyondX2, 0, width, y2),
        bottom: between(beyondX1, beyondY2, width, height),
        left: between(0, beyondY1, x1, height),
        centre,
      }
    : {
        top: between(beyondX1, 0, width, y1),
        right: between(beyondX2, beyondY1, width, height),
        bottom: between(0, beyondY2, x2, height),
        left: between(0, 0, x1, y2),
        centre,
      };
}

/** The cut along each outer block runs the block's whole length, from the edge to the line where it stops. */
function checkLengths(walk: Walk, path: string, places: Readonly<Record<Block, Rectangle>>): void {
  const longest = walk.sheet.longestCut;
  if (longest === null) return;
  const length = Math.max(places.top.width, places.right.height, places.bottom.width, places.left.height);
  if (length <= longest) return;
  const message =
    `A cut of ${path} is ${length} long, but the longest cut on sheet "${walk.sheet.id}" is ${longest}. ` +
    "Choose lines that stop earlier.";
  walk.report("cut-too-long", path, message, length, longest);
}
