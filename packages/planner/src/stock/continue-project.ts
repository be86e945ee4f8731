import { type CutAlready, expandProject, type Piece, type Project } from "@sheetwright/cards";
import type { Plan } from "../plan-model.js";
import type { LayoutProgress } from "./layout-progress.js";
import { piecesCut } from "./pieces-cut.js";

/** A project without what an earlier plan of it cut. */
export interface ContinuedProject {
  readonly project: Project;
  /** Labels of pieces that were cut and that the project has no more, or has otherwise; they do not count as cut. */
  readonly changed: readonly string[];
}

/**
 * Takes from a project what was cut by an earlier plan of it, so that a plan of the rest can be made: after a spoiled sheet,
 * or with other paper. A piece counts as cut where the project still asks for the same one. Throws a RangeError for what is
 * not in the plan, and a ProjectError where the project contradicts itself.
 *
 * @param earlier the plan, and what it was told to be cut already when it was made.
 * @param done what was done of it, from its beginning.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: One card
 * papers: { night: { cardstock: us-letter, count: 5 } }
 * cards: [{ name: Plain, size: 8 x 8, fold: flat, base: night, copies: 3 }]
 * `);
 * const found = plan(project);
 * const done = [{ group: 0, layout: 0, from: 0, to: 2, spoiled: 0 }];
 * const rest = continueProject(project, { plan: found, project }, done);
 * rest.project.cutAlready // => [{ piece: "1a", count: 2 }]
 * plan(rest.project).use[0].used // => 1
 * plan(rest.project).complete // => [{ card: 1, wanted: 3, complete: 3 }]
 */
export function continueProject(
  project: Project,
  earlier: { readonly plan: Pick<Plan, "groups" | "pieces">; readonly project: Pick<Project, "cutAlready"> },
  done: readonly LayoutProgress[],
): ContinuedProject {
  const counts = piecesCut(earlier.plan, done);
  const before = new Map((earlier.project.cutAlready ?? []).map(({ piece, count }) => [piece, count]));
  const { cutAlready: _, ...whole } = project;
  const asked = new Map(expandProject(whole).pieces.map((piece) => [piece.id, piece]));
  const cutAlready: CutAlready[] = [];
  const changed: string[] = [];
  for (const piece of earlier.plan.pieces) {
    const count = (counts.get(piece.id) ?? 0) + (before.get(piece.id) ?? 0);
    if (count === 0) continue;
    const now = asked.get(piece.id);
    if (now !== undefined && sameToCut(now) === sameToCut(piece)) cutAlready.push({ piece: piece.id, count });
    else changed.push(piece.label);
  }
  return { project: cutAlready.length === 0 ? whole : { ...whole, cutAlready }, changed };
}

/** All that makes a piece what it is once it is cut. */
function sameToCut({ label, card, faces, forms, grainNeed, die }: Piece): string {
  return JSON.stringify(inOrder({ label, card, faces, forms, grainNeed, die }));
}

/** Data with the keys of every object in one order: those of a plan that was read may stand in another. */
function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return Object.fromEntries(
    entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, inner]) => [key, inOrder(inner)]),
  );
}
