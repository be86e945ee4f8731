import { z } from "zod";

const PAPER_ID = /^[A-Za-z][A-Za-z0-9_-]{0,39}(\.[A-Za-z][A-Za-z0-9_-]{0,39})?$/;
const LAYOUT = /^sheet-([a-z][a-z0-9-]*-)?[1-9][0-9]*$/;
const MOST = 1_000_000;

const says = (expected: string) => ({ error: () => `expected ${expected}.` });
const number = says(`a whole number from 0 to ${MOST}, such as 12`);
const one = says(`a whole number from 1 to ${MOST}, such as 2`);
const count = z.int(number).min(0, number).max(MOST, number);
const some = z.int(one).min(1, one).max(MOST, one);
const size = z.string(says('width x height in quotes, such as "8 1/2 x 11 in"'));
const sha = z.string().regex(/^[0-9a-f]{64}$/, says("a SHA-256 in hexadecimal"));
const layouts = (value: z.ZodType<number>) =>
  z.record(
    z.string().regex(LAYOUT, says("the name of a layout, such as sheet-night-1")),
    value,
    says("layouts and numbers"),
  );

const paper = z
  .strictObject(
    {
      name: z.string(says("a name in quotes")).max(200).describe("What it is called in lists."),
      sheet: size.describe("Width x height of a whole sheet, with its pattern upright."),
      grain: z
        .enum(["width", "height", "none", "unknown"], says("width, height, none or unknown"))
        .describe("The side of the sheet that the grain runs along; offcuts lie as they did on the sheet."),
      sheets: z
        .union([count, z.literal("as needed")], says('a whole number from 0, or "as needed"'))
        .describe("Whole sheets on hand; as needed: they are not counted."),
      offcuts: z
        .record(size, some, says('offcuts and how many there are, such as { "4 x 8 1/2 in": 2 }'))
        .describe("How many there are of each size, width x height as it lay on the sheet."),
    },
    says("a paper with name, sheet, grain, sheets and offcuts, and no other key"),
  )
  .meta({ id: "stockPaper", description: "What is on hand of one design of a paper." });

const booking = z
  .strictObject(
    {
      plan: sha.describe("SHA-256 of its plan.json."),
      title: z.string(says("a title in quotes")).describe("The title of its project."),
      done: layouts(count).describe("Sheets cut by each layout so far."),
      spoiled: layouts(some).describe("Sheets spoiled over each so far."),
      continuedBy: sha.optional().describe("The plan that went on from this one; absent without one."),
    },
    says("a plan with plan, title, done and spoiled, and no other key"),
  )
  .meta({ id: "booking", description: "A plan that something was cut of." });

/** A stock file, version 1. The published JSON Schema is made from this. */
export const stockFile = z
  .strictObject(
    {
      sheetwright: z.literal("stock", says('"stock"')),
      version: z.literal(1, says("version 1; a later one needs a later Sheetwright")),
      revision: z.int(number).min(0, number).describe("Raised by every write."),
      seal: z
        .string(says("a text in quotes"))
        .describe(
          "SHA-256 of this file with the seal empty; it tells whether the file was edited by hand since.",
        ),
      units: z.enum(["in", "mm"], says("in or mm")).describe("The unit of sizes without one."),
      papers: z
        .record(z.string().regex(PAPER_ID, says("the key of a paper, such as night or stars.comets")), paper)
        .describe("Each design of each paper, by its key in projects."),
      booked: z.array(booking, says("a list of plans")).describe("Plans that were cut, the earliest first."),
    },
    says(
      "a stock file with sheetwright, version, revision, seal, units, papers and booked, and no other key",
    ),
  )
  .meta({
    title: "Sheetwright stock, version 1",
    description:
      "The whole sheets and offcuts that a maker has of each paper, and the plans that were cut from them.",
  });

/** What a stock file holds. */
export type StockFile = z.infer<typeof stockFile>;

/** The JSON Schema (draft 2020-12) of stock files, made from {@link stockFile}. */
export function stockFileJsonSchema(): unknown {
  return z.toJSONSchema(stockFile);
}
