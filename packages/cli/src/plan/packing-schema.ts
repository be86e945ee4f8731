import type {
  Bound,
  Certificate,
  CutNode,
  CutOrder,
  DualFeasible,
  Packing,
  Problem,
  Window,
} from "@sheetwright/packing";
import { z } from "zod";

/** A length in ticks. */
export const ticks = z.int().min(0).describe("A length in ticks.");
/** A length in ticks, above 0. */
export const size = z.int().min(1).describe("A length in ticks, above 0.");
/** How many of something. */
export const count = z.int().min(0);
const decimal = z.string().regex(/^\d+$/).describe("A whole number as decimal text, since it may pass 2^53.");
/** SHA-256 in hexadecimal. */
export const sha = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe("SHA-256 in hexadecimal.");
const turns = z.enum(["upright", "turned", "both"]);
const mode = z.enum(["shelf", "guillotine", "stopped"]);
const aim = z.enum(["all", "fill"]);
/** How long was searched. */
export const effort = z.enum(["quick", "standard", "thorough"]);

const kind = z
  .strictObject({
    id: z.string().min(1),
    name: z.string().optional(),
    quantity: count.nullable(),
    least: count.optional(),
    forms: z
      .array(
        z.strictObject({
          width: size,
          height: size,
          turns: turns.optional(),
          sheets: z.array(z.strictObject({ sheet: z.string(), turns: turns.optional() })).optional(),
          hidden: z
            .strictObject({ x: ticks, y: ticks, width: size, height: size, tool: z.string() })
            .optional(),
        }),
      )
      .min(1),
    value: count.optional(),
    together: z.string().optional(),
    set: z.strictObject({ of: z.string(), each: z.int().min(1) }).optional(),
  })
  .describe("Pieces that are all alike: how many, and the sizes they may be cut in.");

const sheet = z
  .strictObject({
    id: z.string().min(1),
    name: z.string().optional(),
    width: size,
    height: size,
    stock: count.nullable().optional(),
    cost: count.optional(),
    trim: z
      .strictObject({
        left: ticks.optional(),
        right: ticks.optional(),
        top: ticks.optional(),
        bottom: ticks.optional(),
      })
      .optional(),
    longestCut: size.nullable().optional(),
  })
  .describe("Sheets that are all alike. Without stock there are as many as needed.");

/** What a packing answers. */
export const problem: z.ZodType<Problem> = z
  .strictObject({
    kinds: z.array(kind),
    sheets: z.array(sheet),
    mode,
    aim,
    kerf: ticks.optional(),
    stages: z.int().min(1).nullable().optional(),
    smallestOffcut: z.strictObject({ width: ticks, height: ticks }).optional(),
  })
  .describe("What was asked.");

const node: z.ZodType<CutNode> = z
  .lazy(() => z.discriminatedUnion("type", [piece, offcut, waste, split, stopped]))
  .meta({ id: "part", description: "What becomes of a part of the sheet." });

const window: z.ZodType<Window> = z
  .strictObject({ x: ticks, y: ticks, width: size, height: size, tool: z.string(), tree: node })
  .meta({
    id: "window",
    description: "A rectangle opened in the hidden middle of a piece, with cuts of its own.",
  });

const piece = z
  .strictObject({
    type: z.literal("piece"),
    shares: z
      .array(
        z.strictObject({
          kind: z.string(),
          form: z.int().min(0),
          turned: z.boolean(),
          count: z.int().min(1),
        }),
      )
      .min(1),
    window: window.optional(),
  })
  .describe(
    "A finished piece; count is the number of sheets of the run on which this place yields the kind.",
  );

const offcut = z.strictObject({ type: z.literal("offcut") }).describe("A leftover worth keeping.");
const waste = z.strictObject({ type: z.literal("waste") }).describe("A leftover too small to keep.");

const split = z
  .strictObject({
    type: z.literal("split"),
    axis: z.enum(["x", "y"]),
    parts: z.array(z.strictObject({ size, node })).min(1),
  })
  .describe(
    "Parallel edge-to-edge cuts: x divides the width from left to right, y the height from top to bottom.",
  );

const stopped = z
  .strictObject({
    type: z.literal("stopped"),
    hand: z.enum(["clockwise", "anticlockwise"]),
    x1: ticks,
    x2: ticks,
    y1: ticks,
    y2: ticks,
    top: node,
    right: node,
    bottom: node,
    left: node,
    centre: node,
  })
  .describe("Five blocks round a centre, made by cuts that stop inside the part.");

