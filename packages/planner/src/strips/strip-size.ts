import type { Piece } from "@sheetwright/cards";
import type { Size, Ticks } from "@sheetwright/measure";

/** A strip that holds several shapes of a piece side by side, upright as the piece. */
export interface StripSize extends Size {
  /** The side of the piece that the shapes lie side by side along. */
  readonly along: "width" | "height";
}

type DieBlank = Pick<Piece, "die" | "forms">;

/**
 * How large a strip for so many shapes of a piece is. Neighbours share one margin, so that k shapes d long with a margin m
 * take k d + (k + 1) m, rounded up to the precision so that the strip can be cut by marks. Across, the strip is as wide as
 * the die blank. `null` where the piece is no die blank, or has no margin that could be shared.
 */
export function stripSize(
  piece: DieBlank,
  holds: number,
  along: StripSize["along"],
  precision: Ticks,
): StripSize | null {
  const share = stripShare(piece, along);
  const { die, forms } = piece;
  const [blank] = forms;
  if (share === null || die === undefined || blank === undefined) return null;
  const exact = holds * share + (share - die.cut[along]);
  const length = Math.ceil(exact / precision) * precision;
  return { width: blank.width, height: blank.height, [along]: length, along };
}

/** What one shape and one margin take of a strip; `null` where the piece is no die blank, or has no margin to share. */
export function stripShare({ die, forms }: DieBlank, along: StripSize["along"]): Ticks | null {
  const [blank, ...others] = forms;
  if (die === undefined || blank === undefined || others.length > 0) return null;
  const margin = Math.floor((blank[along] - die.cut[along]) / 2);
  return margin < 1 ? null : die.cut[along] + margin;
}

/**
 * Where the shapes of a strip of some length lie: the top left corner of what the die cuts of each, from that of the strip,
 * upright as the piece. All margins are the same to the tick, so that what rounding adds to the strip is spread over them.
 */
export function stripPlaces(
  { die, forms: [blank] }: DieBlank,
  holds: number,
  along: StripSize["along"],
  length: Ticks,
): readonly { readonly x: Ticks; readonly y: Ticks }[] {
  if (die === undefined || blank === undefined) return [];
  const across = along === "width" ? "height" : "width";
  const beside = Math.floor((blank[across] - die.cut[across]) / 2);
  const margins = length - holds * die.cut[along];
  return Array.from({ length: holds }, (_, i) => {
    const at = i * die.cut[along] + Math.floor(((i + 1) * margins) / (holds + 1));
    return along === "width" ? { x: at, y: beside } : { x: beside, y: at };
  });
}
