import type { ProjectFaultCode } from "../checks/fault-checks.js";
import { namedFolds } from "../fold/names.js";
import { DIE_WORDINGS } from "./die-wording.js";

/** How a fault of a kind of value is said. */
export interface Wording {
  readonly code: ProjectFaultCode;
  /** What should stand there, with an example. */
  readonly expected: string;
  /** For a group of keys: what it is, as in "not a key of a mat". */
  readonly noun?: string;
  /** The words that it takes beside other values, for suggestions. */
  readonly words?: readonly string[];
  /** What other words mean here, for suggestions. */
  readonly meant?: Readonly<Record<string, string>>;
}

const LENGTH = "a length, such as 1/8, 8 1/2 or 3 mm";

const FOLDS = ["either", ...namedFolds] as const;
const FOLDS_MEANT = {
  left: "side",
  book: "side",
  tent: "top",
  both: "either",
  any: "either",
  none: "flat",
  postcard: "flat",
  "z-fold": "z",
  "tri-fold": "tri",
  trifold: "tri",
  letter: "tri",
  concertina: "accordion",
} as const;

/**
 * What is said of each kind of value. The schema names these as the messages of its errors, so that no word of the schema
 * library reaches a maker.
 */
export const WORDINGS = {
  project: { code: "wrong-type", expected: "a project: title, papers and cards", noun: "a project" },
  version: { code: "version", expected: "sheetwright: 1" },
  text: { code: "wrong-type", expected: "a text" },
  title: { code: "wrong-type", expected: "a title, such as Lantern Night workshop" },
  cardName: { code: "wrong-type", expected: "the name of the card, such as Rooftops" },
  units: {
    code: "not-a-word",
    expected: "in or mm",
    meant: {
      inch: "in",
      inches: "in",
      imperial: "in",
      millimetre: "mm",
      millimetres: "mm",
      millimeter: "mm",
      millimeters: "mm",
      metric: "mm",
    },
  },
  length: { code: "not-a-length", expected: LENGTH },
  size: { code: "not-a-size", expected: "a size, width x height, such as 5 x 7" },
  namedSize: { code: "not-a-size", expected: "a sheet size, such as us-letter or 8 1/2 x 11" },
  copies: { code: "not-a-count", expected: "a number of copies, such as 12, or { guests: 12, samples: 1 }" },
  share: { code: "not-a-word", expected: "class or kits" },
  handOut: { code: "not-a-word", expected: "whole or cut" },
  countFor: { code: "not-a-word", expected: "bag or all" },
  copiesFor: { code: "wrong-type", expected: "{ guests: 12, samples: 1 }", noun: "copies" },
  count: { code: "not-a-count", expected: "a whole number, such as 12" },
  sheetCount: {
    code: "not-a-count",
    expected: "a whole number of sheets, such as 20, or as needed",
    words: ["as needed"],
  },
  trimmer: {
    code: "wrong-type",
    expected: "the keys of the trimmer, such as longest-cut: 12",
    noun: "the trimmer",
  },
  shelf: {
    code: "wrong-type",
    expected: "a shelf: sheetwright-shelf: 1, then papers, trimmers, dies or rates",
    noun: "a shelf",
  },
  shelfTrimmer: {
    code: "wrong-type",
    expected: "the keys of a trimmer, such as { longest-cut: 12 }",
    noun: "a trimmer",
  },
  shelfVersion: { code: "version", expected: "sheetwright-shelf: 1" },
  trimmers: {
    code: "wrong-type",
    expected: "trimmers by name, such as small trimmer: { longest-cut: 12 }",
    noun: "the trimmers",
  },
  shelfFile: { code: "wrong-type", expected: "the name of the shelf's file, such as my-shelf.yaml" },
  ...DIE_WORDINGS,
  rates: { code: "wrong-type", expected: "rates, such as { hour: 18.50 }", noun: "the rates" },
  hour: { code: "not-a-count", expected: "the cost of an hour of work, such as 18.50" },
  minutes: { code: "not-a-count", expected: "minutes of work for one copy, such as 12" },
  ribbons: { code: "wrong-type", expected: "ribbons by name, such as { copper ribbon: 1.20 }" },
  ribbonCost: { code: "not-a-count", expected: "the cost of a yard or a metre, such as 1.20" },
  consumables: { code: "wrong-type", expected: "what is used up by name, such as { adhesive: 0.10 }" },
  consumable: { code: "not-a-count", expected: "what one copy takes of it in money, such as 0.10" },
  priceFactor: { code: "not-a-count", expected: "the number that makes a price of a cost, such as 2.5" },
  extraCost: { code: "not-a-count", expected: "the cost of one, such as 0.15" },
  envelopeCost: { code: "not-a-count", expected: "the cost of one envelope, such as 0.20" },
  items: {
    code: "wrong-type",
    expected: "items by name, such as { copper ribbon: { length: 3 yd, count: 2 }, pearl: 40 }",
  },
  item: {
    code: "not-a-count",
    expected: "how many there are, as needed, or the keys of an item, such as { length: 3 yd, count: 2 }",
    words: ["as needed"],
  },
  itemKeys: { code: "wrong-type", expected: "{ length: 3 yd, count: 2 }", noun: "an item" },
  itemCount: {
    code: "not-a-count",
    expected: "a whole number, such as 12, or as needed",
    words: ["as needed"],
  },
  itemCost: { code: "not-a-count", expected: "what it costs, such as 2.40" },
  itemPack: {
    code: "not-a-count",
    expected: "how many are in a pack, such as 12, or { items: 12, cost: 1.10 }",
  },
  packItems: { code: "not-a-count", expected: "how many are in a pack, a whole number from 1 to 100000" },
  itemPackKeys: { code: "wrong-type", expected: "{ items: 12, cost: 1.10 }", noun: "a pack of an item" },
  cuts: { code: "not-a-word", expected: "edge-to-edge or strips" },
  papers: {
    code: "wrong-type",
    expected: "papers by name, such as cream: { cardstock: us-letter }",
    noun: "the papers",
  },
  paper: {
    code: "wrong-type",
    expected: "a paper, such as { cardstock: us-letter, count: 12 }",
    noun: "a paper",
  },
  grain: {
    code: "not-a-word",
    expected: "long, short, width, height, none or unknown",
    meant: { no: "none", "?": "unknown" },
  },
  weight: { code: "wrong-type", expected: "a weight with its unit, such as 80 lb cover or 216 gsm" },
  pattern: {
    code: "not-a-word",
    expected: "none, two-way or one-way",
    meant: { no: "none", directional: "one-way" },
  },
  colour: { code: "not-a-word", expected: 'a colour in quotes, such as "#22304f"' },
  cost: { code: "not-a-count", expected: "the cost of one sheet, such as 0.35" },
  pack: { code: "not-a-count", expected: "the sheets in a pack, such as 25, or { sheets: 25, cost: 8.99 }" },
  packSheets: { code: "not-a-count", expected: "the sheets in a pack, a whole number from 1 to 100000" },
  packKeys: { code: "wrong-type", expected: "{ sheets: 25, cost: 8.99 }", noun: "a pack" },
  trim: { code: "not-a-length", expected: "a length, such as 1/8, or sides, such as { left: 1/8 }" },
  sides: { code: "wrong-type", expected: "sides, such as { left: 1/8 }", noun: "a trim" },
  back: {
    code: "wrong-type",
    expected: "what is printed on the back, such as { pattern: two-way }",
    noun: "a printed back",
  },
  offcuts: { code: "wrong-type", expected: "a list of offcuts, such as [4 x 8 1/2]" },
  offcut: { code: "not-a-size", expected: "a size, such as 4 x 8 1/2, or { size: 2 x 11, count: 3 }" },
  offcutCount: { code: "wrong-type", expected: "{ size: 2 x 11, count: 3 }", noun: "an offcut" },
  designs: {
    code: "wrong-type",
    expected: "the designs of the pad, such as { dots: 6, comets: 6 }",
    noun: "the designs",
  },
  design: {
    code: "not-a-count",
    expected:
      "a whole number of sheets, as needed, or the keys of a design, such as { count: 6, pattern: one-way }",
    words: ["as needed"],
  },
  designKeys: { code: "wrong-type", expected: "{ count: 6, pattern: one-way }", noun: "a design of a pad" },
  cards: { code: "wrong-type", expected: "a list of cards, each after a hyphen" },
  card: { code: "wrong-type", expected: "a card: name, format and base", noun: "a card" },
  format: { code: "unknown-format", expected: "the name of a card size, such as us-a2 or us-a7" },
  stand: {
    code: "not-a-word",
    expected: "upright or lying",
    meant: { portrait: "upright", landscape: "lying", standing: "upright" },
  },
  fold: {
    code: "not-a-word",
    expected: "side, top, either, flat, gate or another kind of fold, or { kind: gate, gap: 1/8 }",
    words: FOLDS,
    meant: FOLDS_MEANT,
  },
  foldKind: {
    code: "not-a-word",
    expected: `a kind of fold: ${FOLDS.join(", ")} or own`,
    words: [...FOLDS, "own"],
    meant: FOLDS_MEANT,
  },
  foldKeys: { code: "wrong-type", expected: "{ kind: gate, gap: 1/8 }", noun: "a fold" },
  divides: {
    code: "not-a-word",
    expected: "width or height",
    meant: { across: "width", upright: "height", horizontal: "width", vertical: "height" },
  },
  panels: { code: "not-a-count", expected: "a whole number of panels, such as 4" },
  panelWidths: { code: "wrong-type", expected: "a list of lengths, such as [2, 4 1/4, 2]" },
  folds: {
    code: "not-a-word",
    expected: "a list with mountain or valley for each score, such as [mountain, valley]",
    meant: { away: "mountain", back: "mountain", towards: "valley", in: "valley" },
  },
  surfaceName: {
    code: "unknown-key",
    expected:
      "a surface of the card: inside-front, inside-flap, flap, left-door, right-door, upper-door, lower-door, page-1 and so on",
    noun: "what lies elsewhere",
    words: [
      "inside-front",
      "inside-flap",
      "flap",
      "left-door",
      "right-door",
      "upper-door",
      "lower-door",
      "page-1",
      "page-2",
      "page-3",
      "page-4",
    ],
    meant: { left: "left-door", right: "right-door", "top-door": "upper-door", "bottom-door": "lower-door" },
  },
  elsewhere: {
    code: "wrong-type",
    expected: "layers by surface, such as { left-door: [{ panel: cream, border: 1/8 }] }",
    noun: "what lies elsewhere",
  },
  base: { code: "unknown-paper", expected: "a paper, such as night, or { paper: night, grain: require }" },
  insertKeys: { code: "wrong-type", expected: "{ paper: cream, border: 1/8 }", noun: "an insert" },
  baseKeys: { code: "wrong-type", expected: "{ paper: night, grain: require }", noun: "a base" },
  foldGrain: {
    code: "not-a-word",
    expected: "prefer, require or ignore",
    meant: { required: "require", preferred: "prefer", yes: "require", no: "ignore", none: "ignore" },
  },
  choice: {
    code: "unknown-paper",
    expected: "a paper, such as night, stars.comets or any cardstock, or a list of those",
  },
  layers: { code: "wrong-type", expected: "a list of layers, each after a hyphen, such as - mat: copper" },
  layer: { code: "wrong-type", expected: "a layer, such as mat: copper", noun: "a layer" },
  ratios: { code: "wrong-type", expected: "a list of whole numbers, such as [1, 3]" },
  ratio: { code: "not-a-count", expected: "a whole number, such as 3 in [1, 3]" },
  bandShares: {
    code: "wrong-type",
    expected:
      "proportions, such as [1, 3], words such as two thirds and one third, or { widths: [1 1/2, rest] }",
    words: ["two thirds and one third", "one third and two thirds", "halves", "thirds", "quarters"],
    meant: {
      half: "halves",
      third: "thirds",
      fourths: "quarters",
      quarter: "quarters",
      "two thirds": "two thirds and one third",
      "one third": "one third and two thirds",
    },
  },
  bandWidths: {
    code: "wrong-type",
    expected: "{ widths: [1 1/2, rest, 3/4] }",
    noun: "bands by their widths",
  },
  bandPapers: {
    code: "wrong-type",
    expected: "a list with a paper for each band, such as [cream, stars.comets]",
  },
  bandPaper: {
    code: "unknown-paper",
    expected:
      "a paper, such as night, a list of those, or { bands: [1, 1], papers: [night, cream] } to divide this band",
  },
  innerBands: {
    code: "wrong-type",
    expected: "{ bands: [1, 1], papers: [night, cream] }",
    noun: "a band that is divided again",
  },
  border: {
    code: "not-a-length",
    expected: "a length, such as 1/8, or { sides: 1/8, bottom: 1/2 } or { total: 1/4 }",
  },
  borderSides: {
    code: "wrong-type",
    expected: "{ sides: 1/8, bottom: 1/2 } or { total: 1/4 }",
    noun: "a border",
  },
  seam: {
    code: "not-a-word",
    expected: "bare, or { cover: cream, width: 1/2 }",
    words: ["bare"],
  },
  seamKeys: { code: "wrong-type", expected: "{ cover: cream, width: 1/2 }", noun: "a seam" },
  joinKeys: {
    code: "wrong-type",
    expected: "{ parts: 2, cover: cream, width: 1/2 }, { ends: cream } or { hide: below the layer }",
    noun: "a join",
  },
  joinAt: {
    code: "not-a-word",
    expected: "both ends or one end",
    meant: { both: "both ends", one: "one end", end: "one end" },
  },
  joinParts: { code: "not-a-count", expected: "2 or 3 parts" },
  joinHide: {
    code: "not-a-word",
    expected: "below the layer",
    words: ["below the layer"],
    meant: { yes: "below the layer", true: "below the layer", below: "below the layer" },
  },
  bare: { code: "not-a-word", expected: "true, or nothing" },
  runs: {
    code: "not-a-word",
    expected: "across or upright",
    meant: { horizontal: "across", vertical: "upright", down: "upright" },
  },
  line: {
    code: "not-a-word",
    expected: "upper third, lower third, left third, right third, or a list of two",
    words: ["upper third", "lower third", "left third", "right third"],
  },
  lineWord: { code: "not-a-word", expected: "upper third, lower third, left third or right third" },
  mats: { code: "wrong-type", expected: "a list of mats, such as [{ mat: copper, border: 1/16 }]" },
  sentimentMat: {
    code: "wrong-type",
    expected: "{ mat: copper, border: 1/16 }",
    noun: "a mat of a sentiment",
  },
  layerGrain: {
    code: "not-a-word",
    expected: "upright, across, or { along: upright, need: require }",
    words: ["upright", "across"],
  },
  layerGrainKeys: { code: "wrong-type", expected: "{ along: upright, need: require }", noun: "a grain" },
  silences: {
    code: "wrong-type",
    expected: "a list of silences, such as [{ check: bare-seam, because: wanted so }]",
  },
  silence: { code: "wrong-type", expected: "{ check: bare-seam, because: wanted so }", noun: "a silence" },
  silencedCheck: { code: "not-a-word", expected: "the code of a warning or a note, such as bare-seam" },
  silencedAt: { code: "wrong-type", expected: "the name of a card, or a place such as cards[0].front[1]" },
  silenceReason: { code: "wrong-type", expected: "the reason, such as wanted so" },
  along: { code: "not-a-word", expected: "upright or across" },
  need: { code: "not-a-word", expected: "prefer or require" },
  extras: {
    code: "wrong-type",
    expected: "a list of extras, each after a hyphen, such as - { name: knot, thickness: 1/8 }",
  },
  extra: {
    code: "wrong-type",
    expected: "an extra, such as { name: button, count: 2, thickness: 1/8 }",
    noun: "an extra",
  },
  extraName: { code: "wrong-type", expected: "the name of the extra, such as knot" },
  extraSurface: {
    code: "not-a-word",
    expected: "a surface of the card: front, inside, back or another that its fold has",
    words: ["front", "inside", "back"],
  },
  mass: { code: "wrong-type", expected: "a weight with its unit, such as 1.2 g or 0.05 oz" },
  smallPart: { code: "not-a-word", expected: "true or false", meant: { yes: "true", no: "false" } },
  envelope: {
    code: "not-a-size",
    expected:
      "an envelope: a name such as us-a7, a size such as 5 1/4 x 7 1/4, or { size: 5 x 7, weight: 24 lb bond }",
  },
  envelopeKeys: {
    code: "wrong-type",
    expected: "{ name: us-a7, weight: 24 lb bond }",
    noun: "an envelope",
  },
} as const satisfies Readonly<Record<string, Wording>>;

/** The name of a wording. */
export type WordingName = keyof typeof WORDINGS;

/** Makes a wording the message of a part of the schema. */
export function says(name: WordingName): { readonly error: WordingName } {
  return { error: name };
}

/** The wording that a message of the schema names. */
export function wordingOf(message: string): Wording {
  return Object.hasOwn(WORDINGS, message) ? WORDINGS[message as WordingName] : WORDINGS.text;
}
