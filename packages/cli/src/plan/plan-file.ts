import { z } from "zod";
import { count, cutOrder, packing, problem, sealed, sha, ticks, units } from "./packing-schema.js";

/**
 * The file `plan.json`, version 1: the problem, the answer, the cuts in working order, and the files written beside it.
 * The published JSON Schema is made from this. Every field is listed; a change of any makes a new version.
 */
export const planFile = z
  .strictObject({
    sheetwright: z.literal("plan"),
    version: z.literal(1),
    seal: sealed,
    madeBy: z.string().describe("The program and its version."),
    units,
    hold: ticks.describe("The narrowest part the tool holds firmly; the order of the cuts goes by it."),
    problem,
    packing,
    cutOrders: z.array(cutOrder).describe("One entry a layout, in the order of the layouts."),
    files: z
      .array(
        z.strictObject({
          name: z.string(),
          what: z.enum(["drawing", "cut list", "cutter file", "overview"]),
          layout: count.nullable().describe("Index of its layout, null for the overview."),
          sha256: sha,
        }),
      )
      .describe("The files written beside this one, with what they held when they were written."),
  })
  .meta({
    title: "Sheetwright plan, version 1",
    description:
      "How a list of pieces is cut from sheets. Lengths are whole ticks: 1600 to a millimetre, 40640 to an inch.",
  });

/** What `plan.json` holds. */
export type PlanFile = z.infer<typeof planFile>;

/** The published JSON Schema (draft 2020-12) of `plan.json`, made from {@link planFile}. */
export function planFileJsonSchema(): unknown {
  return z.toJSONSchema(planFile);
}
