import { inches, type Ticks } from "@sheetwright/measure";
import { moved } from "../outline/move.js";
import { type Outline, reversedRing } from "../outline/outline.js";
import { checkLength, checkSides } from "./check-parameter.js";
import { circleRing } from "./circle.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { mirroredUpright } from "./path.js";

/** A luggage tag: corners cut off at the top, and a punched hole. */
export interface TagShape {
  readonly shape: "tag";
  readonly width: Ticks;
  readonly height: Ticks;
  /** How much of each side the slanted cuts take off at the top, along both sides. Default: a quarter of the width. */
  readonly cut?: Ticks | undefined;
  /** Diameter of the hole; 0 for none. Default: 1/4 in, in small tags an eighth of the width or a quarter of the height. */
  readonly hole?: Ticks | undefined;
  /** From the top to the middle of the hole. Default: one and a half diameters. */
  readonly holeFromTop?: Ticks | undefined;
}

/** The catalogue's entry. */
export const tagEntry = {
  id: "tag",
  title: "Tag",
  about: "A tag with two corners cut off and a hole for ribbon.",
  parameters: [
    sizeParameter("width", "How wide it is."),
    sizeParameter("height", "How high it is, the hole at the top."),
    {
      key: "cut",
      kind: "length",
      meaning: "How much the slanted cuts take off the top corners, along both sides.",
      default: "a quarter of the width, at most half of the height",
      range: "0 to two fifths of the width, and less than the height",
    },
    {
      key: "hole",
      kind: "length",
      meaning: "How wide the hole is; 0 for a tag without one.",
      default: "1/4 in, at most an eighth of the width and a quarter of the height",
      range: "0, or 0.01 mm to a third of the width",
    },
    {
      key: "holeFromTop",
      kind: "length",
      meaning: "How far the middle of the hole lies below the top.",
      default: "one and a half times the hole",
      range: "so that as much as half of the hole, at most 1/16 in, is left round it",
    },
  ],
  symmetry: "upright",
} as const satisfies CatalogueEntry;

/** Common practice, no source: the hole of an office punch is 1/4 in wide. */
const USUAL_HOLE: Ticks = inches(1 / 4);

/** Common practice, no source: less paper than this round a hole tears. */
const LEAST_RIM: Ticks = inches(1 / 16);

/** No cutter makes a smaller hole. */
const SMALLEST_HOLE: Ticks = 16;

/**
 * The outline of a tag.
 *
 * @internal
 */
export function tagOutline(tag: TagShape): Outline {
  const { shape, width, height } = tag;
  checkSides(shape, { width, height });
  const cut = tag.cut ?? Math.floor(Math.min(width / 4, height / 2));
  checkLength(cut, {
    shape,
    key: "cut",
    most: Math.min(Math.floor((width * 2) / 5), height - 1),
    because: "two fifths of the width, and less than the height",
    help: "Use a smaller cut or a larger tag.",
  });
  const start = { x: width - cut, y: 0 };
  const edges = [{ to: { x: width, y: cut } }, { to: { x: width, y: height } }];
  const outer = mirroredUpright({ start, edges }, width);
  const hole = tag.hole ?? usualHole(width, height);
  if (hole === 0) return { outer, windows: [] };
  return { outer, windows: [holeOf(tag, cut, hole)] };
}

/** As odd or even as the width, so that it stands in the middle. */
function usualHole(width: Ticks, height: Ticks): Ticks {
  const hole = Math.floor(Math.min(USUAL_HOLE, width / 8, height / 4));
  return hole - ((width - hole) % 2);
}

function holeOf({ shape, width, height, holeFromTop }: TagShape, cut: Ticks, hole: Ticks) {
  checkLength(hole, {
    shape,
    key: "hole",
    least: SMALLEST_HOLE,
    most: Math.floor(width / 3),
    because: "a third of the width",
    help: "Use a smaller hole, or 0 for none.",
  });
  const reach = Math.ceil(hole / 2 + Math.min(LEAST_RIM, hole / 2));
  // The slanted cut is the line x + y = cut: the hole's middle lies (width / 2 + y - cut) / sqrt 2 from it.
  const least = Math.max(reach, Math.ceil(cut - width / 2 + reach * Math.sqrt(2)));
  const fromTop = holeFromTop ?? Math.max(Math.round(hole * 1.5), least);
  checkLength(fromTop, {
    shape,
    key: "holeFromTop",
    least,
    most: height - reach,
    because: "so that the paper round the hole holds",
    help: "Move the hole, make it smaller, or make the tag larger.",
  });
  const corner = { x: Math.floor((width - hole) / 2), y: fromTop - Math.floor(hole / 2) };
  const ring = { outer: circleRing(hole), windows: [] };
  return reversedRing(moved(ring, corner).outer);
}
