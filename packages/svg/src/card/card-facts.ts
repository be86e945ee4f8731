/** Gathers what drawings and texts of a card tell: its pieces with their papers and letters, in the unit asked for. */

import { findNamedSize, formatSize, type Size, type Unit } from "@sheetwright/measure";
import type {
  Card,
  CardLayer,
  CardSurface,
  Expansion,
  Face,
  Flat,
  Item,
  Paper,
  Piece,
} from "@sheetwright/planner";
import { moved, type Outline } from "@sheetwright/shapes";
import { countOf } from "../wording/count-of.js";
import { displayName } from "../wording/display-name.js";
import { facesOf, paperNameOf } from "../wording/paper-in-words.js";
import { type ShownSurface, seenBesideFlap, surfacesOnFront } from "./closed-front.js";
import { shapeSlices } from "./shape-slices.js";
import type { Surface } from "./visible-part.js";

/** The part of a plan, or of a project worked out, that its cards are drawn from. */
export type CardSource = Pick<Expansion, "title" | "units" | "papers" | "cards" | "pieces" | "items">;

/** How a card is drawn or written. */
export interface CardOptions {
  /** The unit of lengths in words (default: the project's). Drawings are at the same scale in either. */
  readonly unit?: Unit;
}

/** A piece of a card, with the paper that it is drawn in. */
export interface CardPiece {
  readonly piece: Piece;
  /** The letter of its label: `b` of `3b`. */
  readonly letter: string;
  /** Its label as a reader sees it: `3b mat`. */
  readonly label: string;
  /** The first face that it may be cut from. */
  readonly face: Face;
  /** What that face is of; the printed back of a glitter paper is plain. */
  readonly material: Paper["material"];
  /** The papers that it may be cut from, in words. */
  readonly paperName: string;
  /** The printed backs among the faces that it may be cut from, in words. */
  readonly backs: readonly string[];
}

/** A layer of a surface with its piece; `layer.on` is an index among the layers of that surface. */
export interface LayerPiece extends CardPiece {
  readonly layer: CardLayer;
}

/** A card as it is told of. */
export interface CardFacts {
  readonly card: Card;
  readonly unit: Unit;
  readonly name: string;
  readonly base: CardPiece;
  /** The front. */
  readonly surface: CardSurface;
  /** What lies on the front, doors and flap of the closed card included, from the bottom to the top. */
  readonly layers: readonly LayerPiece[];
  /** The front, then the layers: what is painted, in painting order. */
  readonly surfaces: readonly Surface[];
  /** What is seen of layers on another surface, painted below all layers: on a front beside its flap. */
  readonly glimpses: readonly Glimpse[];
  /** What lies on surfaces that are not seen on the front, one entry for each that something lies on. */
  readonly elsewhere: readonly SurfaceFacts[];
}

/** A part of a layer on another surface. */
export interface Glimpse extends Surface {
  readonly piece: CardPiece;
  /** Of the whole layer, where it is cut to one, from the corner of the front; else absent. */
  readonly outline?: readonly Outline[] | undefined;
}

/** What lies on one surface, told as the front is. */
export type SurfaceFacts = Omit<CardFacts, "elsewhere">;

/** Finds a card by its number. Throws a RangeError where there is none, or where it names pieces that are not there. */
export function cardFacts(source: CardSource, number: number, { unit }: CardOptions = {}): CardFacts {
  const at = source.cards.findIndex((card) => card.number === number);
  const card = source.cards[at];
  if (card === undefined) {
    const known = source.cards.map((other) => other.number).join(", ");
    throw new RangeError(
      `number: there is no card ${number}; the cards are ${known === "" ? "none" : known}.`,
    );
  }
  const faces = facesOf(source.papers);
  const pieces = new Map(source.pieces.map((piece) => [piece.id, piece]));
  const items = new Map(source.items.map((item) => [item.id, itemAsPiece(item)]));
  const pieceOf = (id: string, path: string): CardPiece => {
    const item = items.get(id);
    if (item !== undefined) return item;
    const piece = pieces.get(id);
    if (piece === undefined) throw new RangeError(`${path}: no piece of the cut list has the id ${id}.`);
    const face = faces.get(piece.faces[0] ?? "");
    if (face === undefined) {
      throw new RangeError(
        `${path}: no paper has the face ${piece.faces[0] ?? "(none)"} of the piece ${id}.`,
      );
    }
    return {
      piece,
      letter: letterOf(piece),
      label: displayName({ id, name: piece.label }),
      face: face.face,
      material: face.back && face.paper.material === "glitter" ? "paper" : face.paper.material,
      paperName: paperNameOf(piece, faces),
      backs: piece.faces.flatMap((one) => {
        const known = faces.get(one);
        return known?.back === true ? [displayName(known.face)] : [];
      }),
    };
  };
  const base = pieceOf(card.base, `cards[${at}].base`);
  const layersOn = (shown: readonly ShownSurface[]): readonly LayerPiece[] => {
    const found = shown.flatMap((surface) =>
      card.layers.flatMap((layer, index) =>
        layer.surface === surface.name ? [{ layer, index, surface }] : [],
      ),
    );
    return found.map(({ layer, index, surface }) => {
      const on = layer.on === null ? null : found.findIndex((other) => other.index === layer.on);
      const place = { x: layer.x + surface.x, y: layer.y + surface.y };
      return {
        ...pieceOf(layer.piece, `cards[${at}].layers[${index}].piece`),
        layer: { ...layer, ...place, on },
      };
    });
  };
  const onFront = surfacesOnFront(card);
  const factsOf = (surface: CardSurface, shown: readonly ShownSurface[]): SurfaceFacts => {
    const { width, height } = surface;
    const layers = layersOn(shown);
    return {
      card,
      unit: unit ?? source.units,
      name: displayName({ id: digitsOf(card), name: card.name }),
      base,
      surface,
      layers,
      surfaces: [{ x: 0, y: 0, width, height }, ...layers.map(({ layer }) => paintedAs(layer))],
      glimpses: [],
    };
  };
  const others = card.surfaces.filter(
    ({ name }) =>
      name !== "front" &&
      !onFront.some((shown) => shown.name === name) &&
      card.layers.some(({ surface }) => surface === name),
  );
  const whole = (name: CardSurface["name"]): ShownSurface => ({ name, x: 0, y: 0 });
  const inside = layersOn([whole("inside")]).map(
    ({ layer: { x, y, width, height, outline }, ...piece }): Glimpse => ({
      ...{ x, y, width, height },
      piece,
      ...(outline === undefined ? {} : { outline: outline.map((part) => moved(part, { x, y })) }),
    }),
  );
  return {
    ...factsOf({ name: "front", ...card.front }, [...onFront, whole("front")]),
    glimpses: seenBesideFlap(card, inside),
    elsewhere: others.map((surface) => factsOf(surface, [whole(surface.name)])),
  };
}

