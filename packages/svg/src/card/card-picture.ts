/** A surface of a card, such as its front, with its folds and call-outs: one figure that can be put on a page. */

import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Box } from "../drawing/box.js";
import { unbroken } from "../text/break-lines.js";
import { dieInWords } from "../wording/die-in-words.js";
import { displayName } from "../wording/display-name.js";
import { element, type SvgElement } from "../writer/svg-element.js";
import { type CardPiece, flatsInWords, type SurfaceFacts } from "./card-facts.js";
import { closedFront } from "./closed-front.js";
import { cutSizes } from "./cut-sizes.js";
import {
  callOutHeight,
  type DrawnCallOut,
  drawCallOuts,
  gutterFor,
  setCallOut,
  setLetter,
} from "./draw-call-outs.js";
import { drawFolds, foldRoomAt, foldWordHeights } from "./draw-fold.js";
import { type FoldedEdge, foldedEdges } from "./folded-edges.js";
import { drawFront, scaledBox, wordsOnFront } from "./front-picture.js";
import { placeCallOuts } from "./place-call-outs.js";
import { shownSurfaces } from "./visible-part.js";

/** How a figure is made. */
export interface PictureWish {
  /** Drawn millimetres to a millimetre of the card. */
  readonly scale: number;
  /** Whether call-outs say all, or the letter alone (then there are all or none), or are left out. */
  readonly callOuts: "all" | "letters" | "none";
  /** Begins the ids of the drawn elements. */
  readonly prefix: string;
}

/** A figure: what it takes round the front, and how to draw it. */
export interface CardPicture {
  /** The surface with all that stands round it, from its top left corner, in millimetres. */
  readonly extent: Box;
  /** Pieces that cannot be seen on the surface, or not be pointed at, with their labels. */
  readonly untold: readonly CardPiece[];
  /** True where every piece that can be seen has its call-out. */
  readonly complete: boolean;
  /** Draws the figure with the top left corner of the surface at (x, y). */
  readonly draw: (x: number, y: number) => readonly SvgElement[];
}

const LABEL_WIDTH = 58;

/** Makes the figure. */
export function cardPicture(
  facts: SurfaceFacts,
  { scale, callOuts: kind, prefix }: PictureWish,
): CardPicture {
  const { card, surface: whole, base, layers, glimpses } = facts;
  // What is seen of other surfaces lies between the base and its layers, and is not pointed at.
  const [bottom, ...over] = facts.surfaces;
  const surfaces = bottom === undefined ? [] : [bottom, ...glimpses, ...over];
  const shift = (surface: number) => (surface === 0 ? 0 : surface + glimpses.length);
  const unshift = (surface: number) => (surface === 0 ? 0 : surface - glimpses.length);
  const edges = foldedEdges(card, whole.name);
  const pieces: readonly CardPiece[] = [base, ...layers];
  const millimetre = TICKS_PER_MM / scale;
  const shown = shownSurfaces(surfaces);
  const fitted = wordsOnFront(facts, scale);
  const textOf = (piece: CardPiece, index: number, withWords: boolean) =>
    kind === "letters"
      ? setLetter(piece.letter)
      : setCallOut(piece.label, detailsOf(facts, index, withWords), LABEL_WIDTH);
  // Whether words can be drawn is known only when the leaders are placed, so room is kept for them in the label too.
  const wishes = pieces.flatMap((piece, surface) =>
    shown[shift(surface)] && kind !== "none"
      ? [
          {
            surface: shift(surface),
            height: Math.ceil(callOutHeight(textOf(piece, surface, true)) * millimetre),
          },
        ]
      : [],
  );
  const placed = placeCallOuts(
    {
      surfaces,
      words: fitted.map(({ room }) => room),
      taken: {
        left: foldWordHeights(edges, "left", whole.height, scale),
        right: foldWordHeights(edges, "right", whole.height, scale),
      },
      millimetre,
    },
    wishes,
    kind === "letters",
  );
  const { crossed } = placed;
  const callOuts = placed.callOuts.map((callOut) => ({ ...callOut, surface: unshift(callOut.surface) }));
  const unreached = placed.unreached.map(unshift);
  const words = fitted.filter(({ room }) => !crossed.includes(room));
  const said = new Set(words.map(({ surface }) => surface));
  const front = scaledBox(surfaces[0] ?? { x: 0, y: 0, width: 0, height: 0 }, scale);

  const gutter = (side: "left" | "right") =>
    gutterFor(
      callOuts.filter((callOut) => callOut.side === side),
      Math.max(2.5, foldRoomAt(edges, side)),
      scale,
    );
  const gutters = { left: gutter("left"), right: gutter("right") };
  const lines = whole.name === "front" ? closedFront(card, facts.unit).lines : [];
  const drawn = callOuts.map((callOut): DrawnCallOut => {
    const piece = pieces[callOut.surface] as CardPiece;
    return {
      callOut,
      piece,
      text: textOf(piece, callOut.surface, !said.has(callOut.surface)),
      gutter: gutters[callOut.side],
    };
  });
  return {
    extent: extentOf(drawn, front, scale, edges),
    complete: unreached.length === 0,
    untold: pieces.filter((_, index) => !shown[shift(index)] || unreached.includes(index)),
    draw: (x, y) => [
      element("g", { id: `${prefix}-folds` }, drawFolds(edges, { ...front, x, y }, prefix)),
      ...drawFront({ facts, lines, words, scale, x, y, prefix }),
      ...drawCallOuts(drawn, { x, y, width: front.width, scale, prefix }),
    ],
  };
}

