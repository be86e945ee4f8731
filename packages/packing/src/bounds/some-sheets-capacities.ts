import type { CompiledKind, CompiledSheet } from "../search/compiled-problem.js";

/** With so many sheets every choice of some is looked at, with more the largest ones, in so many steps at most. */
const FEW_SHEETS = 4;
const MOST_STEPS = 6;

/** What a sheet carries that is to count is multiplied by so much, unless that passes 2^48: what others carry is next to nothing. */
const HEAVY = 1_000_000;
const MOST_CAPACITY = 0x1_0000 * 0x1_0000_0000;

/**
 * Capacities by which only some sheets count, where some kinds can be cut from no others: what these kinds take must come
 * from those sheets, however many others there are.
 */
export function someSheetsCapacities(
  kinds: readonly CompiledKind[],
  sheets: readonly CompiledSheet[],
  areas: readonly number[],
): readonly (readonly number[])[] {
  const places = kinds.map((kind) =>
    sheets.flatMap((sheet, s) => ((kind.lays[sheet.index]?.length ?? 0) > 0 ? [s] : [])),
  );
  const bySize = sheets.map((_, s) => s).sort((a, b) => (areas[b] ?? 0) - (areas[a] ?? 0) || a - b);
  const counts = Array.from({ length: MOST_STEPS }, (_, step) =>
    Math.max(1, Math.floor(((step + 1) * sheets.length) / (MOST_STEPS + 1))),
  );
  const choices =
    sheets.length <= FEW_SHEETS
      ? Array.from({ length: (1 << sheets.length) - 1 }, (_, bits) =>
          bySize.filter((_, place) => ((bits >> place) & 1) === 1),
        )
      : [...new Set(counts)].map((count) => bySize.slice(0, count));
  const largest = Math.max(...areas);
  const factor = largest * HEAVY <= MOST_CAPACITY ? HEAVY : 1;
  return choices
    .filter((chosen) => places.some((own) => own.every((s) => chosen.includes(s))))
    .map((chosen) => areas.map((area, s) => (chosen.includes(s) ? area * factor : 1)));
}