/** A layer as it is painted: its outline where it has one. */
function paintedAs({ x, y, width, height, outline }: CardLayer): Surface {
  const box = { x, y, width, height };
  return outline === undefined ? box : { ...box, slices: shapeSlices(outline, box) };
}

function letterOf({ id, card }: Pick<Piece, "id" | "card">): string {
  const digits = String(card);
  return displayName({ id: id.startsWith(digits) ? id.slice(digits.length) : id });
}

/** A ribbon or a tape is told of as a piece of its own colour, as long as it is cut. */
function itemAsPiece({
  id,
  label,
  card,
  path,
  kind,
  name,
  colour,
  width,
  length,
  quantity,
}: Item): CardPiece {
  const form = { width: length, height: width, scores: [], grainAlong: null };
  const piece: Piece = {
    id,
    label,
    purpose: kind,
    card,
    path,
    faces: [],
    paperText: name,
    forms: [form],
    quantity,
    grainNeed: "ignore",
  };
  const paperName = displayName({ id: kind, name });
  return {
    piece,
    letter: letterOf(piece),
    label: displayName({ id, name: label }),
    face: { id: kind, name: paperName, pattern: "none", colour },
    material: "paper",
    paperName,
    backs: [],
  };
}

function digitsOf({ number }: Card): string {
  return `card ${number}`;
}

/** The closed card in words: `US A7 card, 5 x 7 in closed`. */
export function formatInWords({ card, unit }: CardFacts): string {
  const named = card.format === null ? undefined : findNamedSize(card.format, "card");
  const name = named?.name ?? (card.format === null ? "Card" : displayName({ id: card.format }));
  const { width, height } = card.front;
  const stand = width === height ? "" : width > height ? ", lying" : ", upright";
  const closed = `${formatSize(width, height, { unit })} closed`;
  return `${name.slice(0, 1).toUpperCase()}${name.slice(1)}${stand}, ${closed}`;
}

const FOLD_WORDS: Readonly<Record<Flat["fold"], string>> = {
  side: "fold at the left",
  top: "fold at the top",
  flat: "not folded",
  gate: "gate fold",
  "double-gate": "double gate fold",
  z: "z fold",
  tri: "tri-fold",
  roll: "roll fold",
  "double-parallel": "folded in half twice",
  accordion: "accordion fold",
  easel: "easel fold",
  shutter: "shutter fold",
  own: "folded panel by panel",
};

/** Where or how the card is folded: `fold at the left`, `fold at the left or at the top`. */
export function foldInWords({ flats }: Card): string {
  const folds = [...new Set(flats.map(({ fold }) => FOLD_WORDS[fold]))];
  return folds.map((words, index) => (index === 0 ? words : words.replace(/^fold /, ""))).join(" or ");
}

/** How many are made, and for whom: `13 copies and 2 spares: 12 for guests, 1 sample`. */
export function copiesInWords({ copies, copiesFor: { guests, samples, spares = 0 } }: Card): string {
  const asked = countOf(copies, "copy", "copies");
  const made = spares === 0 ? asked : `${asked} and ${countOf(spares, "spare")}`;
  return samples === 0 ? made : `${made}: ${guests} for guests, ${countOf(samples, "sample")}`;
}

/** The sizes that a piece is cut to: one, or two where it may be folded either way. */
export function flatsInWords(flats: readonly Size[], unit: Unit): string {
  const sizes = flats.map((flat) => formatSize(flat.width, flat.height, { unit, mark: false }));
  return `${[...new Set(sizes)].join(" or ")} ${unit}`;
}
