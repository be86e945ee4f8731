import type { Problem } from "@sheetwright/packing";
import type { Instance, Question } from "./family.js";

/** An instance as a problem: edge-to-edge cuts in any order, no kerf. Kinds and sheets are named by their numbers from 1. */
export function problemOf({ sheets, pieces }: Instance, question: Question, mayTurn: boolean): Problem {
  return {
    kinds: pieces.map(({ width, height, quantity, value }, i) => ({
      id: String(i + 1),
      quantity: question === "unlimited" ? null : quantity,
      forms: [{ width, height, turns: mayTurn ? "both" : "upright" }],
      ...(question === "value" ? { value } : {}),
    })),
    sheets: sheets.map(({ width, height, stock }, i) => ({ id: String(i + 1), width, height, stock })),
    mode: "guillotine",
    aim: question === "sheets" || question === "sizes" ? "all" : "fill",
  };
}
