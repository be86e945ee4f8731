import { z } from "zod";
import { namedSurfaces } from "../../fold/names.js";
import { says } from "../wording.js";
import { count, length, text, textOf } from "./scalars.js";

/** The most entries of a list of extras. */
const MOST_EXTRAS = 100;

const surface = z.union(
  [z.enum(namedSurfaces), z.string().regex(/^page-[1-9][0-9]?$/, says("extraSurface"))],
  says("extraSurface"),
);

const extra = z.strictObject(
  {
    name: textOf("extraName").describe("What it is, such as knot or button."),
    count: count.min(1, says("count")).optional().describe("How many of them one copy has. Default: 1."),
    thickness: length.describe("How far one stands up from what it lies on, such as 1/8."),
    mass: z
      .string(says("mass"))
      .optional()
      .describe("What one weighs, such as 1.2 g or 0.05 oz. Default: not counted, which is said."),
    cost: z
      .union([z.number(), z.string()], says("extraCost"))
      .optional()
      .describe("Cost of one, up to four decimals. Default: not known."),
    surface: surface.optional().describe("The surface it lies on. Default: front."),
    "small-part": z
      .boolean(says("smallPart"))
      .optional()
      .describe("true where a small child could swallow it, which is then warned of. Default: false."),
  },
  says("extra"),
);

/** What is on a card that is not cut from paper. */
export const extrasSchema = z.array(extra, says("extras")).max(MOST_EXTRAS, says("extras"));

const envelopeKeys = z.strictObject(
  {
    name: text
      .optional()
      .describe(
        "A named envelope, such as us-a7, iso-c6 or No. 10. Default: as if there were no envelope key.",
      ),
    size: z
      .string(says("size"))
      .optional()
      .describe("Width x height of an envelope without a name, instead."),
    weight: text
      .optional()
      .describe("Weight of its paper, such as 24 lb bond or 100 gsm. Default: 24 lb bond (90 g/m2)."),
    cost: z
      .union([z.number(), z.string()], says("envelopeCost"))
      .optional()
      .describe("Cost of one envelope, up to four decimals. Default: not known."),
  },
  says("envelopeKeys"),
);

/** The envelope of a card: a name or a size, or keys. */
export const envelopeSchema = z.union([z.string(), envelopeKeys], says("envelope"));

/** Groups of keys by their wording. */
export const FINISH_GROUPS = { extra, envelopeKeys };