const dualFeasible: z.ZodType<DualFeasible> = z
  .discriminatedUnion("family", [
    z.strictObject({ family: z.literal("identity") }),
    z.strictObject({ family: z.literal("threshold"), at: size }),
    z.strictObject({ family: z.literal("rounding"), k: z.int().min(1) }),
    z.strictObject({ family: z.literal("step"), at: size }),
    z.strictObject({
      family: z.literal("fitted"),
      values: z.array(
        z.strictObject({ kind: z.string(), extent: size, value: z.int().min(1).max(1_000_000) }),
      ),
    }),
  ])
  .describe("A dual-feasible function, which bounds what extents can lie side by side.");

const certificate: z.ZodType<Certificate> = z
  .discriminatedUnion("type", [
    z.strictObject({
      type: z.literal("weights"),
      sheets: z.array(
        z.strictObject({
          sheet: z.string(),
          x: dualFeasible,
          y: dualFeasible,
          besides: z.array(z.strictObject({ x: dualFeasible, y: dualFeasible })).optional(),
          capacity: z.int().min(1),
        }),
      ),
    }),
    z.strictObject({
      type: z.literal("prices"),
      prices: z.array(z.strictObject({ kind: z.string(), price: z.int().min(1).max(1_000_000_000) })),
    }),
    z.strictObject({ type: z.literal("no-fit"), kind: z.string() }),
  ])
  .describe("Why the bound holds; it can be checked from the plan alone.");

const bound: z.ZodType<Bound> = z
  .discriminatedUnion("aim", [
    z.strictObject({
      aim: z.literal("all"),
      cost: decimal.nullable(),
      sheets: count.nullable(),
      certificate,
    }),
    z.strictObject({ aim: z.literal("fill"), value: decimal, certificate }),
  ])
  .describe("A proven limit: no plan uses fewer sheets. null where the stock is proven too small.");

const kindCount = z.strictObject({ kind: z.string(), count });

/** A packing. */
export const packing: z.ZodType<Packing> = z
  .strictObject({
    version: z.literal(1),
    mode,
    aim,
    outcome: z.enum(["complete", "short", "not-found"]),
    layouts: z.array(
      z
        .strictObject({ sheet: z.string(), run: z.int().min(1), tree: node })
        .describe("One way to cut a sheet."),
    ),
    placed: z.array(kindCount),
    missing: z.array(kindCount),
    sheets: count,
    cost: decimal,
    value: decimal,
    bound,
    proven: z.boolean(),
    search: z.strictObject({
      effort,
      seed: z.int().min(0),
      lp: z.string(),
      starts: count,
      steps: count,
      work: count,
      ended: z.enum(["finished", "proven", "cancelled"]),
    }),
  })
  .describe("The answer: layouts, what they give, what is missing, and how good it is.");

/** The cuts of a layout in working order. */
export const cutOrder: z.ZodType<CutOrder> = z
  .strictObject({
    parts: z.array(
      z.strictObject({
        id: count,
        what: z.enum(["sheet", "part", "piece", "offcut", "waste", "trim"]),
        path: z.array(count).exactOptional(),
        x: ticks,
        y: ticks,
        width: size,
        height: size,
      }),
    ),
    cuts: z.array(
      z.strictObject({
        number: z.int().min(1),
        part: count,
        edge: z.enum(["left", "right", "top", "bottom"]),
        distance: ticks,
        held: count,
        off: count.nullable(),
        line: z.strictObject({ x1: ticks, y1: ticks, x2: ticks, y2: ticks }),
        purpose: z.enum(["trim", "cut"]),
        newSetting: z.boolean(),
        tooNarrow: z.boolean(),
      }),
    ),
    settings: count,
  })
  .describe(
    "The cuts of one layout in working order, in coordinates of the whole sheet from its top left corner.",
  );

/** The unit of all lengths in a plan's file, and the one that drawings and lists show. */
export const units = z.strictObject({
  length: z.literal("tick"),
  ticksPerMillimetre: z.literal(1600),
  ticksPerInch: z.literal(40640),
  shown: z.enum(["in", "mm"]).describe("The unit of the drawings and lists."),
});

/** The seal of a plan's file. */
export const sealed = sha.describe(
  "SHA-256 of this file with the seal empty; it tells whether the file was changed since.",
);
