import { z } from "zod";
import { says } from "../wording.js";
import { text } from "./scalars.js";

const rates = z.strictObject(
  {
    currency: text.optional().describe("The sign or name of the currency, such as $. Default: none."),
    hour: z
      .union([z.number(), z.string()], says("hour"))
      .optional()
      .describe("What an hour of work costs, such as 18.50. Default: not reckoned."),
    "minutes-per-card": z
      .union([z.number(), z.string()], says("minutes"))
      .optional()
      .describe("Minutes of work for one copy of a card, such as 12. Default: not reckoned."),
    ribbons: z
      .record(z.string(), z.union([z.number(), z.string()], says("ribbonCost")), says("ribbons"))
      .optional()
      .describe(
        "What a yard (with units: mm a metre) of a ribbon or a tape costs, by its name, such as { copper ribbon: 1.20 }. Default: not reckoned.",
      ),
    consumables: z
      .record(z.string(), z.union([z.number(), z.string()], says("consumable")), says("consumables"))
      .optional()
      .describe(
        "What one copy of a card takes of adhesive, ink and such, in money, such as { adhesive: 0.10 }. Default: not reckoned.",
      ),
    "price-factor": z
      .union([z.number(), z.string()], says("priceFactor"))
      .optional()
      .describe("The wished price is the cost times this, such as 2.5. Default: no price is reckoned."),
  },
  says("rates"),
);

/** What work and what is used up cost. */
export const ratesSchema = rates;

/** Groups of keys by their wording. */
export const RATES_GROUPS = { rates };
