import { z } from "zod";
import { namedFolds, namedSurfaces } from "../../fold/names.js";
import { says } from "../wording.js";
import { envelopeSchema, extrasSchema } from "./finish-schema.js";
import { type Kinds, oneOfKinds } from "./kinds.js";
import { layersSchema } from "./layer-schema.js";
import { cardFormat, choice, count, length, MOST_COPIES, size, textOf } from "./scalars.js";

const copiesFor = z.strictObject(
  {
    guests: count.optional().describe("One copy for each guest. Default: 0."),
    samples: count.optional().describe("Copies to show. Default: 0."),
    spares: count
      .optional()
      .describe("Copies more, if the papers give them once all others are planned. Default: 0."),
  },
  says("copiesFor"),
);

/** How many copies of a card are made, in all or for whom. */
export const copiesSchema = z.union(
  [z.int(says("count")).min(1, says("count")).max(MOST_COPIES, says("count")), copiesFor],
  says("copies"),
);

const baseKeys = z.strictObject(
  {
    paper: choice.describe("The paper of the base, such as night."),
    grain: z
      .enum(["prefer", "require", "ignore"], says("foldGrain"))
      .optional()
      .describe("Whether the grain must run along the fold. Default: prefer."),
  },
  says("baseKeys"),
);
const baseSchema = z.union([choice, baseKeys], says("base"));

const insertKeys = z.strictObject(
  {
    paper: choice.describe("The paper of the insert, such as cream."),
    border: length
      .optional()
      .describe("What shows of the card round it, at all edges but the fold. Default: 1/8 in (3 mm)."),
    grain: z
      .enum(["prefer", "require", "ignore"], says("foldGrain"))
      .optional()
      .describe("Whether its grain must run along its fold. Default: prefer."),
  },
  says("insertKeys"),
);

const foldKind = z.enum(["either", ...namedFolds, "own"], says("foldKind"));
const namedFold = foldKind.exclude(["own"], says("fold"));
/** The most panels of an accordion, a roll or a fold of one's own. */
const MOST_PANELS = 40;
const foldKeys = z.strictObject(
  {
    kind: foldKind.describe("The kind of fold, such as gate; own: panel by panel."),
    divides: z
      .enum(["width", "height"], says("divides"))
      .optional()
      .describe("The side of the flat that the scores divide. Default: width."),
    gap: length.optional().describe("Gap in all between the doors of a gate. Default: 0."),
    shorten: length
      .optional()
      .describe(
        "How much shorter a panel is that folds inside others. Default: 1/16 in, on cover-weight paper 1/8 in.",
      ),
    panels: z
      .int(says("panels"))
      .min(1, says("panels"))
      .max(MOST_PANELS, says("panels"))
      .optional()
      .describe("Panels of an accordion or a roll. Default: 3 of an accordion, 4 of a roll."),
    widths: z
      .array(length, says("panelWidths"))
      .min(2, says("panelWidths"))
      .max(MOST_PANELS, says("panelWidths"))
      .optional()
      .describe("Panels of a fold of your own, from the left or the top with the outside up."),
    folds: z
      .array(z.enum(["mountain", "valley"], says("folds")), says("folds"))
      .max(MOST_PANELS, says("folds"))
      .optional()
      .describe("How each of its scores folds, seen with the outside up: mountain (away) or valley."),
  },
  says("foldKeys"),
);

/** Three surfaces have keys of their own. */
const elsewhere = z.enum(namedSurfaces).exclude(["front", "inside", "back"]);
const surfaceName = z.union([elsewhere, z.string().regex(/^page-[1-9][0-9]?$/)], says("surfaceName"));

const ALL = ["copies", "front", "front-paper", "insert", "inside", "back", "elsewhere", "extras", "envelope"];

/** The ways to say how large a card is. */
export const CARD_KINDS = {
  format: { noun: "a card with a format", required: ["name", "base"], optional: ["stand", "fold", ...ALL] },
  size: { noun: "a card with a size of its own", required: ["name", "base"], optional: ["fold", ...ALL] },
  flat: { noun: "a card with a flat of its own", required: ["name", "base", "fold"], optional: ALL },
} as const satisfies Kinds;

/** One kind of card. */
export const cardSchema = z
  .strictObject(
    {
      name: textOf("cardName").describe("The name of the card, such as Rooftops."),
      format: cardFormat.optional().describe("The name of a card size, such as us-a2. Either this or size."),
      size: size.optional().describe("Width x height of the closed card as it stands, such as 5 x 7."),
      stand: z
        .enum(["upright", "lying"], says("stand"))
        .optional()
        .describe("How a card with a format stands; lying is a quarter turn. Default: upright."),
      flat: size
        .optional()
        .describe("Width x height of the unfolded card, outside up; how large the front is, its fold says."),
      fold: z
        .union([namedFold, foldKeys], says("fold"))
        .optional()
        .describe(
          "How it is folded: side, top, either (leaves it to the plan), flat, gate, z, tri, accordion, easel and so on. Default: the usual fold of the format, or along the longer edge.",
        ),
      base: baseSchema.describe("The paper of the folded body of the card."),
      copies: copiesSchema.optional().describe("Copies of this card. Default: what the project says."),
      "front-paper": choice
        .optional()
        .describe("The paper of the panel that is the front of an easel. Default: that of the base."),
      insert: insertKeys
        .optional()
        .describe("A folded leaf inside a card with a side or a top fold; what lies inside lies on it."),
      front: layersSchema.optional().describe("What lies on the front, from the bottom to the top."),
      inside: layersSchema
        .optional()
        .describe("What lies inside, on the page that faces the reader, at the right or below."),
      back: layersSchema.optional().describe("What lies on the back."),
      elsewhere: z
        .record(surfaceName, layersSchema, says("elsewhere"))
        .optional()
        .describe("What lies on other surfaces that the fold has, such as { left-door: [...] }."),
      extras: extrasSchema
        .optional()
        .describe("What is not cut from paper: knots, buttons, gems, each with its thickness."),
      envelope: envelopeSchema
        .optional()
        .describe(
          "Its envelope: a name such as us-a7, a size, or keys. Default: the usual one, or the one that fits best.",
        ),
    },
    says("card"),
  )
  .meta({ id: "card", description: "One kind of card.", ...oneOfKinds(CARD_KINDS) });

/** Groups of keys by their wording. */
export const CARD_GROUPS = { copiesFor, baseKeys, foldKeys, insertKeys, card: cardSchema };
