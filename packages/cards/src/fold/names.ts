/**
 * The kinds of fold that have a name, in the order of the pages; what each is, `FoldKind` says.
 *
 * @example
 * namedFolds.includes("gate") // => true
 */
export const namedFolds = [
  "side",
  "top",
  "flat",
  "gate",
  "double-gate",
  "z",
  "tri",
  "roll",
  "double-parallel",
  "accordion",
  "easel",
  "shutter",
] as const;

/**
 * The surfaces of a card that have a name of their own; the others are pages with numbers. What each is, `SurfaceName` says.
 *
 * @example
 * namedSurfaces.includes("left-door") // => true
 */
export const namedSurfaces = [
  "front",
  "inside",
  "inside-front",
  "inside-flap",
  "flap",
  "back",
  "left-door",
  "right-door",
  "upper-door",
  "lower-door",
] as const;
