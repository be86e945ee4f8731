import type { Size } from "./size.js";
import type { CardFlatRow, CardRow, EnvelopeRow, SheetRow } from "./sizes/size-rows.js";
import { inches, millimetres, type Ticks } from "./ticks.js";
import type { Unit } from "./unit.js";

/** What every named size has. Sizes stand upright: the width is the short side, the height the long one. */
interface Named extends Size {
  /** The id, unique among all named sizes: lower case, without spaces. Ids of envelopes start with `env-`. */
  readonly id: string;
  /** The name in words. */
  readonly name: string;
  /** The unit that its table is in, and that it is best printed in. */
  readonly unit: Unit;
  /** Other ids that find it. */
  readonly aliases: readonly string[];
  /** Where the size is from: a published standard or table, common practice, or memory. */
  readonly source: string;
  readonly notes?: string;
}

/** A sheet as it is bought. */
export interface SheetSize extends Named {
  readonly kind: "sheet";
}

/** A folded card, closed. */
export interface CardSize extends Named {
  readonly kind: "card";
  /** The flats it can be folded from, the most usual first. */
  readonly flats: readonly CardFlat[];
  /** The ids of the envelopes it usually goes in; empty where no named one fits. */
  readonly envelopes: readonly string[];
}

/** An envelope with its flap closed. */
export interface EnvelopeSize extends Named {
  readonly kind: "envelope";
  /** The cut of the envelope: announcement, baronial, commercial, square, letter ... */
  readonly style: string;
  /** The largest card usually put in it, upright like the envelope; absent where no source gives one. */
  readonly enclosure?: Size;
}

/** The sheet a card is folded from, cut to size and still flat. It stands upright like the named sizes. */
export interface CardFlat extends Size {
  readonly id: string;
  /** The side of the flat that the score divides; the score itself runs the other way. */
  readonly scoreAlong: "width" | "height";
  /** Where the score lies on that side, in ticks from either end: it is the middle. */
  readonly scoreAt: Ticks;
  /** With the card upright, `side` has the fold along its long edge, like a book, `top` along its short one. */
  readonly fold: "side" | "top";
  readonly source: string;
}

/** A sheet, card or envelope size that has a name; `kind` tells which. */
export type NamedSize = SheetSize | CardSize | EnvelopeSize;

/** The kinds of named sizes. */
export type SizeKind = NamedSize["kind"];

/**
 * Turns a row of the sheet tables into a named size in ticks.
 *
 * @internal
 */
export function sheetSize(row: SheetRow): SheetSize {
  return { kind: "sheet", ...measured(row) };
}

/**
 * Turns a row of the card tables into a named size in ticks.
 *
 * @internal
 */
export function cardSize(row: CardRow): CardSize {
  return {
    kind: "card",
    ...measured(row),
    flats: row.flats.map((flat) => cardFlat(flat, row)),
    envelopes: row.envelopes,
  };
}

/**
 * Turns a row of the envelope tables into a named size in ticks.
 *
 * @internal
 */
export function envelopeSize(row: EnvelopeRow): EnvelopeSize {
  const size = { kind: "envelope", ...measured(row), style: row.style } as const;
  if (row.enclosure === undefined) return size;
  const [short, long] = row.enclosure;
  return { ...size, enclosure: { width: toTicks(short, row.unit), height: toTicks(long, row.unit) } };
}

function measured(row: SheetRow): Named {
  const { id, name, unit, source, aliases = [] } = row;
  const size = { width: toTicks(row.short, unit), height: toTicks(row.long, unit) };
  const named = { id, name, ...size, unit, aliases, source };
  return row.notes === undefined ? named : { ...named, notes: row.notes };
}

function cardFlat(flat: CardFlatRow, { unit, source }: CardRow): CardFlat {
  return {
    id: flat.id,
    width: toTicks(flat.short, unit),
    height: toTicks(flat.long, unit),
    scoreAlong: flat.divides === "short" ? "width" : "height",
    scoreAt: toTicks(flat.score, unit),
    fold: flat.fold,
    source: flat.source ?? source,
  };
}

function toTicks(value: number, unit: Unit): Ticks {
  return unit === "in" ? inches(value) : millimetres(value);
}
