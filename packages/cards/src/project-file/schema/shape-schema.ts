import { z } from "zod";
import { SHAPES } from "../die-wording.js";
import { says } from "../wording.js";
import { length } from "./scalars.js";

/** The most scallops, points and sides of a shape. */
const MOST_PARTS = 1000;

const shapeWord = z.enum(SHAPES, says("shapeKind"));
const parts = z.int(says("shapeParts")).min(1, says("shapeParts")).max(MOST_PARTS, says("shapeParts"));

const shapeKeys = z.strictObject(
  {
    kind: shapeWord.describe("Its name, such as circle, scalloped-circle, star or heart."),
    scallops: parts
      .optional()
      .describe("Scallops round a circle or an oval. Default: what comes nearest to the pitch."),
    pitch: length
      .optional()
      .describe(
        "How wide a scallop is meant to be, as near as a whole number of them comes. Default: 3/8 in, at most a fifth of the shorter side.",
      ),
    depth: length
      .optional()
      .describe(
        "How far a scallop rises, or how far the notches of a star lie inside. Default: scallops that touch, a star of straight lines.",
      ),
    points: parts.optional().describe("Points of a star. Default: 5."),
    sides: parts.optional().describe("Sides of a polygon, which needs them."),
    up: z
      .enum(["point", "flat"], says("shapeUp"))
      .optional()
      .describe(
        "What of a polygon is at the top, point or flat. Default: flat where its sides are a multiple of four, else point.",
      ),
    corners: z
      .enum(["sharp", "round", "ticket"], says("shapeCorners"))
      .optional()
      .describe(
        "How the corners of a rectangle or a square are cut. Default: sharp; round where a radius is given.",
      ),
    radius: length
      .optional()
      .describe("Radius of such corners. Default: 1/4 in, at most a quarter of the shorter side."),
    rise: length
      .optional()
      .describe("How high the round top of an arch is. Default: half of the width, at most the height."),
    tail: z
      .enum(["right", "left", "both", "down"], says("shapeTail"))
      .optional()
      .describe("Where a banner has its swallow tail. Default: right."),
    notch: length
      .optional()
      .describe("How deep that is cut. Default: half of the breadth, at most a third of the length."),
    cut: length
      .optional()
      .describe(
        "What is cut off the upper corners of a tag. Default: a quarter of the width, at most half of the height.",
      ),
    hole: length
      .optional()
      .describe(
        "How wide the hole of a tag is; 0 for none. Default: 1/4 in, at most an eighth of the width and a quarter of the height.",
      ),
    "hole-from-top": length
      .optional()
      .describe("How far down the middle of that hole lies. Default: one and a half times the hole."),
    get window(): z.ZodOptional<typeof shapeWindow> {
      return shapeWindow
        .optional()
        .describe("A window in its middle, which makes a frame of it: { shape: circle, size: 2 }.");
    },
  },
  says("shapeKeys"),
);

/** A shape: its name, or its name with what else it is made by. */
export const shape = z.union([shapeWord, shapeKeys], says("shape"));

/** How large a shape is: one length, or width x height. */
export const shapeSize = z.union([z.number(), z.string()], says("shapeSize"));

const shapeWindow = z.strictObject(
  {
    shape: shape.describe("The shape of the window."),
    size: shapeSize.describe(
      "Its size; of a set of dies that of the smallest, larger ones keep their frame.",
    ),
  },
  says("shapeWindow"),
);

const stitchedKeys = z.strictObject(
  {
    inset: length.optional().describe("From the edge to the line. Default: 1/8 in (3 mm)."),
    marks: z
      .enum(["dashes", "holes"], says("stitchMarks"))
      .optional()
      .describe("dashes: as if sewn; holes: pricked. Default: dashes."),
    dash: length.optional().describe("How long a stitch should be. Default: 2 mm."),
    gap: length.optional().describe("How far apart stitches should be. Default: 1 mm."),
    "per-inch": z
      .number(says("perInch"))
      .positive(says("perInch"))
      .optional()
      .describe("Stitches to the inch, instead of one of these or both."),
  },
  says("stitchedKeys"),
);

/** A line of stitches: `true`, how far from the edge, or keys. */
export const stitched = z.union([z.boolean(), z.number(), z.string(), stitchedKeys], says("stitched"));

/** Groups of keys by their wording. */
export const SHAPE_GROUPS = { shapeKeys, shapeWindow, stitchedKeys };
