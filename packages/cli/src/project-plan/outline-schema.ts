import type { CardLayer, PieceDie, Reveal, Sides, StitchMarks } from "@sheetwright/cards";
import { z } from "zod";
import { size, ticks } from "../plan/packing-schema.js";

const point = z.strictObject({ x: z.int(), y: z.int() }).meta({
  id: "point",
  description: "A point in ticks, x to the right and y down.",
});

const ring = z
  .array(z.union([z.strictObject({ to: point }), z.strictObject({ to: point, through: point })]))
  .min(2)
  .meta({
    id: "ring",
    description:
      "A closed line as the edges along it, each from the end of the one before: straight, or an arc by way of a point.",
  });

/** What something is cut to. */
export const outlines: z.ZodType<NonNullable<CardLayer["outline"]>> = z
  .array(z.strictObject({ outer: ring, windows: z.array(ring) }))
  .min(1)
  .meta({
    id: "outlines",
    description: "What something is cut to, from its top left corner; absent: a rectangle, or not known.",
  });

/** Stitches as they are seen. */
export const stitches: z.ZodType<StitchMarks> = z
  .strictObject({
    dashes: z.array(z.array(point).min(2)).describe("Each as the points along it."),
    holes: z.array(z.strictObject({ centre: point, diameter: size })),
  })
  .meta({ id: "stitches", description: "Stitches, from the top left corner of what they are in." });

const sides: z.ZodType<Sides> = z.strictObject({ left: ticks, right: ticks, top: ticks, bottom: ticks });

/** What is cut to a shape out of a piece. */
export const pieceDie: z.ZodType<PieceDie> = z.strictObject({
  name: z.string().nullable().describe("The name of the die; null: a cutting machine, or scissors."),
  cut: z.strictObject({ width: size, height: size }),
  shape: z.string().optional().describe("Its shape by its name in the catalogue."),
  across: size.optional().describe("Its size, where that is told by one length."),
  outline: outlines.optional(),
  stitches: stitches.optional(),
  trim: sides.optional().describe("What is cut straight off its sides afterwards; absent: nothing."),
});

/** What a mat shows round what lies on it. */
export const reveal: z.ZodType<Reveal> = z
  .strictObject({
    path: z.string(),
    mat: z.string().describe("The id of the mat's piece."),
    piece: z.string().describe("The id of the piece on it."),
    wanted: ticks,
    least: ticks,
    most: ticks,
  })
  .describe("The border that a mat cut by the next die up gives, where it is narrowest and widest.");
