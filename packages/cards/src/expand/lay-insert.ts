// A leaf folded once and laid into the fold of a card. Opened, it shows on both pages:
//
//     side fold   +-----------+-----------+     top fold    +-----------+
//                 | +--------- --------+ |                  | +-------+ |
//                 | | inside-front inside| |                  | |       | |
//                 | +--------- --------+ |                  +--       --+
//                 +-----------+-----------+                  | |       | |
//                                                            | +-------+ |

import type { PieceForm } from "../expansion.js";
import { grainForFold } from "../fold/fold-verdict.js";
import type { Flat, Sides, SurfaceName } from "../project.js";
import { addPiece, type CardBuilder, nextLabel } from "./card-builder.js";
import { layByBorder } from "./lay-by-border.js";
import type { Rectangle, Surface } from "./surface.js";

/**
 * Lays the insert of a card with a side or a top fold: one piece, and a layer on each of the two pages, the right or lower
 * one first. Gives the surfaces that it covers up to its border; none where there is no insert, or, with a fault, where its
 * border leaves nothing of it.
 *
 * @internal
 */
export function layInsert(
  builder: CardBuilder,
  surfaces: ReadonlyMap<SurfaceName, Surface>,
): readonly Surface[] {
  const { insert, flats } = builder.design;
  const [flat] = flats;
  const pages = (["inside", "inside-front"] as const).flatMap((name) => surfaces.get(name) ?? []);
  if (insert === undefined || flat === undefined) return [];
  const { path, paper, border, grain } = insert;
  const what = `the ${nextLabel(builder, "insert")}`;
  const laid: { readonly page: Surface; readonly rectangle: Rectangle; readonly border: Sides }[] = [];
  for (const page of pages) {
    const sides = bordersOn(page.surface, flat, border);
    const rectangle = layByBorder(builder, { border: sides, carrier: page, what, path });
    if (rectangle === null) return [];
    laid.push({ page, rectangle, border: sides });
  }
  const forms = flats.map((each) => formOf(each, builder.design.front, border));
  const piece = addPiece(builder, { purpose: "insert", path, choice: paper }, forms, grain);
  return laid.map(({ page, rectangle, border: sides }) => {
    const { surface } = page;
    const on = builder.layers.length;
    builder.layers.push({ surface, ...rectangle, piece, on: null, border: sides, text: null });
    return { ...page, ...rectangle, on, until: on + 1, words: what };
  });
}

/** The border of an insert on a page: none at the fold. */
function bordersOn(page: SurfaceName, { fold }: Flat, border: number): Sides {
  const sides = { left: border, right: border, top: border, bottom: border };
  const atFold =
    fold === "side" ? (page === "inside" ? "left" : "right") : page === "inside" ? "top" : "bottom";
  return { ...sides, [atFold]: 0 };
}

function formOf({ fold }: Flat, front: Pick<Rectangle, "width" | "height">, border: number): PieceForm {
  const along = fold === "side" ? "width" : "height";
  const across = fold === "side" ? "height" : "width";
  const half = front[along] - border;
  const score = { along, at: half, folds: "mountain" } as const;
  return {
    width: 0,
    height: 0,
    [along]: 2 * half,
    [across]: front[across] - 2 * border,
    scores: [score],
    grainAlong: grainForFold(score),
  };
}
