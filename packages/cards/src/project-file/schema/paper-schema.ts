import { z } from "zod";
import { says } from "../wording.js";
import { type Kinds, oneOfKinds } from "./kinds.js";
import { count, length, pattern, sheetSize, size, text } from "./scalars.js";

/** What a key of a paper or a design looks like. */
const PAPER_KEY = /^[A-Za-z][A-Za-z0-9_-]{0,39}$/;
const paperKey = z.string(says("papers")).regex(PAPER_KEY, says("papers"));

const sheetCount = z.union([count, z.literal("as needed")], says("sheetCount"));
const colour = z.union([z.string(), z.number()], says("colour"));
const cost = z.union([z.number(), z.string()], says("cost"));

const back = z.strictObject(
  {
    pattern: pattern.optional().describe("How the pattern of the back can be looked at. Default: none."),
    colour: colour
      .optional()
      .describe('Colour of the back in pictures, such as "#22304f". Default: one of its own.'),
    name: text.optional().describe("What the back is called. Default: the name of its front, then back."),
  },
  says("back"),
);

const offcutCount = z.strictObject(
  {
    size: size.describe("Width x height, with the pattern upright."),
    count: count.min(1, says("count")).optional().describe("How many there are. Default: 1."),
  },
  says("offcutCount"),
);
const offcut = z.union([size, offcutCount], says("offcut"));

/** What the sheets of a paper, or of one design of a pad, share. */
const sheets = {
  name: text.optional().describe("What it is called in pictures and lists. Default: its key."),
  count: sheetCount.optional().describe("Sheets on hand, or as needed. Default: as needed."),
  pattern: pattern
    .optional()
    .describe(
      "none: may be turned any way; two-way: also upside down; one-way: only as it stands. Default: none.",
    ),
  colour: colour
    .optional()
    .describe(
      'Colour in pictures, such as "#22304f". Default: the one that its name says, else a quiet one of its own.',
    ),
  cost: cost.optional().describe("Cost of one sheet, up to four decimals, such as 0.35. Default: not known."),
  back: back
    .optional()
    .describe("What is printed on the back. A piece is cut with the back up if it says night.back."),
  offcuts: z
    .array(offcut, says("offcuts"))
    .optional()
    .describe(
      "What is left from earlier, such as 4 x 8 1/2. Offcuts cost nothing, so they are used wherever that saves a sheet.",
    ),
};

const designKeys = z.strictObject(sheets, says("designKeys"));
const design = z.union([sheetCount, designKeys], says("design"));

const sides = z.strictObject(
  {
    left: length.optional().describe("Squared off the left side. Default: 0."),
    right: length.optional().describe("Squared off the right side. Default: 0."),
    top: length.optional().describe("Squared off the top. Default: 0."),
    bottom: length.optional().describe("Squared off the bottom. Default: 0."),
  },
  says("sides"),
);
const trim = z.union([length, sides], says("trim"));

const packSheets = count.min(1, says("packSheets"));
const packKeys = z.strictObject(
  {
    sheets: packSheets.describe("Sheets in one pack; of a pad, of each design."),
    cost: cost.optional().describe("Cost of one pack, up to four decimals. Default: not known."),
  },
  says("packKeys"),
);
const pack = z.union([packSheets, packKeys], says("pack"));

const ALL = [
  "name",
  "count",
  "grain",
  "weight",
  "thickness",
  "pattern",
  "colour",
  "cost",
  "pack",
  "trim",
  "back",
  "hand-out",
  "count-for",
];
const plain = (noun: string) => ({ noun, required: [], optional: [...ALL, "offcuts"] });

/** The kinds of paper. */
export const PAPER_KINDS = {
  cardstock: plain("cardstock"),
  paper: plain("a plain paper"),
  glitter: plain("a glitter paper"),
  pad: { noun: "a pad", required: ["designs"], optional: ALL },
  shelf: { noun: "a paper from the shelf", required: [], optional: ["designs", ...ALL, "offcuts"] },
} as const satisfies Kinds;

const kindOf = (what: string) =>
  sheetSize.optional().describe(`${what}: the size of its sheets, such as us-letter or 8 1/2 x 11.`);

/** A paper of the bundle. */
const paperSchema = z
  .strictObject(
    {
      cardstock: kindOf("Cardstock"),
      paper: kindOf("Plain or patterned paper"),
      glitter: kindOf("Glitter paper"),
      pad: kindOf("A pad of several designs"),
      shelf: text
        .optional()
        .describe("A paper from the shelf: its name there; other keys come before what the shelf says."),
      designs: z
        .record(paperKey, design, says("designs"))
        .optional()
        .describe("The designs of a pad: each with its number of sheets, or with keys of its own."),
      ...sheets,
      grain: z
        .enum(["long", "short", "width", "height", "none", "unknown"], says("grain"))
        .optional()
        .describe(
          "The side of the sheet that the grain runs along. Default: long (assumed) for cardstock of 8 1/2 x 11 or 11 x 17 in, else unknown.",
        ),
      weight: text.optional().describe("Weight as its label says it, such as 80 lb cover or 216 gsm."),
      thickness: length.optional().describe("Thickness of one sheet, such as 0.012 in."),
      pack: pack
        .optional()
        .describe(
          "How it is sold: sheets in one pack (of a pad, of each design), or { sheets: 25, cost: 8.99 }. Default: by the sheet.",
        ),
      "hand-out": z
        .enum(["whole", "cut"], says("handOut"))
        .optional()
        .describe(
          "With share: kits. whole: its sheets go into the bags, and each guest cuts; cut: its pieces are cut before. Default: whole.",
        ),
      "count-for": z
        .enum(["bag", "all"], says("countFor"))
        .optional()
        .describe(
          "With share: kits. What its count is of: one bag, or all together. Default: bag where it goes out whole, else all.",
        ),
      trim: trim.optional().describe("What is squared off each side before anything is cut. Default: 0."),
    },
    says("paper"),
  )
  .meta({
    id: "paper",
    description: "A paper: all sheets of one size and material.",
    ...oneOfKinds(PAPER_KINDS),
  });

/** The papers by their keys. */
export const papersSchema = z.record(paperKey, paperSchema, says("papers"));

/** Groups of keys by their wording. */
export const PAPER_GROUPS = { back, offcutCount, designKeys, sides, packKeys, paper: paperSchema };
