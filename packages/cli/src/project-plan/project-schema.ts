import type {
  Along,
  BandShares,
  BundleItem,
  Choice,
  Design,
  DieMat,
  DieSize,
  EnvelopeWish,
  Extent,
  Extra,
  InnerBands,
  Layer,
  LayerJoin,
  NamedCost,
  Place,
  Project,
  Ribbon,
  Shadow,
  Silence,
  Stitched,
} from "@sheetwright/cards";
import { silenceableCodes } from "@sheetwright/cards";
import { z } from "zod";
import { count, size, ticks } from "../plan/packing-schema.js";
import {
  colour,
  copiesFor,
  extent,
  flat,
  grainNeed,
  number,
  paper,
  paperWeight,
  run,
  side,
  sides,
  surface,
} from "./expansion-schema.js";

const choice: z.ZodType<Choice> = z
  .strictObject({
    faces: z.array(z.string()).min(1),
    text: z.string(),
    any: z
      .array(
        z.strictObject({
          material: z.enum(["cardstock", "glitter", "paper", "pad"]).nullable(),
          look: z.enum(["plain", "patterned"]).nullable(),
          atLeast: paperWeight.nullable(),
        }),
      )
      .optional()
      .describe("Kinds of paper asked for in place of papers by name; absent where there are none."),
  })
  .meta({ id: "choice", description: "The faces a piece may be cut from; any of them is right." });

const ribbon: z.ZodType<Ribbon> = z
  .strictObject({ kind: z.enum(["ribbon", "tape"]), name: z.string(), colour })
  .meta({ id: "ribbon", description: "A ribbon or a tape, used by its length." });

const along: z.ZodType<Along> = z.discriminatedUnion("from", [
  z.strictObject({ from: z.enum(["start", "end"]), distance: ticks }),
  z.strictObject({ from: z.literal("middle") }),
  z.strictObject({ from: z.literal("third"), third: z.union([z.literal(1), z.literal(2)]) }),
]);

const place: z.ZodType<Place> = z
  .strictObject({ x: along, y: along })
  .meta({ id: "place", description: "Where a layer of a given size lies on what carries it." });

const layerExtent: z.ZodType<Extent> = z
  .discriminatedUnion("by", [
    z.strictObject({ by: z.literal("border"), border: sides }),
    z.strictObject({ by: z.literal("size"), size: extent, place }),
  ])
  .meta({ id: "extent", description: "How large a layer is on what carries it." });

const layer: z.ZodType<Layer> = z
  .lazy(() => z.discriminatedUnion("kind", [mat, panel, bands, strip, sentiment, dieCut]))
  .meta({ id: "layer", description: "What lies on a card, or on another layer." });

const common = {
  path: z.string(),
  name: z.string().nullable(),
  grain: z.strictObject({ along: side, need: z.enum(["prefer", "require"]) }).nullable(),
  foam: size.nullable().describe("Thickness of the foam under it; null: glued flat."),
  layers: z.array(layer),
};

const seam = z
  .union([
    z.strictObject({
      cover: z.union([ribbon, choice, z.literal("bare")]).nullable(),
      width: ticks,
      gap: size.optional(),
    }),
    z.literal("bare"),
  ])
  .nullable();

const join: z.ZodType<LayerJoin> = z
  .discriminatedUnion("by", [
    z.strictObject({ by: z.literal("ends"), paper: choice, at: z.enum(["both", "one"]), seam }),
    z.strictObject({ by: z.literal("parts"), parts: z.union([z.literal(2), z.literal(3)]), seam }),
    z.strictObject({ by: z.literal("hide") }),
  ])
  .meta({ id: "join", description: "How a layer is made up where its paper is smaller." });

const mat = z.strictObject({
  kind: z.literal("mat"),
  ...common,
  paper: choice,
  extent: layerExtent,
  join: join.optional(),
});

const panel = z.strictObject({
  kind: z.literal("panel"),
  ...common,
  paper: choice,
  extent: layerExtent,
  join: join.optional(),
});

const bandShares: z.ZodType<BandShares> = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("ratio"), ratios: z.array(number).min(1) }),
  z.strictObject({ by: z.literal("width"), widths: z.array(z.union([size, z.literal("rest")])).min(1) }),
]);

const innerBands: z.ZodType<InnerBands> = z
  .lazy(() =>
    z.strictObject({
      path: z.string(),
      runs: run,
      shares: bandShares,
      papers: z.array(z.union([choice, innerBands])).min(1),
      seam,
    }),
  )
  .meta({ id: "innerBands", description: "Bands that divide one of the bands they are among." });

const bands = z.strictObject({
  kind: z.literal("bands"),
  ...common,
  runs: run,
  shares: bandShares,
  papers: z.array(z.union([choice, innerBands])).min(1),
  extent: layerExtent,
  seam,
});

const strip = z.strictObject({
  kind: z.literal("strip"),
  ...common,
  runs: run,
  paper: choice,
  width: size,
  length: size.nullable(),
  place,
  join: join.optional(),
});

const sentiment = z.strictObject({
  kind: z.literal("sentiment"),
  ...common,
  paper: choice,
  size: extent,
  place,
  text: z.string().nullable(),
  mats: z.array(z.strictObject({ paper: choice, border: ticks })).describe("From the inside out."),
});

const stitched: z.ZodType<Stitched> = z
  .strictObject({
    by: z.enum(["die", "hand"]),
    inset: size,
    marks: z.enum(["dashes", "holes"]),
    dash: size.optional(),
    gap: size.optional(),
    perInch: z.number().positive().optional(),
  })
  .meta({ id: "stitched", description: "A line of stitches inside the edge of a shape." });

