import type { Ticks } from "@sheetwright/measure";
import type { CardSurface, Flat, FoldDirection, SurfaceName } from "@sheetwright/planner";

/** A front in ticks, width before height. */
type Front = readonly [width: Ticks, height: Ticks];

/** The panels of a flat along the side that its scores divide, outside up, the front last; and how each score folds. */
export interface FoldNote {
  readonly fold: Flat["fold"];
  readonly along: "width" | "height";
  readonly panels: readonly Ticks[];
  readonly folds: readonly FoldDirection[];
  /** How far the slits are from their edges. */
  readonly slits?: readonly Ticks[];
}

/** Folds of a front by rule of thumb: what a drawing is made of, not how wide a trade makes its panels. */
export function foldNote(
  fold: Flat["fold"],
  [width, height]: Front,
  lying = false,
  accordionPanels = 4,
): FoldNote {
  const along = fold === "top" || fold === "easel" || (lying && fold !== "side") ? "height" : "width";
  const [side, across] = along === "width" ? [width, height] : [height, width];
  const half = Math.floor(side / 2);
  const short = side - Math.floor(side / 16);
  const note = (panels: readonly Ticks[], folds: readonly FoldDirection[]): FoldNote => ({
    fold,
    along,
    panels,
    folds,
  });
  switch (fold) {
    case "flat":
      return note([side], []);
    case "side":
    case "top":
      return note([side, side], ["mountain"]);
    case "gate":
      return note([side - half, side, half], ["mountain", "mountain"]);
    case "double-gate":
      return note(
        [Math.round((5 * side) / 17), side, Math.round((15 * side) / 17), Math.round((7 * side) / 17)],
        ["mountain", "mountain", "mountain"],
      );
    case "z":
    case "easel":
      return note([side, side - half, half], ["mountain", "valley"]);
    case "tri":
      return note([short, side, side], ["mountain", "mountain"]);
    case "roll":
      return note([short - 800, short, side, side], ["mountain", "mountain", "mountain"]);
    case "double-parallel":
      return note([short, short, side, side], ["valley", "mountain", "mountain"]);
    case "accordion":
      return note(
        Array.from({ length: accordionPanels }, () => side),
        Array.from({ length: accordionPanels - 1 }, (_, i) =>
          (accordionPanels - i) % 2 === 0 ? "mountain" : "valley",
        ),
      );
    case "shutter": {
      const off = Math.floor((3 * across) / 11);
      return {
        ...note([half, side - half, side, side - half, half], ["both", "both", "both", "both"]),
        slits: [off, across - off],
      };
    }
    case "own":
      return note([half, short, side], ["valley", "mountain"]);
  }
}

/** The flat of a front with such panels. */
export function flatOf([width, height]: Front, { fold, along, panels, folds, slits = [] }: FoldNote): Flat {
  const ends = panels.map((_, index) => panels.slice(0, index + 1).reduce((sum, panel) => sum + panel, 0));
  const whole = ends.at(-1) ?? 0;
  return {
    fold,
    width: along === "width" ? whole : width,
    height: along === "width" ? height : whole,
    along,
    panels,
    scores: folds.map((each, index) => ({ along, at: ends[index] ?? 0, folds: each })),
    slits: slits.map((at) => ({ along, at, from: ends[0] ?? 0, to: ends.at(-2) ?? 0 })),
  };
}

/** The surfaces of a card, the front first. */
export function surfacesOf(
  [width, height]: Front,
  { fold, along, panels }: FoldNote,
): readonly CardSurface[] {
  const front = { width, height };
  const of = (name: SurfaceName, index: number): CardSurface => ({
    name,
    ...front,
    [along]: panels.at(index) ?? front[along],
  });
  const doors =
    along === "width" ? (["left-door", "right-door"] as const) : (["upper-door", "lower-door"] as const);
  const whole = { name: "front" as const, ...front };
  const back = { ...whole, name: "back" as const };
  switch (fold) {
    case "flat":
      return [whole, back];
    case "side":
    case "top":
      return [whole, { ...whole, name: "inside" }, { ...whole, name: "inside-front" }, back];
    case "gate":
      return [whole, of("inside", 1), back, of(doors[0], -1), of(doors[1], 0)];
    case "z":
      return [whole, of("inside", 0), back, of("flap", -1)];
    case "easel":
      return [whole, of("inside", 0), back];
    case "tri":
      return [whole, of("inside", 1), of("inside-front", 2), of("inside-flap", 0), of("flap", 0), back];
    default:
      return [whole, back, ...panels.map((_, index) => of(`page-${index + 1}`, panels.length - 1 - index))];
  }
}
