import { z } from "zod";
import { says } from "../wording.js";
import { type Kinds, oneOfKinds } from "./kinds.js";
import { layersSchema } from "./layer-schema.js";
import { cardFormat, choice, count, MOST_COPIES, size, textOf } from "./scalars.js";

const copiesFor = z.strictObject(
  {
    guests: count.optional().describe("One copy for each guest. Default: 0."),
    samples: count.optional().describe("Copies to show. Default: 0."),
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

const ALL = ["copies", "fold", "front"];

/** The two ways to say how large a card is. */
export const CARD_KINDS = {
  format: { noun: "a card with a format", required: ["name", "base"], optional: ["stand", ...ALL] },
  size: { noun: "a card with a size of its own", required: ["name", "base"], optional: ALL },
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
      fold: z
        .enum(["side", "top", "either"], says("fold"))
        .optional()
        .describe(
          "Where the fold is; either leaves it to the plan. Default: the usual fold of the format, or along the longer edge.",
        ),
      base: baseSchema.describe("The paper of the folded body of the card."),
      copies: copiesSchema.optional().describe("Copies of this card. Default: what the project says."),
      front: layersSchema.optional().describe("What lies on the front, from the bottom to the top."),
    },
    says("card"),
  )
  .meta({ id: "card", description: "One kind of card.", ...oneOfKinds(CARD_KINDS) });

/** Groups of keys by their wording. */
export const CARD_GROUPS = { copiesFor, baseKeys, card: cardSchema };
