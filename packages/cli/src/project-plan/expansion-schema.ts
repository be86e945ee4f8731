import {
  type Card,
  type CardLayer,
  type CardSeam,
  type Face,
  type Flat,
  type Item,
  type Join,
  type NoPaper,
  namedFolds,
  namedSurfaces,
  type Paper,
  type PaperDesign,
  type PaperWeight,
  type Piece,
  type Score,
  type Sides,
  type Slit,
} from "@sheetwright/cards";
import { z } from "zod";
import { count, size, ticks } from "../plan/packing-schema.js";
import { outlines, pieceDie, reveal, stitches } from "./outline-schema.js";

/** Which side of a rectangle is meant. */
export const side = z.enum(["width", "height"]);

/** How much a wanted grain direction counts. */
export const grainNeed = z.enum(["prefer", "require", "ignore"]);

/** The direction of a strip's or band's length. */
export const run = z.enum(["across", "upright"]);

/** A colour for drawings. */
export const colour = z.string().regex(/^#[0-9a-f]{6}$/);

/** A number from 1. */
export const number = z.int().min(1);

/** A width and a height. */
export const extent = z.strictObject({ width: size, height: size });

/** A length a side. */
export const sides: z.ZodType<Sides> = z.strictObject({
  left: ticks,
  right: ticks,
  top: ticks,
  bottom: ticks,
});

const score: z.ZodType<Score> = z
  .strictObject({ along: side, at: ticks, folds: z.enum(["mountain", "valley", "both"]) })
  .meta({
    id: "score",
    description:
      "A score: the side that it divides, how far along it from the left or top edge, and which way it folds with the outside up.",
  });

const slit: z.ZodType<Slit> = z
  .strictObject({ along: side, at: ticks, from: ticks, to: ticks })
  .meta({ id: "slit", description: "A cut inside a piece, along one of its sides." });

/** A flat of a card. */
export const flat: z.ZodType<Flat> = z
  .strictObject({
    width: size,
    height: size,
    fold: z.enum([...namedFolds, "own"]),
    along: side,
    panels: z.array(size).min(1),
    scores: z.array(score),
    slits: z.array(slit),
  })
  .meta({
    id: "flat",
    description: "The sheet a card is folded from, its outside up and its front upright.",
  });

/** What copies are made for. */
export const copiesFor = z.strictObject({
  guests: count,
  samples: count,
  spares: number.optional().describe("Copies more that are wished for; absent where none are."),
});

const face: z.ZodType<Face> = z.strictObject({
  id: z.string().min(1),
  name: z.string(),
  pattern: z.enum(["none", "two-way", "one-way"]),
  colour,
});

const design: z.ZodType<PaperDesign> = z
  .strictObject({
    id: z.string().min(1),
    name: z.string(),
    count: count.nullable().describe("Sheets on hand; null: as many as needed."),
    cost: z.string().nullable().describe("Of one sheet, as decimal text."),
    front: face,
    back: face.nullable(),
    offcuts: z.array(z.strictObject({ width: size, height: size, count })),
  })
  .describe("Sheets of a paper that are all alike on both faces.");

/** The weight of a paper as its label says it. */
export const paperWeight: z.ZodType<PaperWeight> = z.discriminatedUnion("unit", [
  z.strictObject({ unit: z.literal("g/m2"), grammage: z.number().positive(), text: z.string() }),
  z.strictObject({
    unit: z.literal("lb"),
    pounds: z.number().positive(),
    grade: z.enum(["bond", "text", "cover", "index", "bristol", "tag"]).nullable(),
    text: z.string(),
  }),
]);

/** A paper of the bundle. */
export const paper: z.ZodType<Paper> = z
  .strictObject({
    id: z.string().min(1),
    name: z.string(),
    material: z.enum(["cardstock", "glitter", "paper", "pad"]),
    sheet: extent,
    sheetName: z.string().nullable(),
    trim: sides,
    grain: z.enum(["width", "height", "none", "unknown"]),
    grainBasis: z
      .enum(["given", "assumed"])
      .nullable()
      .describe("Where the grain is known from; null: not known."),
    weight: paperWeight.nullable(),
    thickness: ticks.nullable(),
    pack: z
      .strictObject({ sheets: z.int().min(1), cost: z.string().nullable() })
      .optional()
      .describe("How it is sold; absent where nothing is said of it."),
    bags: z
      .int()
      .min(1)
      .optional()
      .describe("Into how many bags its sheets go out whole; absent: it is cut for all."),
    designs: z.array(design).min(1),
  })
  .meta({ id: "paper", description: "A paper of the bundle, all of one size." });

/** A surface of a card. */
export const surface = z
  .union([z.enum(namedSurfaces), z.templateLiteral(["page-", z.int().min(1)])])
  .describe("A surface of a card as its reader sees it.");

const layer: z.ZodType<CardLayer> = z
  .strictObject({
    surface,
    x: ticks,
    y: ticks,
    width: size,
    height: size,
    piece: z.string(),
    on: count.nullable().describe("Index of the layer that carries it; null: the surface itself."),
    border: sides,
    text: z.string().nullable(),
    foam: size.optional().describe("Thickness of the foam under it; absent: glued flat."),
    outline: outlines.optional(),
    stitches: stitches.optional(),
  })
  .describe("A piece where it lies on a surface, from the surface's top left corner.");

const seam: z.ZodType<CardSeam> = z
  .strictObject({
    surface,
    x: ticks,
    y: ticks,
    width: ticks,
    height: ticks,
    runs: run,
    path: z.string(),
    position: ticks,
    cover: z.string().nullable().describe("The id of what lies centred on it."),
    bare: z.boolean().describe("Whether it is to be seen."),
    above: count.describe("Index of the first layer above all that meets here."),
  })
  .describe("A seam between two parts on a surface: what is left free between them.");

const join: z.ZodType<Join> = z
  .strictObject({
    path: z.string(),
    purpose: z.string(),
    by: z.enum(["whole", "ends", "parts", "hide"]),
    along: side,
    extent: size,
    gives: size,
    pieces: z.array(z.string()).min(1),
  })
  .describe("A layer larger than its paper, and how it is made up.");

/** A card worked out. */
export const card: z.ZodType<Card> = z
  .strictObject({
    number,
    name: z.string(),
    format: z.string().nullable(),
    front: extent,
    copies: count,
    copiesFor,
    flats: z.array(flat).min(1),
    base: z.string().describe("The id of the base's piece."),
    surfaces: z
      .array(z.strictObject({ name: surface, width: size, height: size }))
      .min(1)
      .describe("The surfaces that the fold gives, the front first."),
    layers: z.array(layer).describe("What lies on them, each from the bottom to the top."),
    seams: z.array(seam),
    extras: z
      .array(z.strictObject({ name: z.string(), count: number, surface }))
      .optional()
      .describe("What is fastened on it that is not cut; absent: nothing."),
    joins: z.array(join),
    reveals: z.array(reveal).optional().describe("Borders that mats cut by the next die up give."),
    roundings: z.array(
      z.strictObject({
        piece: z.string(),
        what: z.enum(["seam", "third"]),
        position: ticks,
        by: z.number().describe("How far it was moved, in ticks; may be a fraction, for telling only."),
      }),
    ),
  })
  .describe("A design with everything measured.");

/** An entry of the cut list. */
export const piece: z.ZodType<Piece> = z
  .strictObject({
    id: z.string().min(1).describe("Design number and letter, such as 3b."),
    label: z.string(),
    purpose: z.string(),
    card: number,
    path: z.string().describe("Where it comes from in the project file."),
    faces: z.array(z.string()).min(1).describe("Any of these faces will do."),
    paperText: z.string(),
    forms: z
      .array(
        z.strictObject({
          width: size,
          height: size,
          scores: z.array(score),
          slits: z.array(slit).optional().describe("Cuts inside the piece that free strips of it."),
          grainAlong: side.nullable(),
        }),
      )
      .min(1),
    quantity: count,
    cutAlready: number
      .optional()
      .describe("Copies that an earlier plan cut, of those that are asked for; absent where there are none."),
    grainNeed,
    die: pieceDie
      .optional()
      .describe("What a die cuts out of its middle; absent where it lies on the card itself."),
  })
  .describe("Pieces that are all alike: one for each copy of a card.");

/** What is used by its length. */
export const item: z.ZodType<Item> = z
  .strictObject({
    id: z.string().min(1),
    label: z.string(),
    card: number,
    path: z.string(),
    kind: z.enum(["ribbon", "tape"]),
    name: z.string(),
    colour,
    width: size,
    length: size,
    quantity: count,
  })
  .describe("A ribbon or a tape: for each copy of a card one of this length.");

/** A piece that none of its papers is large enough for. */
export const noPaper: z.ZodType<NoPaper> = z
  .strictObject({
    piece: z.string(),
    label: z.string(),
    path: z.string(),
    width: size,
    height: size,
    design: z.string(),
    usable: z.strictObject({ width: ticks, height: ticks }),
    over: z.strictObject({ width: ticks, height: ticks }),
    turned: z.boolean(),
    help: z.array(z.string()),
    message: z.string(),
  })
  .describe("A piece that none of its papers is large enough for, and by how much.");
