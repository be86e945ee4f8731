import type { Card, SurfaceName } from "@sheetwright/planner";

/** What a maker calls a surface: `left door`, `right inside page`, `page 2`. */
export function surfaceInWords({ flats }: Pick<Card, "flats">, surface: SurfaceName): string {
  const folds = [...new Set(flats.map(({ fold }) => fold))];
  const along = flats[0]?.along ?? "width";
  // Where a card may be folded either way, no page is at the right or below for certain.
  const isOnce = folds.length === 1 && (folds[0] === "side" || folds[0] === "top");
  const isTri = folds[0] === "tri";
  switch (surface) {
    case "inside":
      if (isTri) return "middle inside page";
      return isOnce ? `${along === "width" ? "right" : "lower"} inside page` : "inside";
    case "inside-front":
      return isOnce || isTri ? `${along === "width" ? "left" : "upper"} inside page` : "inside of the front";
    case "inside-flap":
      return "inside of the flap";
    case "left-door":
    case "right-door":
    case "upper-door":
    case "lower-door":
      return surface.replace("-", " ");
    case "front":
    case "back":
    case "flap":
      return surface;
    default:
      return surface.replace("-", " ");
  }
}

/** The same to stand over a picture: `Left door`. */
export function surfaceTitle(card: Pick<Card, "flats">, surface: SurfaceName): string {
  const words = surfaceInWords(card, surface);
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}
