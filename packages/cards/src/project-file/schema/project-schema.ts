import { z } from "zod";
import { FORMAT_VERSION } from "../migrate.js";
import { says } from "../wording.js";
import { cardSchema, copiesSchema } from "./card-schema.js";
import { DIE_GROUPS, dieMachineSchema, diesSchema } from "./die-schema.js";
import { ITEM_GROUPS, itemsSchema } from "./item-schema.js";
import { papersSchema } from "./paper-schema.js";
import { RATES_GROUPS, ratesSchema } from "./rates-schema.js";
import { length, textOf } from "./scalars.js";
import { silencesSchema } from "./silence-schema.js";
import { projectTrimmer } from "./trimmer-schema.js";

/** The most cards of a project. */
const MOST_CARDS = 200;

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
      share: z
        .enum(["class", "kits"], says("share"))
        .optional()
        .describe(
          "class: one pile for all guests; kits: a bag for each guest and sample, and all hold the same. Default: class.",
        ),
      shelf: textOf("shelfFile")
        .optional()
        .describe("The file of your own things, such as my-shelf.yaml; its place is told from this file."),
      trimmer: projectTrimmer
        .optional()
        .describe(
          "What the cutting tool can do, and what is worth keeping; or the name of one on the shelf.",
        ),
      "die-machine": dieMachineSchema
        .optional()
        .describe("What presses dies through paper. Default: as on the shelf, else a small one."),
      papers: papersSchema.describe("The papers on hand, each under a short name of your own."),
      items: itemsSchema
        .optional()
        .describe(
          "Ribbons, tapes and extras on hand, by the names that cards use: how many, or keys. Default: as needed, and not reckoned.",
        ),
      dies: diesSchema.optional().describe("Dies, each under a name of your own, beside those on the shelf."),
      rates: ratesSchema.optional().describe("What work costs. Default: as on the shelf, else not reckoned."),
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
export const PROJECT_GROUPS = {
  trimmer: projectTrimmer,
  ...DIE_GROUPS,
  ...RATES_GROUPS,
  ...ITEM_GROUPS,
  project: projectFile,
};

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
  return withShelfWords({ ...z.toJSONSchema(projectFile) });
}

interface JsonObject {
  readonly [key: string]: unknown;
}

/**
 * What a project takes from its shelf is filled in before the data are checked, so the schema of the reader knows nothing
 * of the short ways to name it: `night: shelf`, and the name of a trimmer.
 */
function withShelfWords(schema: JsonObject): JsonObject {
  const properties = schema.properties as Readonly<Record<string, JsonObject>>;
  const { papers, trimmer } = properties;
  if (papers === undefined || trimmer === undefined)
    throw new RangeError("papers, trimmer: not in the schema.");
  const { description, ...keys } = trimmer;
  return {
    ...schema,
    properties: {
      ...properties,
      papers: {
        ...papers,
        additionalProperties: { anyOf: [{ const: "shelf" }, papers.additionalProperties] },
      },
      trimmer: { description, anyOf: [{ type: "string" }, keys] },
    },
  };
}
