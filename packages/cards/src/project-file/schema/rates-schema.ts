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
  },
  says("rates"),
);

/** What work costs. */
export const ratesSchema = rates;

/** Groups of keys by their wording. */
export const RATES_GROUPS = { rates };
