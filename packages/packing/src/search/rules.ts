import type { RandomStream } from "./random-stream.js";

/** How one start of the search sorts pieces, chooses places and cuts. */
export interface Rules {
  readonly order: PieceOrder;
  readonly fit: PlaceFit;
  readonly split: CutChoice;
  readonly sheet: SheetChoice;
  /** Share by which sort keys are disturbed, 0 for none. */
  readonly noise: number;
  /** One choice in this many is made against the rules; 0 for never. */
  readonly whim: number;
  /** Sheets are filled one after the other instead of all at once. */
  readonly oneByOne: boolean;
}

/** Sort key of a piece: pieces with larger keys are placed first. */
type PieceOrder = (width: number, height: number) => number;

/** Badness of a place by what it leaves over: the smaller the better. */
type PlaceFit = (acrossRest: number, downRest: number, width: number, height: number) => number;

/** True where the first cut should go across, by the rests and the free rectangle. */
type CutChoice = (acrossRest: number, downRest: number, freeWidth: number, freeHeight: number) => boolean;

/** Price of opening a sheet; the cheapest is opened. */
type SheetChoice = (cost: number, area: number) => number;

const shorterSide: PieceOrder = (w, h) => Math.min(w, h) * 65536 + Math.max(w, h) / 256;
const longerSide: PieceOrder = (w, h) => Math.max(w, h) * 65536 + Math.min(w, h) / 256;
const area: PieceOrder = (w, h) => w * h;
const perimeter: PieceOrder = (w, h) => w + h;
const byWidth: PieceOrder = (w, h) => w * 65536 + h / 256;
const byHeight: PieceOrder = (w, h) => h * 65536 + w / 256;

/** Orders by which pieces are placed; the first is the usual best (Jylanki 2010). */
const PIECE_ORDERS: readonly PieceOrder[] = [shorterSide, area, longerSide, byHeight, byWidth, perimeter];

const bestShortSide: PlaceFit = (dx, dy) => Math.min(dx, dy) * 65536 + Math.max(dx, dy) / 256;
const bestLongSide: PlaceFit = (dx, dy) => Math.max(dx, dy) * 65536 + Math.min(dx, dy) / 256;
const bestArea: PlaceFit = (dx, dy, w, h) => (w + dx) * (h + dy) - w * h;

const PLACE_FITS: readonly PlaceFit[] = [bestShortSide, bestArea, bestLongSide];

const shorterRestFirst: CutChoice = (dx, dy) => dx > dy;
const longerRestFirst: CutChoice = (dx, dy) => dx <= dy;
const shorterAxisFirst: CutChoice = (_dx, _dy, w, h) => w >= h;
const longerAxisFirst: CutChoice = (_dx, _dy, w, h) => w < h;
const largestRest: CutChoice = (dx, dy, w, h) => dx * h >= dy * w;
const evenRests: CutChoice = (dx, dy, w, h) => dx * h < dy * w;
const acrossFirst: CutChoice = () => true;
const downFirst: CutChoice = () => false;

const CUT_CHOICES: readonly CutChoice[] = [
  largestRest,
  shorterRestFirst,
  acrossFirst,
  downFirst,
  shorterAxisFirst,
  longerRestFirst,
  evenRests,
  longerAxisFirst,
];

const cheapestPerArea: SheetChoice = (cost, size) => cost / size;
const cheapest: SheetChoice = (cost) => cost;
const largest: SheetChoice = (_cost, size) => -size;

const SHEET_CHOICES: readonly SheetChoice[] = [cheapestPerArea, cheapest, largest];

const NOISE: readonly number[] = [0.2, 0.5, 1.2];
const WHIMS: readonly number[] = [40, 12, 5, 3];

/** Plain starts: every combination of the usual rules once. */
export const PLAIN_STARTS = 24;

/**
 * The rules of one start: the first {@link PLAIN_STARTS} are plain, all others noisy. Noise matters: without it best fit
 * misses 14 pieces of 2 1/2 x 3 1/2 on a sheet of 12 x 12 in.
 */
export function rulesOf(start: number, random: RandomStream): Rules {
  const pick = <T>(list: readonly T[], at: number): T => list[at % list.length] as T;
  if (start < PLAIN_STARTS) {
    return {
      order: pick(PIECE_ORDERS, Math.floor(start / 4)),
      fit: pick(PLACE_FITS, Math.floor(start / 8)),
      split: pick(CUT_CHOICES, start),
      sheet: pick(SHEET_CHOICES, start % 3),
      noise: 0,
      whim: 0,
      oneByOne: start % 5 === 4,
    };
  }
  return {
    order: pick(PIECE_ORDERS, random.below(PIECE_ORDERS.length)),
    fit: pick(PLACE_FITS, random.below(PLACE_FITS.length)),
    split: pick(CUT_CHOICES, random.below(CUT_CHOICES.length)),
    sheet: pick(SHEET_CHOICES, random.below(SHEET_CHOICES.length)),
    noise: 0.05 + pick(NOISE, random.below(NOISE.length)) * random.unit(),
    whim: pick(WHIMS, random.below(WHIMS.length)),
    oneByOne: random.below(4) === 0,
  };
}
