import { z } from "zod";
import { says } from "../wording.js";
import { length, size } from "./scalars.js";
import { SHAPE_GROUPS, shape, shapeSize, stitched } from "./shape-schema.js";

/** The most sizes of one die. */
const MOST_SIZES = 100;

const sizeRange = z.strictObject(
  {
    from: shapeSize.describe("The smallest size."),
    to: shapeSize.describe("The largest size."),
    step: length
      .optional()
      .describe("What each is larger than the one before, both ways. Default: 1/4 in (6 mm)."),
  },
  says("sizeRange"),
);

const sizes = z.union(
  [z.array(shapeSize, says("sizes")).min(1, says("sizes")).max(MOST_SIZES, says("sizes")), sizeRange],
  says("sizes"),
);

const dieKeys = z.strictObject(
  {
    shape: shape
      .optional()
      .describe(
        "The shape that it cuts: its name, such as circle, or keys. Default: not known, so that a rectangle is drawn.",
      ),
    size: shapeSize
      .optional()
      .describe(
        "Size of the shape that it cuts: one length for circles, polygons, stars and squares, else width x height.",
      ),
    sizes: sizes
      .optional()
      .describe("The sizes of a set of dies: a list, or { from: 1, to: 4, step: 1/4 }, instead of size."),
    stitched: stitched
      .optional()
      .describe("The line of stitches that it presses: true, how far from the edge, or keys. Default: none."),
    blank: size
      .optional()
      .describe("Width x height of the die blank: the rectangle of paper that it cuts from."),
    margin: length
      .optional()
      .describe(
        "What the die blank has more on each side, where one of the two is not given. Default: that of the die machine.",
      ),
  },
  says("dieKeys"),
);

/** Dies by their names: the size of the shape, or keys. */
export const diesSchema = z.record(z.string(), z.union([size, dieKeys], says("die")), says("dies"));

/** What presses dies through paper. */
export const dieMachineSchema = z.strictObject(
  {
    platform: z
      .union([z.enum(["small", "large"]), z.string()], says("platform"))
      .optional()
      .describe(
        "Width and length of its plates: small, 6 x 9 in; large, 8 1/2 x 12 in; or a size. Default: small.",
      ),
    margin: length.optional().describe("What die blanks have more on each side. Default: 1/4 in (6 mm)."),
    "narrowest-bridge": length
      .optional()
      .describe("Narrower paper between two cuts is warned of. Default: 1/16 in (1.5 mm)."),
    strips: z
      .boolean(says("dieStrips"))
      .optional()
      .describe(
        "Whether several shapes of a size are cut from one strip where that saves paper: true or false. Default: true.",
      ),
  },
  says("dieMachine"),
);

/** Groups of keys by their wording. */
export const DIE_GROUPS = { dieKeys, sizeRange, dieMachine: dieMachineSchema, ...SHAPE_GROUPS };