/** The size that a piece is cut to, and its paper; with the words of a sentiment where they are asked for. */
export function detailsOf(
  { card, surface, base, layers, unit }: SurfaceFacts,
  index: number,
  withWords: boolean,
): string {
  if (index === 0 && surface.name !== "front") return base.paperName;
  if (index === 0) return `${unbroken(`${flatsInWords(card.flats, unit)} flat,`)} ${base.paperName}`;
  const piece = layers[index - 1];
  if (piece === undefined) return "";
  const { layer, paperName } = piece;
  const { die, forms } = piece.piece;
  const isFolded = forms.some(({ scores }) => scores.length > 0);
  // A folded leaf lies on two surfaces; its size is told of on the first, as that of the base is.
  const first = card.layers.find((one) => one.piece === piece.piece.id);
  if (isFolded && first !== undefined && first.surface !== layer.surface) return paperName;
  const words = withWords && layer.text !== null ? `, “${displayName({ id: "", name: layer.text })}”` : "";
  const sizes = flatsInWords(cutSizes(piece), unit);
  const cut = die === undefined ? "" : `, cut by ${dieInWords(die, unit)}`;
  return `${unbroken(`${sizes}${isFolded ? " flat" : ""},`)} ${paperName}${cut}${words}`;
}

function extentOf(
  drawn: readonly DrawnCallOut[],
  front: Box,
  scale: number,
  edges: readonly FoldedEdge[],
): Box {
  let left = foldRoomAt(edges, "left");
  let top = foldRoomAt(edges, "top");
  let right = foldRoomAt(edges, "right");
  let bottom = foldRoomAt(edges, "bottom");
  for (const { callOut, text, gutter } of drawn) {
    const middle = (callOut.middle * scale) / TICKS_PER_MM;
    const half = Math.max(text.height, 4.4) / 2;
    top = Math.max(top, half - middle);
    bottom = Math.max(bottom, middle + half - front.height);
    if (callOut.side === "left") left = Math.max(left, gutter.width + text.width);
    else right = Math.max(right, gutter.width + text.width);
  }
  return {
    x: -left,
    y: -top,
    width: left + front.width + right,
    height: top + front.height + bottom,
  };
}