// What its parameters may be is checked where the project is worked out.
const shapeValue = z.looseObject({ shape: z.string() }).meta({
  id: "shape",
  description: "A shape of the catalogue as its parameters, in ticks.",
}) as unknown as z.ZodType<NonNullable<DieSize["shape"]>>;

const dieSize = {
  shape: shapeValue.optional().describe("Absent: only the size is known."),
  cut: extent,
  blank: extent,
  stitched: stitched.optional(),
};

const dieMat: z.ZodType<DieMat> = z
  .strictObject({
    paper: choice,
    die: z.string(),
    border: size,
    sizes: z.array(z.strictObject(dieSize)).min(1),
  })
  .meta({ id: "dieMat", description: "A mat beneath a die cut: of the next size up that shows its border." });

const shadow: z.ZodType<Shadow> = z
  .strictObject({ paper: choice, border: size, fillGaps: ticks, margin: ticks })
  .meta({ id: "shadow", description: "A layer beneath a die cut: its outline, grown." });

const dieCut = z.strictObject({
  kind: z.literal("die"),
  ...common,
  die: z.string().nullable().describe("The name of the die; null: cut by a cutting machine or by hand."),
  paper: choice,
  ...dieSize,
  place,
  trim: sides.optional().describe("What is cut straight off its sides; absent: nothing."),
  mats: z.array(dieMat).optional().describe("What lies beneath it, from the inside out."),
  shadow: shadow.optional(),
});

const extra: z.ZodType<Extra> = z
  .strictObject({
    path: z.string(),
    name: z.string(),
    count: number,
    surface,
    thickness: size.describe("How far one stands up from what it lies on."),
    grams: z.number().positive().nullable().describe("What one weighs; null: not known."),
    isSmallPart: z.boolean(),
    cost: z.string().optional().describe("Cost of one; absent where it is not known."),
  })
  .describe("Something on a card that is not cut from paper.");

const envelope: z.ZodType<EnvelopeWish> = z
  .strictObject({
    id: z.string().nullable(),
    size: extent.nullable(),
    weight: paperWeight.nullable(),
    cost: z.string().optional().describe("Cost of one; absent where it is not known."),
  })
  .describe("What the maker says of the envelope of a card.");

const design: z.ZodType<Design> = z
  .strictObject({
    number,
    name: z.string(),
    path: z.string(),
    format: z.string().nullable(),
    front: extent,
    flats: z.array(flat).min(1),
    base: choice,
    frontPaper: choice.optional(),
    insert: z.strictObject({ path: z.string(), paper: choice, border: ticks, grain: grainNeed }).optional(),
    foldGrain: grainNeed,
    copies: count,
    copiesFor,
    surfaces: z.array(z.strictObject({ name: surface, path: z.string(), layers: z.array(layer) })),
    extras: z.array(extra),
    envelope: envelope.nullable(),
  })
  .describe("One kind of card, as the project file describes it.");

const bundleItem: z.ZodType<BundleItem> = z
  .strictObject({
    name: z.string(),
    path: z.string(),
    length: size.optional().describe("How long one roll of a ribbon or a tape is; absent: counted singly."),
    count: count.nullable().describe("Rolls, or single ones, on hand; null: as many as needed."),
    cost: z.string().optional().describe("Cost of one; absent where it is not known."),
    pack: z
      .strictObject({ items: number, cost: z.string().nullable() })
      .optional()
      .describe("How it is sold; absent: singly."),
    bags: number
      .optional()
      .describe("Bags that its rolls go into whole; absent: it is cut or dealt out for all."),
  })
  .describe("A ribbon, a tape, or what is counted singly, as it is on hand.");

const namedCost: z.ZodType<NamedCost> = z.strictObject({ name: z.string(), cost: z.string() });

const silence: z.ZodType<Silence> = z.strictObject({
  path: z.string(),
  check: z.enum(silenceableCodes),
  at: z
    .string()
    .nullable()
    .describe("The place where it holds, with all that stands there; null: everywhere."),
  because: z.string(),
});

/** A project with every default filled in. */
export const project: z.ZodType<Project> = z
  .strictObject({
    title: z.string(),
    units: z.enum(["in", "mm"]),
    precision: size,
    trimmer: z.strictObject({
      cuts: z.enum(["edge-to-edge", "strips"]),
      kerf: ticks,
      longestCut: size.nullable(),
      narrowestHold: ticks,
      smallestOffcut: z.strictObject({ width: ticks, height: ticks }),
    }),
    dieMachine: z
      .strictObject({
        platform: extent,
        margin: ticks,
        narrowestBridge: ticks,
        strips: z.boolean().optional(),
      })
      .optional()
      .describe("What presses dies; absent: a small one."),
    papers: z.array(paper).min(1),
    kits: z
      .strictObject({ bags: z.int().min(1) })
      .optional()
      .describe("The bags that all hold the same; absent: a class."),
    cards: z.array(design).min(1),
    items: z
      .array(bundleItem)
      .optional()
      .describe("Ribbons, tapes and extras on hand; absent where nothing is said of them."),
    rates: z
      .strictObject({
        currency: z.string().nullable(),
        hour: z.string().nullable(),
        minutesPerCard: z.string().nullable(),
        ribbons: z.array(namedCost).optional().describe("Cost of a yard, or of a metre with units mm."),
        consumables: z.array(namedCost).optional().describe("What one copy of a card takes of each."),
        priceFactor: z.string().optional().describe("The wished price is the cost times this."),
      })
      .optional()
      .describe("What work and what is used up cost; absent where nothing is said of it."),
    silences: z.array(silence).describe("Warnings and notes that the maker does not want to be told."),
    cutAlready: z
      .array(z.strictObject({ piece: z.string(), count: number }))
      .optional()
      .describe("Pieces that an earlier plan cut and that are not cut again; absent where there are none."),
  })
  .describe("The project that was planned, with every default filled in.");
