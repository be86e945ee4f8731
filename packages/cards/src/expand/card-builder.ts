// Gathers what one card is made of while its layers are laid: pieces and layers get their letters in the order in which
// they are added, which is the order they are stacked in.

import { formatLength, formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import type { Outline } from "@sheetwright/shapes";
import type {
  CardLayer,
  CardSeam,
  Item,
  Join,
  Piece,
  PieceDie,
  PieceForm,
  Reveal,
  Rounding,
  StitchMarks,
} from "../expansion.js";
import type { Choice, Design, GrainNeed, Layer, Project, Ribbon, Sides, SurfaceName } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { designLetters } from "./design-letters.js";
import { type FaceOfPaper, indexFaces } from "./face-index.js";
import type { Rectangle } from "./surface.js";

/** What a piece is, before it has its letter. */
export interface NewPiece {
  readonly purpose: string;
  readonly path: string;
  readonly choice: Choice;
}

/** The rectangle that a die cuts its shape from. */
export interface DieBlank {
  readonly form: PieceForm;
  readonly die: PieceDie;
}

/** What a ribbon or a tape is, before it has its letter. */
export interface NewItem {
  readonly ribbon: Ribbon;
  readonly path: string;
  readonly width: Ticks;
  readonly length: Ticks;
}

/** A border that shows of something round what lies on it. */
export interface LaidBorder {
  /** Of the value that asks for it. */
  readonly path: string;
  /** What it is of: `the 1b mat`. */
  readonly words: string;
  readonly surface: SurfaceName;
  readonly outer: Rectangle;
  readonly inner: Rectangle;
  /** Index of the first layer that may cover it: all before make up what it is of, or lie below. */
  readonly above: number;
}

/** A piece that is to be cut short below other layers, once these are laid. */
export interface HiddenJoin {
  /** Index of its layer. */
  readonly layer: number;
  readonly along: "width" | "height";
  /** What its paper gives of that side. */
  readonly gives: Ticks;
  readonly path: string;
  /** What it is: `the 1b mat`. */
  readonly words: string;
}

/** A card half made. Only what lays its layers adds to the lists. */
export interface CardBuilder {
  readonly design: Design;
  readonly units: Unit;
  readonly precision: Ticks;
  readonly pieces: Piece[];
  readonly items: Item[];
  readonly layers: CardLayer[];
  readonly borders: LaidBorder[];
  readonly seams: CardSeam[];
  readonly joins: Join[];
  readonly reveals: Reveal[];
  readonly hides: HiddenJoin[];
  /** The faces of the papers of the project, by id. */
  readonly faces: ReadonlyMap<string, FaceOfPaper>;
  readonly longestCut: Ticks | null;
  readonly roundings: Rounding[];
  readonly faults: ProjectFault[];
}

/**
 * Starts a card with the piece of its base.
 *
 * @internal
 */
export function startCard(design: Design, project: Project, forms: readonly PieceForm[]): CardBuilder {
  const { units, precision } = project;
  const builder: CardBuilder = {
    design,
    units,
    precision,
    pieces: [],
    items: [],
    layers: [],
    borders: [],
    seams: [],
    joins: [],
    reveals: [],
    hides: [],
    faces: indexFaces(project),
    longestCut: project.trimmer.longestCut,
    roundings: [],
    faults: [],
  };
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
    readonly foam?: Ticks | null;
    /** What is cut from the sheet, where that is not the layer itself. */
    readonly blank?: DieBlank;
    /** What it is cut to and the stitches in it, from its top left corner. */
    readonly outline?: readonly Outline[];
    readonly stitches?: StitchMarks | null;
  },
): number {
  const { surface, rectangle, on, border, grain = null, text = null, foam = null, blank } = at;
  const { outline, stitches = null } = at;
  const { x, y, width, height } = rectangle;
  const form = { width, height, scores: [], grainAlong: grain?.along ?? null };
  const id = addPiece(builder, piece, [blank?.form ?? form], grain?.need ?? "ignore", blank?.die);
  const lifted = foam === null ? {} : { foam };
  const shaped = {
    ...(outline === undefined ? {} : { outline }),
    ...(stitches === null ? {} : { stitches }),
  };
  builder.layers.push({ surface, x, y, width, height, piece: id, on, border, text, ...lifted, ...shaped });
  return builder.layers.length - 1;
}

/**
 * Adds a ribbon or a tape and the layer that it is.
 *
 * @internal
 */
export function addItemLayer(
  builder: CardBuilder,
  { ribbon: { kind, name, colour }, path, width, length }: NewItem,
  at: Omit<CardLayer, "piece" | "text">,
): string {
  const { design, items, layers } = builder;
  const label = nextLabel(builder, kind);
  const id = nextId(builder);
  items.push({
    id,
    label,
    card: design.number,
    path,
    kind,
    name,
    colour,
    width,
    length,
    quantity: design.copies,
  });
  layers.push({ ...at, piece: id, text: null });
  return id;
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
export function nextLabel(builder: CardBuilder, purpose: string): string {
  return `${nextId(builder)} ${purpose}`;
}

/** Pieces and items have their letters in one row. */
function nextId({ design, pieces, items }: CardBuilder): string {
  return `${design.number}${designLetters(pieces.length + items.length)}`;
}

/**
 * Adds a piece without a layer; gives its id.
 *
 * @internal
 */
export function addPiece(
  builder: CardBuilder,
  { purpose, path, choice }: NewPiece,
  forms: readonly PieceForm[],
  grainNeed: GrainNeed,
  die?: PieceDie,
): string {
  const { design, pieces } = builder;
  const label = nextLabel(builder, purpose);
  const id = nextId(builder);
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
    ...(die === undefined ? {} : { die }),
  });
  return id;
}
