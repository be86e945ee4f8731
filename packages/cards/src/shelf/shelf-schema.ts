import { z } from "zod";
import { dieMachineSchema, diesSchema } from "../project-file/schema/die-schema.js";
import { papersSchema } from "../project-file/schema/paper-schema.js";
import { ratesSchema } from "../project-file/schema/rates-schema.js";
import { shelfTrimmer } from "../project-file/schema/trimmer-schema.js";
import { says } from "../project-file/wording.js";

/** The version of shelf files that is read. */
const SHELF_VERSION = 1;

/** A shelf file: what a maker has, for any project to refer to. */
export const shelfFile = z
  .strictObject(
    {
      "sheetwright-shelf": z
        .literal(SHELF_VERSION, says("shelfVersion"))
        .describe("The version of this format."),
      units: z
        .enum(["in", "mm"], says("units"))
        .optional()
        .describe("The unit of lengths without one. Default: in."),
      papers: papersSchema
        .optional()
        .describe("Papers, each under a short name of your own, with their offcuts."),
      trimmers: z
        .record(z.string(), shelfTrimmer, says("trimmers"))
        .optional()
        .describe("Cutting tools, each under a name of your own."),
      "die-machine": dieMachineSchema
        .optional()
        .describe("What presses dies through paper. Default: a small one."),
      dies: diesSchema.optional().describe("Dies, each under a name of your own."),
      rates: ratesSchema.optional().describe("What work costs."),
    },
    says("shelf"),
  )
  .meta({
    title: "Sheetwright shelf, version 1",
    description:
      "The papers, tools, dies and rates of a maker, for any project to refer to. Lengths are numbers in `units` or texts such as 1/8 or 3 mm.",
  });

/** Groups of keys by their wording. */
export const SHELF_GROUPS = { shelfTrimmer, shelf: shelfFile };

/**
 * The JSON Schema (draft 2020-12) of shelf files, as plain data: the same that stands in `schema/shelf.schema.json` of the
 * package, for editors that check and complete.
 *
 * @example
 * shelfSchema().title // => "Sheetwright shelf, version 1"
 * shelfSchema().required // => ["sheetwright-shelf"]
 */
export function shelfSchema(): Readonly<Record<string, unknown>> {
  return { ...z.toJSONSchema(shelfFile) };
}
