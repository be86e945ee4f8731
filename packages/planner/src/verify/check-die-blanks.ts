import type { DieCut, DieSize, Layer, Piece, Project } from "@sheetwright/cards";
import { formatSize, type Size, type Ticks } from "@sheetwright/measure";
import { boxOf, boxOfAll, outlineOf } from "@sheetwright/shapes";
import type { Plan } from "../plan-model.js";
import type { PlanReport } from "./plan-finding.js";
import type { ProjectFacts } from "./project-facts.js";

/**
 * Checks that every blank that the plan cuts holds the shape that is cut from it, with its margin, from the shape's
 * parameters and outlines: how cards reckons blanks is not asked.
 */
export function checkDieBlanks(plan: Plan, facts: ProjectFacts, report: PlanReport): void {
  const cuts = new Map(dieCutsOf(facts.project).map((cut) => [cut.path, cut]));
  for (const [g, { problem }] of plan.groups.entries()) {
    for (const [k, kind] of problem.kinds.entries()) {
      const piece = facts.pieces.get(kind.id);
      if (piece?.die === undefined) continue;
      const least = leastBlank(piece, cuts, facts);
      if (least === null) continue;
      for (const [f, { width, height }] of kind.forms.entries()) {
        if (width >= least.width && height >= least.height) continue;
        const say = (size: Size) => formatSize(size.width, size.height, { unit: facts.project.units });
        const message = `The blank of the ${piece.label} is ${say({ width, height })}, and its shape takes ${say(least)} with its margin.`;
        report("die-blank-too-small", `groups[${g}].problem.kinds[${k}].forms[${f}]`, message);
      }
    }
  }
}

function dieCutsOf({ cards }: Project): readonly DieCut[] {
  return cards.flatMap(({ surfaces }) => surfaces.flatMap(({ layers }) => layers.flatMap(dieCutsIn)));
}

function dieCutsIn(layer: Layer): readonly DieCut[] {
  return [...(layer.kind === "die" ? [layer] : []), ...layer.layers.flatMap(dieCutsIn)];
}

/** What a blank must hold; `null` where the piece is no layer of the project. */
function leastBlank(piece: Piece, cuts: ReadonlyMap<string, DieCut>, facts: ProjectFacts): Size | null {
  const [, path = piece.path, part] = /^(.*)\.(mats\[\d+\]|shadow)$/.exec(piece.path) ?? [];
  const cut = cuts.get(path);
  if (cut === undefined) return null;
  if (part === "shadow") {
    const left = boxOnCard(piece, facts);
    const margin = 2 * (cut.shadow?.margin ?? 0);
    return left === null ? null : { width: left.width + margin, height: left.height + margin };
  }
  const size = part === undefined ? cut : matSize(piece, cut, Number(/\d+/.exec(part)?.[0]));
  if (size === null) return null;
  const margin = marginOf(size);
  // Without a die only what is left after a straight cut is cut at all.
  const box = piece.die?.name === null ? boxOnCard(piece, facts) : wholeBox(size);
  if (box === null) return null;
  const isTurned = size !== cut && box.width !== piece.die?.cut.width;
  const [width, height] = isTurned ? [box.height, box.width] : [box.width, box.height];
  return {
    width: width + (isTurned ? margin.height : margin.width),
    height: height + (isTurned ? margin.width : margin.height),
  };
}

/** The size of a die that a mat is cut by, by what it cuts, upright or turned. */
function matSize({ die }: Piece, { mats = [] }: DieCut, index: number): DieSize | null {
  const sizes = mats[index]?.sizes ?? [];
  const isCut = (width: Ticks | undefined, height: Ticks | undefined) =>
    sizes.find((size) => {
      const box = wholeBox(size);
      return box.width === width && box.height === height;
    });
  return isCut(die?.cut.width, die?.cut.height) ?? isCut(die?.cut.height, die?.cut.width) ?? null;
}

/** What a blank has more than its shape, in all. */
function marginOf({ cut, blank }: DieSize): Size {
  return { width: blank.width - cut.width, height: blank.height - cut.height };
}

function wholeBox({ shape, cut }: DieSize): Size {
  return shape === undefined ? cut : boxOf(outlineOf(shape));
}

function boxOnCard({ id }: Piece, { expansion }: ProjectFacts): Size | null {
  const layer = expansion.cards.flatMap(({ layers }) => layers).find(({ piece }) => piece === id);
  return layer?.outline === undefined ? null : boxOfAll(layer.outline);
}
