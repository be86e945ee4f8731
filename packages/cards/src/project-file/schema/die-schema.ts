import { z } from "zod";
import { says } from "../wording.js";
import { length, size } from "./scalars.js";

const dieKeys = z.strictObject(
  {
    size: size.optional().describe("Width x height of the shape that it cuts."),
    blank: size
      .optional()
      .describe("Width x height of the die blank: the rectangle of paper that it cuts from."),
    margin: length
      .optional()
      .describe(
        "What the die blank has more on each side, where one of the two is not given. Default: 1/4 in (6 mm).",
      ),
  },
  says("dieKeys"),
);

/** Dies by their names: the size of the shape, or keys. */
export const diesSchema = z.record(z.string(), z.union([size, dieKeys], says("die")), says("dies"));

/** Groups of keys by their wording. */
export const DIE_GROUPS = { dieKeys };
