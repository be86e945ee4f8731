import { z } from "zod";
import { says } from "../wording.js";
import { SEAM_KEYS } from "./band-schema.js";
import { choice } from "./scalars.js";

const joinKeys = z.strictObject(
  {
    ends: choice
      .optional()
      .describe("The paper of the ends; its own paper lies in the middle, as large as it comes."),
    at: z
      .enum(["both ends", "one end"], says("joinAt"))
      .optional()
      .describe("Where these ends are; one end is the right or the lower one. Default: both ends."),
    parts: z
      .int(says("joinParts"))
      .min(2, says("joinParts"))
      .max(3, says("joinParts"))
      .optional()
      .describe("Parts of its own paper: 2, two thirds and one third or else halves; or 3, thirds."),
    hide: z
      .literal("below the layer", says("joinHide"))
      .optional()
      .describe("below the layer: it is cut short at an end on which another layer lies."),
    ...SEAM_KEYS,
  },
  says("joinKeys"),
);

/** How a layer is made up where its paper is smaller. */
export const join = joinKeys;

/** Groups of keys by their wording. */
export const JOIN_GROUPS = { joinKeys };
