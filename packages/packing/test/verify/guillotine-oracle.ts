import type { KindPrice, Problem, Sheet } from "../../src/model.js";
import { lies, usableSize } from "../identity-bound.js";

/** What edge-to-edge cuts get from a sheet by prices, by the words of {@link Certificate}: from the whole down to parts. */
export function guillotineOracle(problem: Problem, prices: readonly KindPrice[], sheet: Sheet): number {
  const kerf = problem.kerf ?? 0;
  const kinds = problem.kinds.flatMap((kind) => {
    const price = prices.find((entry) => entry.kind === kind.id)?.price;
    if (price === undefined || kind.quantity === 0) return [];
    const ways = kind.forms
      .flatMap((form) => lies(form, sheet))
      .map(([w, h]) => [w + kerf, h + kerf] as const);
    return [{ price, ways, quantity: kind.quantity }];
  });
  const usable = usableSize(sheet);
  const [width, height] = [usable.width + kerf, usable.height + kerf];
  const sumsAlong = (axis: 0 | 1, room: number) => {
    let sums = new Set([0]);
    for (const { ways, quantity } of kinds) {
      for (let copy = 0; copy < Math.min(quantity ?? room, room); copy += 1) {
        const more = [...sums].flatMap((sum) => ways.map((way) => sum + (way[axis] ?? 0)));
        const next = new Set([...sums, ...more.filter((sum) => sum <= room)]);
        if (next.size === sums.size) break;
        sums = next;
      }
    }
    return [...sums].sort((a, b) => a - b);
  };
  const [xs, ys] = [sumsAlong(0, width), sumsAlong(1, height)];
  const down = (sums: readonly number[], value: number) => sums.findLast((sum) => sum <= value) ?? 0;
  const known = new Map<string, number>();
  const value = (w: number, h: number): number => {
    if (w === 0 || h === 0) return 0;
    const key = `${w} ${h}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let most = 0;
    for (const { price, ways } of kinds)
      if (ways.some(([a, b]) => a <= w && b <= h)) most = Math.max(most, price);
    for (const x of xs) if (x > 0 && x < w) most = Math.max(most, value(x, h) + value(down(xs, w - x), h));
    for (const y of ys) if (y > 0 && y < h) most = Math.max(most, value(w, y) + value(w, down(ys, h - y)));
    known.set(key, most);
    return most;
  };
  return value(down(xs, width), down(ys, height));
}
