import type { Plan } from "@sheetwright/planner";
import { z } from "zod";
import {
  count,
  cutOrder as cutOrderAnywhere,
  effort,
  packing as packingAnywhere,
  problem as problemAnywhere,
  sealed,
  sha,
  size,
  ticks,
  units,
} from "../plan/packing-schema.js";
import { card, item, noPaper, number, paper, piece } from "./expansion-schema.js";
import { project } from "./project-schema.js";

// Named, so that the published schema holds each of them once.
const problem = problemAnywhere.meta({ id: "problem", description: "What is asked of a group of papers." });
const packing = packingAnywhere.meta({
  id: "packing",
  description: "The answer: layouts, what they give, what is missing.",
});
const cutOrder = cutOrderAnywhere.meta({
  id: "cutOrder",
  description: "The cuts of one layout in working order.",
});

const group = z
  .strictObject({
    designs: z.array(z.string()).min(1),
    problem,
    packing,
    sheets: z.array(
      z.strictObject({
        sheet: z.string(),
        design: z.string(),
        offcut: number.nullable().describe("Its place among the design's offcuts; null: a whole sheet."),
      }),
    ),
    bags: number
      .optional()
      .describe(
        "Bags that each hold these sheets: problem and packing are those of one. Absent: they are for all.",
      ),
    strips: z
      .array(
        z
          .strictObject({
            kind: z.string(),
            piece: z.string().describe("The die blank that it stands for several of."),
            holds: number.describe("How many shapes it holds."),
            along: z
              .array(z.enum(["width", "height"]))
              .min(1)
              .describe("For each form of the kind, the side that its shapes lie side by side along."),
          })
          .describe("A kind that is a strip: several shapes of a piece side by side."),
      )
      .optional()
      .describe("The kinds that are strips; absent where every die blank is cut by itself."),
    endless: z
      .strictObject({ problem, packing })
      .optional()
      .describe(
        "What bounds all ways to cut die blanks in strips: the same with each as small as its share of a strip without end.",
      ),
  })
  .describe("Papers planned together, with the packing of all pieces that come from them.");

const shortage = z
  .strictObject({
    group: count,
    outcome: z.enum(["short", "not-found"]),
    pieces: z.array(z.strictObject({ piece: z.string(), missing: number })),
    wouldHelp: z.array(z.strictObject({ design: z.string(), more: number })),
    atLeast: count.nullable(),
    withMore: z.strictObject({ problem, packing }).nullable(),
  })
  .describe("What is missing from a group of papers, and what would help.");

const rollCut = z
  .strictObject({
    rolls: number,
    lengths: z.array(z.strictObject({ length: size, count: number })).min(1),
  })
  .meta({ id: "rollCut", description: "Rolls that are cut alike, each into these lengths." });

const itemUse = z
  .strictObject({
    item: z.string(),
    onHand: count.nullable().describe("Rolls, or single ones; null: as many as needed."),
    needed: count.describe("What all copies take, of all bags: the fewest that were found."),
    atLeast: count.describe("They take no fewer; proven."),
    used: count.describe(
      "What is taken: all that is needed, or where that is short what complete copies take.",
    ),
    bags: number.optional().describe("Bags that each hold the rolls that are cut; absent: they are for all."),
    cuts: z.array(rollCut).optional().describe("How the rolls that are used are cut, of one bag."),
    withMore: z
      .array(rollCut)
      .optional()
      .describe("How all that are needed would be cut, of one bag; absent where the item is not short."),
  })
  .describe("What the plan takes of a ribbon, a tape or an extra on hand.");

const plan: z.ZodType<Plan> = z
  .strictObject({
    version: z.literal(1),
    title: z.string(),
    units: z.enum(["in", "mm"]),
    papers: z.array(paper),
    cards: z.array(card),
    pieces: z.array(piece),
    items: z.array(item),
    enough: z.enum(["yes", "no", "not-found"]),
    groups: z.array(group),
    noPaper: z.array(noPaper),
    complete: z.array(
      z.strictObject({
        card: number,
        wanted: count,
        complete: count,
        spares: z
          .strictObject({ wished: number, made: count })
          .optional()
          .describe("The wish for copies more, and how many of them are planned; absent without one."),
      }),
    ),
    shortages: z.array(shortage),
    use: z.array(
      z.strictObject({ design: z.string(), used: count, left: count.nullable(), offcutsUsed: count }),
    ),
    itemUse: z
      .array(itemUse)
      .optional()
      .describe("What it takes of each item that the project names; absent where it names none."),
    leftovers: z.array(
      z.strictObject({ design: z.string(), width: size, height: size, count: number, keep: z.boolean() }),
    ),
    folds: z.array(
      z.strictObject({ piece: z.string(), along: count, across: count, unknown: count, none: count }),
    ),
    cost: z.string().nullable(),
    costs: z
      .strictObject({
        currency: z.string().nullable(),
        copies: count,
        minutes: z.string().nullable(),
        work: z.string().nullable(),
        total: z.string().nullable(),
      })
      .optional()
      .describe("What the work costs, and that with the sheets; absent where the project has no rates."),
    search: z.strictObject({ effort, seed: count, lp: z.string(), cancelled: z.boolean() }),
  })
  .describe("The plan: the project worked out, the layouts, what is missing and what is left.");

/**
 * The file `plan.json` of a project, version 1: the project, its plan, the cuts in working order, and the files written
 * beside it. The published JSON Schema is made from this. Every field is listed; a change of any makes a new version.
 */
export const projectPlanFile = z
  .strictObject({
    sheetwright: z.literal("project-plan"),
    version: z.literal(1),
    seal: sealed,
    madeBy: z.string().describe("The program and its version."),
    title: z.string().describe("The project's title."),
    units,
    hold: ticks.describe("The narrowest part the tool holds firmly; the order of the cuts goes by it."),
    stock: z
      .strictObject({
        revision: count,
        after: sha
          .optional()
          .describe("The plan.json of the plan that this one goes on from; absent without one."),
      })
      .optional()
      .describe(
        "The stock that counts and offcuts were taken from; absent where they are the project's own.",
      ),
    project,
    plan,
    cutOrders: z.array(z.array(cutOrder)).describe("By group and layout."),
    files: z
      .array(
        z.strictObject({
          name: z.string(),
          what: z.enum([
            "drawing",
            "cut list",
            "cutter file",
            "overview",
            "card",
            "measurements",
            "measurements as text",
            "packing list",
          ]),
          group: count.nullable().describe("Index of the group of papers of a layout's file, else null."),
          layout: count.nullable().describe("Index of the layout in that group, else null."),
          card: number.nullable().describe("The number of the card of a card's file, else null."),
          sha256: sha,
        }),
      )
      .describe("The files written beside this one, with what they held when they were written."),
  })
  .meta({
    title: "Sheetwright plan of a project, version 1",
    description:
      "How a project of cards is cut from its papers. Lengths are whole ticks: 1600 to a millimetre, 40640 to an inch.",
  });

/** What `plan.json` of a project holds. */
export type ProjectPlanFile = z.infer<typeof projectPlanFile>;

/** The published JSON Schema (draft 2020-12) of a project's `plan.json`, made from {@link projectPlanFile}. */
export function projectPlanFileJsonSchema(): unknown {
  return z.toJSONSchema(projectPlanFile);
}
