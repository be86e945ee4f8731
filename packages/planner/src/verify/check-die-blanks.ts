import type { DieCut, DieSize, Layer, Piece, Project } from "@sheetwright/cards";
import { formatSize, type Size, type Ticks } from "@sheetwright/measure";
import { boxOf, boxOfAll, outlineOf } from "@sheetwright/shapes";
import type { Plan } from "../plan-model.js";
import type { PlanReport } from "./plan-finding.js";
import type { ProjectFacts } from "./project-facts.js";
import { MOST_SHAPES } from "./read-cuts.js";

/**
 * Checks that every blank that the plan cuts holds the shape that is cut from it, with its margin, and every strip its shapes
 * with a margin at its ends and between them, from the shape's parameters and outlines: how cards reckons blanks is not asked.
 */
export function checkDieBlanks(plan: Plan, facts: ProjectFacts, report: PlanReport): void {
  const cuts = new Map(dieCutsOf(facts.project).map((cut) => [cut.path, cut]));
  const say = (size: Size) => formatSize(size.width, size.height, { unit: facts.project.units });
  for (const [g, { problem, strips = [] }] of plan.groups.entries()) {
    for (const [k, kind] of problem.kinds.entries()) {
      const strip = strips.find((one) => one.kind === kind.id);
      const piece = facts.pieces.get(strip?.piece ?? kind.id);
      // A strip of so many is refused already, and its length may be no length at all.
      if (piece?.die === undefined || (strip?.holds ?? 1) > MOST_SHAPES) continue;
      const least = leastBlank(piece, cuts, facts);
      if (least === null) continue;
      for (const [f, { width, height }] of kind.forms.entries()) {
        const { shape, margin } = least;
        const [holds, along] = [strip?.holds ?? 1, strip?.along[f]];
        // So many shapes with a margin more than there are of them, of which the blank has two.
        const length = (side: "width" | "height"): number =>
          side === along
            ? holds * shape[side] + (holds + 1) * Math.floor(margin[side] / 2)
            : shape[side] + margin[side];
        const needed = { width: length("width"), height: length("height") };
        if (width >= needed.width && height >= needed.height) continue;
        const path = `groups[${g}].problem.kinds[${k}].forms[${f}]`;
        const found = say({ width, height });
        if (strip === undefined) {
          const message = `The blank of the ${piece.label} is ${found}, and its shape takes ${say(needed)} with its margin.`;
          report("die-blank-too-small", path, message);
        } else {
          const message = `The strip for ${holds} of the ${piece.label} is ${found}, and they take ${say(needed)} with their margins.`;
          report("strip-too-small", path, message);
        }
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

/** A shape and what its blank has more than it, in all. */
interface LeastBlank {
  readonly shape: Size;
  readonly margin: Size;
}

/** What a blank must hold; `null` where the piece is no layer of the project. */
function leastBlank(piece: Piece, cuts: ReadonlyMap<string, DieCut>, facts: ProjectFacts): LeastBlank | null {
  const [, path = piece.path, part] = /^(.*)\.(mats\[\d+\]|shadow)$/.exec(piece.path) ?? [];
  const cut = cuts.get(path);
  if (cut === undefined) return null;
  if (part === "shadow") {
    const left = boxOnCard(piece, facts);
    const margin = 2 * (cut.shadow?.margin ?? 0);
    return left === null ? null : { shape: left, margin: { width: margin, height: margin } };
  }
  const size = part === undefined ? cut : matSize(piece, cut, Number(/\d+/.exec(part)?.[0]));
  if (size === null) return null;
  const margin = marginOf(size);
  // Without a die only what is left after a straight cut is cut at all.
  const box = piece.die?.name === null ? boxOnCard(piece, facts) : wholeBox(size);
  if (box === null) return null;
  const isTurned = size !== cut && box.width !== piece.die?.cut.width;
  const turned = ({ width, height }: Size): Size =>
    isTurned ? { width: height, height: width } : { width, height };
  return { shape: turned(box), margin: turned(margin) };
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
