import { z } from "zod";
import { says } from "../wording.js";
import { count, length } from "./scalars.js";

const cost = z.union([z.number(), z.string()], says("itemCost"));
const itemCount = z.union([count, z.literal("as needed")], says("itemCount"));

const packItems = count.min(1, says("packItems"));
const itemPackKeys = z.strictObject(
  {
    items: packItems.describe("How many are in it, of a ribbon rolls."),
    cost: cost.optional().describe("Cost of one pack, up to four decimals. Default: not known."),
  },
  says("itemPackKeys"),
);

const itemKeys = z
  .strictObject(
    {
      length: length
        .optional()
        .describe(
          "How long one roll of a ribbon or a tape is, which needs it: 3 yd or 2.5 m. Default: it is counted singly.",
        ),
      count: itemCount
        .optional()
        .describe("How many are on hand, of a ribbon rolls, or as needed. Default: as needed."),
      cost: cost
        .optional()
        .describe(
          "Cost of one, of a ribbon of one roll, up to four decimals. Default: of an extra as a card says, else not known.",
        ),
      pack: z
        .union([packItems, itemPackKeys], says("itemPack"))
        .optional()
        .describe("How it is sold: how many in one pack, or { items: 12, cost: 1.10 }. Default: singly."),
      "hand-out": z
        .enum(["whole", "cut"], says("handOut"))
        .optional()
        .describe(
          "Of a ribbon, with share: kits. whole: its rolls go into the bags, and each guest cuts; cut: its lengths are cut before. Default: whole.",
        ),
      "count-for": z
        .enum(["bag", "all"], says("countFor"))
        .optional()
        .describe(
          "With share: kits. What its count is of: one bag, or all together. Default: all where it is cut before, else bag.",
        ),
    },
    says("itemKeys"),
  )
  .meta({ id: "item", description: "A ribbon, a tape, or what is counted singly." });

/** The items of the bundle by the names that cards use. */
export const itemsSchema = z.record(z.string(), z.union([itemCount, itemKeys], says("item")), says("items"));

/** Groups of keys by their wording. */
export const ITEM_GROUPS = { itemPackKeys, itemKeys };
