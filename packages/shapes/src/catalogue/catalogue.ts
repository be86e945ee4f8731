import { archEntry } from "./arch.js";
import { bannerEntry } from "./banner.js";
import { circleEntry } from "./circle.js";
import { dropEntry } from "./drop.js";
import type { CatalogueEntry } from "./entry.js";
import { frameEntry } from "./frame.js";
import { halfCircleEntry } from "./half-circle.js";
import { heartEntry } from "./heart.js";
import { leafEntry } from "./leaf.js";
import { ovalEntry } from "./oval.js";
import { polygonEntry } from "./polygon.js";
import { rectangleEntry, squareEntry } from "./rectangle.js";
import { scallopedCircleEntry } from "./scalloped-circle.js";
import { scallopedOvalEntry } from "./scalloped-oval.js";
import { scallopedRectangleEntry, scallopedSquareEntry } from "./scalloped-rectangle.js";
import type { ShapeName } from "./shape.js";
import { starEntry } from "./star.js";
import { tagEntry } from "./tag.js";

/** All shapes, in the order in which a page shows them. */
export const catalogue: readonly (CatalogueEntry & { readonly id: ShapeName })[] = [
  circleEntry,
  ovalEntry,
  squareEntry,
  rectangleEntry,
  scallopedCircleEntry,
  scallopedOvalEntry,
  scallopedSquareEntry,
  scallopedRectangleEntry,
  polygonEntry,
  starEntry,
  heartEntry,
  archEntry,
  halfCircleEntry,
  leafEntry,
  dropEntry,
  tagEntry,
  bannerEntry,
  frameEntry,
];
