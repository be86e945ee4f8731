import { z } from "zod";
import { says } from "../wording.js";
import { choice, length, run, text } from "./scalars.js";

/** The most bands side by side, and the largest number among their ratios. */
const MOST_BANDS = 100;
const LARGEST_RATIO = 1000;

/** The trade's words for usual proportions. */
export const BAND_WORDS = {
  "one third and two thirds": [1, 2],
  "two thirds and one third": [2, 1],
  halves: [1, 1],
  thirds: [1, 1, 1],
  quarters: [1, 1, 1, 1],
} as const;

const bandWord = z.enum(
  ["one third and two thirds", "two thirds and one third", "halves", "thirds", "quarters"],
  says("bandShares"),
);
const ratios = z
  .array(z.int(says("ratio")).min(1, says("ratio")).max(LARGEST_RATIO, says("ratio")), says("ratios"))
  .min(2, says("ratios"))
  .max(MOST_BANDS, says("ratios"));
const bandWidths = z.strictObject(
  {
    widths: z
      .array(length, says("bandWidths"))
      .min(2, says("bandWidths"))
      .max(MOST_BANDS, says("bandWidths"))
      .describe("The width of each band, or rest for one: what the others leave."),
  },
  says("bandWidths"),
);
/** How wide bands are. */
export const bandShares = z.union([ratios, bandWord, bandWidths], says("bandShares"));

/** The keys of a seam, which a join has as well. */
export const SEAM_KEYS = {
  cover: choice.optional().describe("The paper of the strips that cover the seams."),
  ribbon: text.optional().describe("A ribbon that covers them instead, in your words."),
  tape: text.optional().describe("A tape that covers them instead, in your words."),
  bare: z.literal(true, says("bare")).optional().describe("true: the seams are to be seen."),
  width: length.optional().describe("Width of what covers a seam; it lies centred on it."),
  gap: length.optional().describe("How far the parts stand apart; each loses half of it. Default: 0."),
  colour: z
    .union([z.string(), z.number()], says("colour"))
    .optional()
    .describe(
      "Colour of a ribbon or a tape in pictures. Default: the one that its name says, else a quiet one of its own.",
    ),
};
const seamKeys = z.strictObject(SEAM_KEYS, says("seamKeys"));
/** What is done about the seams between bands. */
export const seam = z.union([z.literal("bare"), seamKeys], says("seam"));

const innerBands = z.strictObject(
  {
    bands: bandShares.describe("How this band is divided, as of a layer of bands."),
    get papers(): z.ZodArray<typeof bandPaper> {
      return bandPapers.describe("The papers of the bands in it, from the top or from the left.");
    },
    runs: run.optional().describe("How they run in it. Default: crosswise to the bands it is among."),
    seam: seam.optional().describe("What covers the seams between them, or bare. Default: nothing."),
  },
  says("innerBands"),
);
const bandPaper: z.ZodUnion<readonly [typeof choice, typeof innerBands]> = z.union(
  [choice, innerBands],
  says("bandPaper"),
);
/** A paper for each band, or bands that divide it. */
export const bandPapers = z.array(bandPaper, says("bandPapers"));

/** Groups of keys by their wording. */
export const BAND_GROUPS = { bandWidths, seamKeys, innerBands };
