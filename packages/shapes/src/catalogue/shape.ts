import type { ArchShape } from "./arch.js";
import type { BannerShape } from "./banner.js";
import type { CircleShape } from "./circle.js";
import type { DropShape } from "./drop.js";
import type { FrameShape } from "./frame.js";
import type { HalfCircleShape } from "./half-circle.js";
import type { HeartShape } from "./heart.js";
import type { LeafShape } from "./leaf.js";
import type { OvalShape } from "./oval.js";
import type { PolygonShape } from "./polygon.js";
import type { RectangleShape, SquareShape } from "./rectangle.js";
import type { ScallopedCircleShape } from "./scalloped-circle.js";
import type { ScallopedOvalShape } from "./scalloped-oval.js";
import type { ScallopedRectangleShape, ScallopedSquareShape } from "./scalloped-rectangle.js";
import type { StarShape } from "./star.js";
import type { TagShape } from "./tag.js";

/** A shape of the catalogue as its parameters. Plain data; lengths are ticks. */
export type Shape =
  | CircleShape
  | OvalShape
  | SquareShape
  | RectangleShape
  | PolygonShape
  | StarShape
  | HeartShape
  | ArchShape
  | HalfCircleShape
  | LeafShape
  | DropShape
  | TagShape
  | BannerShape
  | ScallopedCircleShape
  | ScallopedOvalShape
  | ScallopedSquareShape
  | ScallopedRectangleShape
  | FrameShape;

/** The name of a shape of the catalogue. */
export type ShapeName = Shape["shape"];
