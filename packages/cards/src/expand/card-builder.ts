// Gathers what one card is made of while its layers are laid: pieces and layers get their letters in the order in which
// they are added, which is the order they are stacked in.

import { formatLength, formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { CardLayer, Piece, PieceForm, Rounding } from "../expansion.js";
import type { Choice, Design, GrainNeed, Layer, Project, Sides, SurfaceName } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { designLetters } from "./design-letters.js";
import type { Rectangle } from "./surface.js";

/** What a piece is, before it has its letter. */
export interface NewPiece {
  readonly purpose: string;
  readonly path: string;
  readonly choice: Choice;
}

/** A card half made. Only what lays its layers adds to the lists. */
export interface CardBuilder {
  readonly design: Design;
  readonly units: Unit;
  readonly precision: Ticks;
  readonly pieces: Piece[];
  readonly layers: CardLayer[];
  readonly roundings: Rounding[];
  readonly faults: ProjectFault[];
}

/**
 * Starts a card with the piece of its base.
 *
 * @internal
 */
export function startCard(
  design: Design,
  { units, precision }: Project,
  forms: readonly PieceForm[],
): CardBuilder {
  const builder = { design, units, precision, pieces: [], layers: [], roundings: [], faults: [] };
  const base = { purpose: "base", path: `${design.path}.base`, choice: design.base };
  addPiece(builder, base, forms, design.foldGrain);
  return builder;
}

/**
 * Adds a piece and the layer that it is; gives the index of the layer. `border` is what shows of the carrier.
 *
 * @internal
 */
export function addLayer(
  builder: CardBuilder,
  piece: NewPiece,
  at: {
    readonly surface: SurfaceName;
    readonly rectangle: Rectangle;
    readonly on: number | null;
    readonly border: Sides;
    readonly grain?: Layer["grain"];
    readonly text?: string | null;
  },
): number {
  const { surface, rectangle, on, border, grain = null, text = null } = at;
  const { x, y, width, height } = rectangle;
  const form = { width, height, scores: [], grainAlong: grain?.along ?? null };
  const id = addPiece(builder, piece, [form], grain?.need ?? "ignore");
  builder.layers.push({ surface, x, y, width, height, piece: id, on, border, text });
  return builder.layers.length - 1;
}

/**
 * Says a length of the card in the unit of its project: `1/8 in`.
 *
 * @internal
 */
export function sayLength({ units }: CardBuilder, ticks: Ticks): string {
  return formatLength(ticks, { unit: units });
}

/**
 * Says a size of the card in the unit of its project: `5 x 7 in`.
 *
 * @internal
 */
export function saySize({ units }: CardBuilder, { width, height }: Size): string {
  return formatSize(width, height, { unit: units });
}

/**
 * The label that the next piece will get.
 *
 * @internal
 */
export function nextLabel({ design, pieces }: CardBuilder, purpose: string): string {
  return `${design.number}${designLetters(pieces.length)} ${purpose}`;
}

function addPiece(
  builder: CardBuilder,
  { purpose, path, choice }: NewPiece,
  forms: readonly PieceForm[],
  grainNeed: GrainNeed,
): string {
  const { design, pieces } = builder;
  const label = nextLabel(builder, purpose);
  const id = `${design.number}${designLetters(pieces.length)}`;
  const { faces, text } = choice;
  pieces.push({
    id,
    label,
    purpose,
    card: design.number,
    path,
    faces: [...faces],
    paperText: text,
    forms,
    quantity: design.copies,
    grainNeed,
  });
  return id;
}
