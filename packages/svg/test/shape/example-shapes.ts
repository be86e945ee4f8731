import { inches } from "@sheetwright/measure";
import { catalogue, type Shape, shapeOfSize } from "@sheetwright/shapes";

/** Shapes of every name in the catalogue, of a card's size. */
export const exampleShapes: readonly { readonly name: string; readonly shape: Shape }[] = catalogue.map(
  ({ id }) => ({ name: id, shape: ofCardSize(id) }),
);

function ofCardSize(id: (typeof catalogue)[number]["id"]): Shape {
  switch (id) {
    case "frame":
      return {
        shape: "frame",
        outer: { shape: "scalloped-circle", diameter: inches(3) },
        window: { shape: "heart", width: inches(1), height: inches(1) },
      };
    case "polygon":
      return { shape: "polygon", sides: 6, diameter: inches(3) };
    case "rectangle":
      return {
        shape: "rectangle",
        width: inches(3),
        height: inches(2),
        corners: "ticket",
        radius: inches(1 / 4),
      };
    case "oval":
    case "scalloped-oval":
    case "scalloped-rectangle":
    case "banner":
    case "leaf":
      return shapeOfSize(id, { width: inches(3), height: inches(2) });
    case "circle":
    case "square":
    case "scalloped-circle":
    case "scalloped-square":
    case "star":
    case "half-circle":
      return shapeOfSize(id, inches(3));
    default:
      return shapeOfSize(id, { width: inches(2), height: inches(3) });
  }
}
