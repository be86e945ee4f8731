import { z } from "zod";
import { FORMAT_VERSION } from "../migrate.js";
import { says } from "../wording.js";
import { cardSchema, copiesSchema } from "./card-schema.js";
import { papersSchema } from "./paper-schema.js";
import { length, size, textOf } from "./scalars.js";
import { silencesSchema } from "./silence-schema.js";

/** The most cards of a project. */
const MOST_CARDS = 200;

const trimmer = z.strictObject(
  {
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
  },
  says("trimmer"),
);

/** A project file of the current version. Every key is listed and explained; a change of any makes a new version. */
export const projectFile = z
  .strictObject(
    {
      sheetwright: z.literal(FORMAT_VERSION, says("version")).describe("The version of this format."),
      title: textOf("title").describe("The name of the project, such as Lantern Night workshop."),
      units: z
        .enum(["in", "mm"], says("units"))
        .optional()
        .describe("The unit of lengths without one, and of what is printed. Default: in."),
      precision: length
        .optional()
        .describe("What divisions, such as bands and thirds, are rounded to. Default: 1/16 in (0.5 mm)."),
      copies: copiesSchema
        .optional()
        .describe(
          "Copies of every card that does not say otherwise: a number of guests, or guests, samples and spares. Default: 1.",
        ),
      trimmer: trimmer.optional().describe("What the cutting tool can do, and what is worth keeping."),
      papers: papersSchema.describe("The papers on hand, each under a short name of your own."),
      cards: z
        .array(cardSchema, says("cards"))
        .min(1, says("cards"))
        .max(MOST_CARDS, says("cards"))
        .describe("The kinds of card, in the order of their numbers."),
      silence: silencesSchema,
    },
    says("project"),
  )
  .meta({
    title: "Sheetwright project, version 1",
    description:
      "A bundle of papers and the cards made from it. Lengths are numbers in `units` or texts such as 1/8 or 3 mm.",
  });

/** Groups of keys by their wording. */
export const PROJECT_GROUPS = { trimmer, project: projectFile };

/** The data of a project file that are right in structure; lengths and names are still as they were written. */
export type ProjectFile = z.infer<typeof projectFile>;

/**
 * The JSON Schema (draft 2020-12) of project files, as plain data: the same that stands in
 * `schema/project.schema.json` of the package, for editors that check and complete.
 *
 * @example
 * projectSchema().title // => "Sheetwright project, version 1"
 * projectSchema().required // => ["sheetwright", "title", "papers", "cards"]
 */
export function projectSchema(): Readonly<Record<string, unknown>> {
  return { ...z.toJSONSchema(projectFile) };
}
