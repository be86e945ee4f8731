import { z } from "zod";
import { says } from "../wording.js";
import { length, size, text } from "./scalars.js";

const keys = {
  cuts: z
    .enum(["edge-to-edge", "strips"], says("cuts"))
    .optional()
    .describe(
      "edge-to-edge: every cut crosses the part; strips: strips, pieces from the strips, one last trim. Default: edge-to-edge.",
    ),
  kerf: length.optional().describe("Width lost by each cut. Default: 0, as with a blade."),
  "longest-cut": length.optional().describe("The longest cut the tool makes. Default: no limit."),
  "narrowest-hold": length
    .optional()
    .describe("The narrowest part the tool holds firmly. Default: 1 in (25 mm)."),
  "smallest-offcut": size
    .optional()
    .describe("The smallest leftover worth keeping. Default: 2 x 2 in (50 x 50 mm)."),
};

/** What a cutting tool of a shelf can do, and what is worth keeping. */
export const shelfTrimmer = z.strictObject(keys, says("shelfTrimmer"));

/** The trimmer of a project: one of the shelf, with keys of its own, or the keys alone. */
export const projectTrimmer = z.strictObject(
  {
    ...keys,
    shelf: text
      .optional()
      .describe("The name of a trimmer on the shelf; the other keys come before what it says."),
  },
  says("trimmer"),
);
