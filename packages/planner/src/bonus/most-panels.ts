import type { Paper, PaperDesign, Project } from "@sheetwright/cards";
import { type PackAsyncOptions, type Problem, packAsync } from "@sheetwright/packing";
import { groupProblem } from "../group/group-problem.js";
import type { PlanAsyncOptions } from "../plan.js";
import { proven } from "../search/group-search.js";
import type { PanelWish } from "./bonus.js";

/**
 * How many panels of one size the sheets and offcuts of one design give, as far as a search finds them. Patterned paper is
 * not turned; the grain is of no matter.
 */
export async function mostPanels(
  project: Project,
  paper: Paper,
  design: PaperDesign,
  panel: PanelWish,
  { effort = "quick", seed, signal, pause, packer = packAsync }: PlanAsyncOptions,
): Promise<{ readonly count: number; readonly cancelled: boolean }> {
  const { problem } = groupProblem({ designs: [{ paper, design }], pieces: [] }, project, new Set());
  const sheets = problem.sheets.filter(({ stock }) => stock !== 0);
  if (sheets.length === 0) return { count: 0, cancelled: false };
  const { width, height } = panel;
  const turns = panel.mayTurn && design.front.pattern === "none" ? "both" : "upright";
  const filled: Problem = {
    ...problem,
    kinds: [{ id: "panel", name: panel.name, quantity: null, forms: [{ width, height, turns }] }],
    sheets,
    aim: "fill",
  };
  const options: PackAsyncOptions = {
    effort,
    seed,
    signal,
    pause,
    narrowestHold: project.trimmer.narrowestHold,
  };
  const packing = proven(filled, await packer(filled, options));
  return { count: packing.placed[0]?.count ?? 0, cancelled: packing.search.ended === "cancelled" };
}
