import {
  type CardSize,
  cardSize,
  type EnvelopeSize,
  envelopeSize,
  type NamedSize,
  type SheetSize,
  type SizeKind,
  sheetSize,
} from "./named-size.js";
import { ASME_Y14_1_SHEETS } from "./sizes/asme-y14-1-sheets.js";
import { DIN_LONG_SHEETS } from "./sizes/din-long-sheets.js";
import { ISO_216_SHEETS } from "./sizes/iso-216-sheets.js";
import { ISO_217_UNTRIMMED_SHEETS } from "./sizes/iso-217-untrimmed-sheets.js";
import { ISO_269_ENVELOPES } from "./sizes/iso-269-envelopes.js";
import { ISO_269_SHEETS } from "./sizes/iso-269-sheets.js";
import { METRIC_CARDS } from "./sizes/metric-cards.js";
import { STATIONERY_SHEETS } from "./sizes/stationery-sheets.js";
import { US_CARDS } from "./sizes/us-cards.js";
import { US_ENVELOPES } from "./sizes/us-envelopes.js";

const SHEET_ROWS = [
  ...STATIONERY_SHEETS,
  ...ASME_Y14_1_SHEETS,
  ...ISO_216_SHEETS,
  ...ISO_269_SHEETS,
  ...ISO_217_UNTRIMMED_SHEETS,
  ...DIN_LONG_SHEETS,
] as const;
const CARD_ROWS = [...US_CARDS, ...METRIC_CARDS] as const;
const ENVELOPE_ROWS = [...US_ENVELOPES, ...ISO_269_ENVELOPES] as const;

/** The id of a named sheet, such as `us-letter`. */
export type SheetSizeId = (typeof SHEET_ROWS)[number]["id"];
/** The id of a named card, such as `us-a2`. */
export type CardSizeId = (typeof CARD_ROWS)[number]["id"];
/** The id of a named envelope, such as `env-us-a2`. */
export type EnvelopeSizeId = (typeof ENVELOPE_ROWS)[number]["id"];
/** The id of a named size of any kind. */
export type NamedSizeId = SheetSizeId | CardSizeId | EnvelopeSizeId;

/** The named sheets, by table: stationery and craft, ASME, ISO A, B and C, untrimmed, DIN long. */
export const sheetSizes: readonly SheetSize[] = SHEET_ROWS.map(sheetSize);

/** The named cards, US first. */
export const cardSizes: readonly CardSize[] = CARD_ROWS.map(cardSize);

/** The named envelopes, US first. */
export const envelopeSizes: readonly EnvelopeSize[] = ENVELOPE_ROWS.map(envelopeSize);

/** All named sizes: sheets, cards, envelopes. */
export const namedSizes: readonly NamedSize[] = [...sheetSizes, ...cardSizes, ...envelopeSizes];

/**
 * Finds a named size by its id or an alias; case, and spaces or underscores for hyphens, do not matter. An id
 * goes before an alias. With a kind given, only sizes of that kind are looked at: `iso-a6` is the sheet, and
 * among cards the card. US A2 the card (`us-a2`), US A2 the envelope (`env-us-a2`) and ISO A2 the sheet
 * (`iso-a2`) never stand for each other. Gives undefined where there is none.
 *
 * @example
 * findNamedSize("us-letter").width === inches(8.5) // => true
 * findNamedSize("US Ledger").id // => "us-tabloid"
 * findNamedSize("iso-a6").kind // => "sheet"
 * findNamedSize("iso-a6", "card").id // => "card-iso-a6"
 * findNamedSize("a2") // => undefined
 */
export function findNamedSize(id: SheetSizeId): SheetSize;
export function findNamedSize(id: CardSizeId): CardSize;
export function findNamedSize(id: EnvelopeSizeId): EnvelopeSize;
export function findNamedSize(id: string, kind: "sheet"): SheetSize | undefined;
export function findNamedSize(id: string, kind: "card"): CardSize | undefined;
export function findNamedSize(id: string, kind: "envelope"): EnvelopeSize | undefined;
export function findNamedSize(id: string, kind?: SizeKind): NamedSize | undefined;
export function findNamedSize(id: string, kind?: SizeKind): NamedSize | undefined {
  const key = sizeKey(id);
  const sizes = kind === undefined ? namedSizes : namedSizes.filter((size) => size.kind === kind);
  return sizes.find((size) => size.id === key) ?? sizes.find((size) => size.aliases.includes(key));
}

/**
 * Brings a text into the form of an id: lower case, single hyphens for white space and underscores.
 *
 * @internal
 */
export function sizeKey(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "-");
}
