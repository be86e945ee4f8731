import type { Packing, Problem } from "@sheetwright/packing";
import { findLeftovers } from "./find-leftovers.js";

/**
 * The area of all copies that a packing gives of each kind, in square units, each by the form that it is really cut in.
 *
 * @param isOf only what comes from these sheets (default: all).
 */
export function kindAreas(
  { kinds }: Problem,
  { layouts }: Pick<Packing, "layouts">,
  isOf: (sheet: string) => boolean = () => true,
): ReadonlyMap<string, bigint> {
  const forms = new Map(kinds.map((kind) => [kind.id, kind.forms]));
  const areas = new Map<string, bigint>();
  for (const { sheet, tree } of layouts) {
    if (!isOf(sheet)) continue;
    const ahead = [tree];
    for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
      if (node.type === "split") ahead.push(...node.parts.map((part) => part.node));
      if (node.type !== "piece") continue;
      for (const { kind, form, count } of node.shares) {
        const { width, height } = forms.get(kind)![form]!;
        areas.set(kind, (areas.get(kind) ?? 0n) + BigInt(width) * BigInt(height) * BigInt(count));
      }
    }
  }
  return areas;
}

/** The area of all sheets that are cut into. */
export function sheetsArea(
  { sheets }: Problem,
  { layouts }: Pick<Packing, "layouts">,
  isOf: (sheet: string) => boolean = () => true,
): bigint {
  const areas = new Map(sheets.map(({ id, width, height }) => [id, BigInt(width) * BigInt(height)]));
  return sumOf(
    layouts.filter(({ sheet }) => isOf(sheet)).map(({ sheet, run }) => BigInt(run) * areas.get(sheet)!),
  );
}

/** The area of all leftovers that are worth keeping. */
export function keptArea(
  problem: Problem,
  packing: Pick<Packing, "layouts">,
  isOf: (sheet: string) => boolean = () => true,
): bigint {
  const kept = findLeftovers(problem, packing, isOf).filter(({ keep }) => keep);
  return sumOf(kept.map(({ width, height, count }) => BigInt(width) * BigInt(height) * BigInt(count)));
}

/** A sum of areas. */
export function sumOf(areas: Iterable<bigint>): bigint {
  let sum = 0n;
  for (const area of areas) sum += area;
  return sum;
}
