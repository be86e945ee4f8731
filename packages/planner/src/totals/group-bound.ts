import type { Bound } from "@sheetwright/packing";
import type { PaperGroup } from "../plan-model.js";

/**
 * What is proven of every plan of a group: the bound of its packing, or, where die blanks may be cut in strips, that of all
 * ways to cut them.
 *
 * @example
 * const { project } = cards.readProject(`
 * sheetwright: 1
 * title: Sixteen moons
 * copies: 16
 * papers: { night: { cardstock: us-letter }, copper: { glitter: us-letter } }
 * dies: { moon: { shape: circle, size: 1 3/4 } }
 * cards: [{ name: Moon, format: us-a2, base: night, front: [{ die: moon, paper: copper }] }]
 * `);
 * plan(project, { effort: "quick" }).groups.map((group) => groupBound(group).sheets) // => [8, 1]
 */
export function groupBound({ packing, endless }: Pick<PaperGroup, "packing" | "endless">): Bound {
  return (endless?.packing ?? packing).bound;
}
