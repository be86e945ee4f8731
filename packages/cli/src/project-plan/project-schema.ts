import type { Along, Choice, Design, Extent, Layer, Place, Project } from "@sheetwright/cards";
import { z } from "zod";
import { count, size, ticks } from "../plan/packing-schema.js";
import { copiesFor, extent, flat, grainNeed, number, paper, side, sides, surface } from "./expansion-schema.js";

const choice: z.ZodType<Choice> = z
  .strictObject({ faces: z.array(z.string()).min(1), text: z.string() })
  .meta({ id: "choice", description: "The faces a piece may be cut from; any of them is right." });

const run = z.enum(["across", "upright"]);

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
  .lazy(() => z.discriminatedUnion("kind", [mat, panel, bands, strip, sentiment]))
  .meta({ id: "layer", description: "What lies on a card, or on another layer." });

const common = {
  path: z.string(),
  name: z.string().nullable(),
  grain: z.strictObject({ along: side, need: z.enum(["prefer", "require"]) }).nullable(),
  layers: z.array(layer),
};

const mat = z.strictObject({ kind: z.literal("mat"), ...common, paper: choice, extent: layerExtent });

const panel = z.strictObject({ kind: z.literal("panel"), ...common, paper: choice, extent: layerExtent });

const bands = z.strictObject({
  kind: z.literal("bands"),
  ...common,
  runs: run,
  ratios: z.array(number).min(1),
  papers: z.array(choice).min(1),
  extent: layerExtent,
  seam: z.union([z.strictObject({ cover: choice, width: size }), z.literal("bare")]).nullable(),
});

const strip = z.strictObject({
  kind: z.literal("strip"),
  ...common,
  runs: run,
  paper: choice,
  width: size,
  length: size.nullable(),
  place,
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

const design: z.ZodType<Design> = z
  .strictObject({
    number,
    name: z.string(),
    path: z.string(),
    format: z.string().nullable(),
    front: extent,
    flats: z.array(flat).min(1),
    base: choice,
    foldGrain: grainNeed,
    copies: count,
    copiesFor,
    surfaces: z.array(z.strictObject({ name: surface, path: z.string(), layers: z.array(layer) })),
  })
  .describe("One kind of card, as the project file describes it.");

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
    papers: z.array(paper).min(1),
    cards: z.array(design).min(1),
  })
  .describe("The project that was planned, with every default filled in.");
