// Layers cut to shapes, made at random so that they and what lies beneath them stay within a size: with dies of one size and
// sets, without a die, stitched, cut straight, with a mat of the next die up, with a shadow.

import type { Size } from "@sheetwright/measure";
import { boxOf, nextUp, outlineOf, type Shape, shapeOfSize } from "@sheetwright/shapes";
import type { Draw, FileObject, FileValue } from "./random-draw.js";
import type { RandomPapers } from "./random-papers.js";

/** What a layer is drawn for. Dies that it names are added. */
export interface ShapeRoom {
  readonly draw: Draw;
  readonly papers: RandomPapers;
  readonly dies: Map<string, FileValue>;
}

/** Fewer steps leave no room for a shape with a mat and a shadow. */
const LEAST_STEPS = 24;

/** A layer cut to a shape, no larger than a size with all that lies beneath it; `null` where that is too small. */
export function randomShapeLayer(
  { draw, papers, dies }: ShapeRoom,
  size: Size,
  { size: _, ...place }: FileObject,
): FileObject | null {
  const steps = Math.floor(Math.min(size.width, size.height) / draw.step);
  if (steps < LEAST_STEPS) return null;
  const shadow = draw.sometimes(30) ? draw.whole(1, 2) : 0;
  const hasMat = draw.sometimes(40);
  // A step is for rounding.
  const across = draw.whole(12, Math.min(64, steps - 2 * shadow - (hasMat ? 8 : 0) - 1));
  const kind = draw.one(["circle", "scalloped-circle", "star", "polygon", "square", "heart"] as const);
  const points = draw.whole(5, 8);
  const keys: FileObject =
    kind === "star" ? { kind, points } : kind === "polygon" ? { kind, sides: points } : { kind };
  const shape: FileValue = Object.keys(keys).length === 1 && draw.sometimes(70) ? kind : keys;
  const sizeOf = (length: number) => (kind === "heart" ? draw.size(length, length) : draw.length(length));
  const stitched: FileValue | null =
    across >= (draw.unit === "mm" ? 44 : 20) && draw.sometimes(40)
      ? draw.one<FileValue>([
          draw.length(1),
          // Holes of 1 mm lie within the edge from 0.5 mm on.
          { inset: draw.length(draw.unit === "mm" ? 3 : 1), marks: "holes", dash: "2 mm", gap: "2 mm" },
          { inset: draw.length(2), "per-inch": 10 },
        ])
      : null;
  const isPressed = stitched !== null && draw.sometimes(50);
  const own: FileObject = draw.sometimes(30)
    ? { shape, size: sizeOf(across) }
    : namedDie(`${draw.one(["moon", "disc no.", "flower"])} ${dies.size + 1}`);
  const isNamed = "die" in own;

  function namedDie(name: string): FileObject {
    const pressed = isPressed && stitched !== null ? { stitched } : {};
    const margin = draw.sometimes(30) ? { margin: draw.length(draw.whole(0, 4)) } : {};
    const isSet = draw.sometimes(50);
    const sizes: FileObject = !isSet
      ? { size: sizeOf(across) }
      : draw.sometimes(50)
        ? { sizes: { from: sizeOf(across), to: sizeOf(across + 8), step: draw.length(4) } }
        : { sizes: [sizeOf(across), sizeOf(across + 3)] };
    dies.set(name, { shape, ...sizes, ...pressed, ...margin });
    return { die: name, ...(isSet || draw.sometimes(20) ? { size: sizeOf(across) } : {}) };
  }

  const mats = hasMat ? matBelow() : [];
  function matBelow(): readonly FileValue[] {
    const top = outlineOf(shapeFor(across));
    const wanted = draw.whole(1, 2);
    const larger = [across + 2, across + 4, across + 8];
    const below = larger.map((length) => ({ name: String(length), shape: shapeFor(length) }));
    const { next } = nextUp(top, wanted * draw.step, below);
    const least = boxOf(top);
    if (next === null || least.width > size.width) return [];
    const name = `next up ${dies.size + 1}`;
    dies.set(name, { shape, sizes: larger.map(sizeOf) });
    return [{ mat: papers.choice(), die: name, border: draw.length(wanted) }];
  }

  function shapeFor(length: number): Shape {
    const ticks = length * draw.step;
    if (kind === "star") return shapeOfSize(kind, ticks, { points });
    if (kind === "polygon") return shapeOfSize(kind, ticks, { sides: points });
    if (kind === "heart") return shapeOfSize(kind, { width: ticks, height: ticks });
    return shapeOfSize(kind, ticks);
  }

  const trim = draw.sometimes(25)
    ? {
        trim: {
          [draw.one(["bottom", "top", "left", "right"])]: draw.one<FileValue>(["half", draw.length(2)]),
        },
      }
    : {};
  return {
    ...own,
    paper: papers.choice(),
    ...place,
    ...(stitched !== null && !(isPressed && isNamed) ? { stitched } : {}),
    ...trim,
    ...(mats.length > 0 ? { mats } : {}),
    ...(shadow > 0 ? { shadow: { paper: papers.choice(), border: draw.length(shadow) } } : {}),
  };
}
