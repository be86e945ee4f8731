import type { CardRow } from "./size-rows.js";

const PRACTICE = "common practice, no source";

/**
 * Folded cards of the metric trade, with every flat that is in use. Their ids start with `card-iso-`, since
 * `iso-a6` is the sheet; among cards alone, `iso-a6` finds the card.
 */
export const METRIC_CARDS = [
  {
    id: "card-iso-a6",
    name: "ISO A6 card",
    short: 105,
    long: 148,
    unit: "mm",
    aliases: ["iso-a6"],
    source: PRACTICE,
    flats: [{ id: "iso-a6-side", short: 148, long: 210, divides: "long", score: 105, fold: "side" }],
    envelopes: ["env-iso-c6"],
  },
  {
    id: "card-a4-quarter",
    name: "quarter A4 card",
    short: 105,
    long: 148.5,
    unit: "mm",
    source: PRACTICE,
    flats: [
      { id: "a4-quarter-side", short: 148.5, long: 210, divides: "long", score: 105, fold: "side" },
      { id: "a4-quarter-top", short: 105, long: 297, divides: "long", score: 148.5, fold: "top" },
    ],
    envelopes: ["env-iso-c6"],
    notes: "A6 as it comes out of halved A4 sheets, half a millimetre longer than the standard says.",
  },
  {
    id: "card-iso-a5",
    name: "ISO A5 card",
    short: 148,
    long: 210,
    unit: "mm",
    aliases: ["iso-a5"],
    source: PRACTICE,
    flats: [{ id: "iso-a5-side", short: 210, long: 297, divides: "long", score: 148.5, fold: "side" }],
    envelopes: ["env-iso-c5"],
    notes: "Folded from a whole A4 sheet it is 148.5 mm wide, half a millimetre more than the standard says.",
  },
  {
    id: "card-iso-dl",
    name: "DL card",
    short: 99,
    long: 210,
    unit: "mm",
    aliases: ["iso-dl"],
    source: "DIN long (as described in an encyclopaedia); common practice, no source",
    flats: [{ id: "iso-dl-side", short: 198, long: 210, divides: "short", score: 99, fold: "side" }],
    envelopes: ["env-iso-dl"],
  },
  {
    id: "sq-135mm",
    name: "135 mm square card",
    short: 135,
    long: 135,
    unit: "mm",
    source: PRACTICE,
    flats: [{ id: "sq-135mm-side", short: 135, long: 270, divides: "long", score: 135, fold: "side" }],
    envelopes: [],
    notes: "Goes in a square envelope of 145 mm.",
  },
  {
    id: "sq-145mm",
    name: "145 mm square card",
    short: 145,
    long: 145,
    unit: "mm",
    source: PRACTICE,
    flats: [{ id: "sq-145mm-side", short: 145, long: 290, divides: "long", score: 145, fold: "side" }],
    envelopes: [],
    notes: "Goes in a square envelope of 155 mm.",
  },
] as const satisfies readonly CardRow[];
