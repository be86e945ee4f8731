import type { Ticks } from "@sheetwright/measure";
import type { Outline } from "../outline/outline.js";
import type { Point } from "../outline/point.js";
import { checkLength, checkSides, checkWord } from "./check-parameter.js";
import { type CatalogueEntry, sizeParameter } from "./entry.js";
import { axisOf, ringOfPath } from "./path.js";

/** Which ends of a banner are cut as a swallow tail. */
export type BannerTail = "right" | "left" | "both" | "down";

/** A banner whose end is notched like a swallow's tail. */
export interface BannerShape {
  readonly shape: "banner";
  readonly width: Ticks;
  readonly height: Ticks;
  /** Which ends are notched; `down` for a banner that hangs. Default: `right`. */
  readonly tail?: BannerTail | undefined;
  /** How deep the notch is. Default: half of the banner's breadth, which cuts at 45 degrees, at most a third of its length. */
  readonly notch?: Ticks | undefined;
}

const TAILS: readonly BannerTail[] = ["right", "left", "both", "down"];

/** The catalogue's entry. */
export const bannerEntry = {
  id: "banner",
  title: "Banner",
  about: "A banner with a swallow tail, for a greeting or to hang.",
  parameters: [
    sizeParameter("width", "How wide it is, with its tails."),
    sizeParameter("height", "How high it is, with its tails."),
    {
      key: "tail",
      kind: "word",
      meaning: "Where it has a swallow tail; down for a banner that hangs.",
      default: "right",
      range: "right, left, both or down",
      words: TAILS,
    },
    {
      key: "notch",
      kind: "length",
      meaning: "How deep the notch is cut.",
      default: "half of the breadth of the end (cut at 45 degrees), at most a third of the length",
      range: "0.01 mm to nine tenths of the length; with two tails two fifths of it each",
    },
  ],
  symmetry: "level; with tails at both ends upright and level; hanging: upright",
} as const satisfies CatalogueEntry;

/** A notch must show. */
const LEAST_NOTCH: Ticks = 16;

/**
 * The outline of a banner.
 *
 * @internal
 */
export function bannerOutline({ shape, width, height, tail = "right", notch }: BannerShape): Outline {
  checkSides(shape, { width, height });
  checkWord(shape, "tail", tail, TAILS);
  const [length, breadth] = tail === "down" ? [height, width] : [width, height];
  const depth = notch ?? Math.floor(Math.min(breadth / 2, length / 3));
  checkLength(depth, {
    shape,
    key: "notch",
    least: LEAST_NOTCH,
    most: Math.floor(length * (tail === "both" ? 0.4 : 0.9)),
    because: tail === "both" ? "two fifths of the length" : "nine tenths of the length",
    help: "Use a shallower notch or a longer banner.",
  });
  const right: Point = { x: width - depth, y: axisOf(height) };
  const left: Point = { x: depth, y: axisOf(height) };
  const down: Point = { x: axisOf(width), y: height - depth };
  const edges = [
    { to: { x: width, y: 0 } },
    ...(tail === "right" || tail === "both" ? [{ to: right }] : []),
    { to: { x: width, y: height } },
    ...(tail === "down" ? [{ to: down }] : []),
    { to: { x: 0, y: height } },
    ...(tail === "left" || tail === "both" ? [{ to: left }] : []),
  ];
  return { outer: ringOfPath({ start: { x: 0, y: 0 }, edges }), windows: [] };
}
