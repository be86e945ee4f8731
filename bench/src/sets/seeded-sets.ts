/**
 * Sets of mixed pieces made from a seed: four families, sized by the sheet they are cut from, all sides whole sixteenths
 * of an inch. A set depends on the seed, the sheet's size, the family and its number only, so that it is the same in every
 * run whatever else is measured beside it.
 */
import { type Size, TICKS_PER_INCH } from "@sheetwright/measure";
import type { ListedPiece } from "../listed-piece.js";
import { CARD_FRONTS } from "./card-fronts.js";
import type { PieceSet } from "./piece-set.js";
import { type RandomWholeNumber, randomWholeNumbers } from "./random-whole-numbers.js";

const SIXTEENTH = TICKS_PER_INCH / 16;

/** The most copies of a kind: a workshop of twelve guests and a sample. */
const MOST_COPIES = 13;

/** Sides in sixteenths, before a kind is told whether it may turn. */
type Sides = readonly [width: number, height: number];

interface Family {
  readonly name: string;
  /** The sides of all kinds with their copies, for a sheet of that many sixteenths. */
  readonly kinds: (sheet: Sides, random: RandomWholeNumber) => readonly Drawn[];
}

interface Drawn {
  readonly sides: Sides;
  readonly copies: number;
}

/** A side between two shares of a length, given in 24ths; at least a quarter inch. */
function share(length: number, least: number, most: number, random: RandomWholeNumber): number {
  const at = (part: number): number => Math.max(4, Math.floor((length * part) / 24));
  return random(at(least), at(most));
}

function drawn(count: number, random: RandomWholeNumber, sides: () => Sides): readonly Drawn[] {
  return Array.from({ length: count }, () => ({ sides: sides(), copies: random(1, MOST_COPIES) }));
}

const manySmall: Family = {
  name: "many small",
  kinds: ([width, height], random) => {
    const short = Math.min(width, height);
    return drawn(random(12, 18), random, () => [share(short, 2, 7, random), share(short, 2, 7, random)]);
  },
};

const fewLarge: Family = {
  name: "few large",
  kinds: ([width, height], random) =>
    drawn(random(3, 6), random, () => [share(width, 8, 20, random), share(height, 8, 20, random)]),
};

const strips: Family = {
  name: "strips",
  kinds: ([width, height], random) => {
    const short = Math.min(width, height);
    return drawn(random(6, 10), random, () =>
      random(0, 1) === 0
        ? [share(short, 1, 3, random), share(height, 10, 24, random)]
        : [share(width, 10, 24, random), share(short, 1, 3, random)],
    );
  },
};

/** Two to four cards, each with one to three layers and a band across, all as often as the card. */
const cardLayers: Family = {
  name: "card layers",
  kinds: (sheet, random) => {
    const fronts = CARD_FRONTS.filter((front) => fits(front, sheet) || fits(turned(front), sheet));
    if (fronts.length === 0) return [];
    return Array.from({ length: random(2, 4) }).flatMap(() => {
      const [width, height] = fronts[random(0, fronts.length - 1)] as Sides;
      const copies = random(1, MOST_COPIES);
      const border = random(1, 3);
      const layers = Array.from({ length: random(1, 3) }, (_, depth): Sides => {
        const less = 2 * border * (depth + 1);
        return [width - less, height - less];
      });
      const band: Sides = [width - 2 * border, random(8, 24)];
      return [...layers, band].map((sides) => ({ sides, copies }));
    });
  },
};

const FAMILIES: readonly Family[] = [manySmall, fewLarge, strips, cardLayers];

function turned([width, height]: Sides): Sides {
  return [height, width];
}

function fits([width, height]: Sides, sheet: Sides): boolean {
  return width <= sheet[0] && height <= sheet[1];
}

/**
 * Makes `count` sets of each family for a sheet, 1 to 13 copies a kind. Every third kind or so may not turn; those fit as
 * they are, the others at least one way. On a sheet under 4 in, where no card front fits, there are no card layers. Throws
 * a RangeError for a sheet under half an inch.
 */
export function seededSets(sheet: Size, seed: number, count: number): readonly PieceSet[] {
  const sides: Sides = [Math.floor(sheet.width / SIXTEENTH), Math.floor(sheet.height / SIXTEENTH)];
  if (Math.min(...sides) < 8) throw new RangeError("Sets of pieces need a sheet of at least half an inch.");
  return FAMILIES.flatMap((family) =>
    Array.from({ length: count }, (_, index): PieceSet => {
      const random = randomWholeNumbers(`${seed} ${sides.join("x")} ${family.name} ${index + 1}`);
      const pieces = family.kinds(sides, random).map((kind, k) => pieceOf(kind, k, sides, random));
      return { family: family.name, id: `${family.name} ${index + 1}`, pieces };
    }).filter((set) => set.pieces.length > 0),
  );
}

function pieceOf(
  { sides, copies }: Drawn,
  index: number,
  sheet: Sides,
  random: RandomWholeNumber,
): ListedPiece {
  const turn = random(1, 3) > 1;
  const [width, height] = fits(sides, sheet) ? sides : turned(sides);
  return {
    name: `piece ${index + 1}`,
    width: width * SIXTEENTH,
    height: height * SIXTEENTH,
    quantity: copies,
    turn,
  };
}
