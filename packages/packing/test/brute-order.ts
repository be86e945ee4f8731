/**
 * The best order of cuts by trying every one: parts are cut one by one as they lie, equal strips are not treated alike,
 * and nothing is left out. For a handful of cuts only.
 */
import type { CutNode, Split } from "../src/model.js";

interface Strip {
  readonly axis: "x" | "y";
  readonly sizes: readonly number[];
  /** What is left over at the end, gone with one kerf. */
  readonly over: number;
  readonly below: readonly (number | undefined)[];
}

/** From, to (the part after the last) and whether the remainder is still there; absent while it is not cut free. */
type Left = readonly [number, number, boolean] | undefined;

export interface Cost {
  readonly narrowHolds: number;
  readonly settings: number;
  readonly quarterTurns: number;
}

function isLess(a: Cost, b: Cost): boolean {
  if (a.narrowHolds !== b.narrowHolds) return a.narrowHolds < b.narrowHolds;
  return a.settings !== b.settings ? a.settings < b.settings : a.quarterTurns < b.quarterTurns;
}

function strips(tree: CutNode, width: number, height: number, kerf: number): Strip[] {
  const found: Strip[] = [];
  const add = (node: CutNode, w: number, h: number): number | undefined => {
    if (node.type !== "split") return undefined;
    const { axis } = node;
    // Splits of one axis inside each other are one level of cuts, unless the inner one has a remainder of its own.
    const flat = (outer: Split): Split["parts"] =>
      outer.parts.flatMap((part) => {
        const inner = part.node;
        if (inner.type !== "split" || inner.axis !== axis) return [part];
        const used = inner.parts.reduce((sum, { size }) => sum + size + kerf, -kerf);
        return used === part.size ? flat(inner) : [part];
      });
    const parts = flat(node);
    const over = (axis === "x" ? w : h) - parts.reduce((sum, { size }) => sum + size + kerf, -kerf);
    const below = parts.map(({ size, node: child }) =>
      axis === "x" ? add(child, size, h) : add(child, w, size),
    );
    const only = below[0];
    if (parts.length === 1 && over === 0) return only;
    return found.push({ axis, sizes: parts.map(({ size }) => size), over, below }) - 1;
  };
  add(tree, width, height);
  return found;
}

/** How many cuts a tree takes. */
export function countCuts(tree: CutNode, width: number, height: number, kerf: number): number {
  return strips(tree, width, height, kerf).reduce(
    (sum, { sizes, over }) => sum + sizes.length - (over > 0 ? 0 : 1),
    0,
  );
}

/** The least cost of any order that takes one end off with every cut: narrow holds, then settings, then quarter turns. */
export function bruteOrder(
  tree: CutNode,
  width: number,
  height: number,
  kerf: number,
  narrowestHold: number,
): Cost {
  const all = strips(tree, width, height, kerf);
  const whole = (index: number): Left => [0, all[index]!.sizes.length, all[index]!.over > 0];
  const known = new Map<string, Cost>();
  const best = (left: readonly Left[], fence: number | undefined, blade: string): Cost => {
    const key = JSON.stringify([left, fence, blade]);
    const before = known.get(key);
    if (before !== undefined) return before;
    let least: Cost | undefined;
    for (const [index, state] of left.entries()) {
      if (state === undefined) continue;
      const { axis, sizes, over, below } = all[index]!;
      const [from, to, untrimmed] = state;
      const widthOf = (a: number, b: number): number =>
        sizes.slice(a, b).reduce((sum, size) => sum + size, kerf * (b - a - 1));
      const tries: {
        readonly after: readonly [number, number, boolean];
        readonly held: number;
        readonly off?: number;
      }[] = [];
      if (to - from > 1) {
        const rest = widthOf(from + 1, to) + (untrimmed ? over : 0);
        const first = { after: [from + 1, to, untrimmed], off: from } as const;
        tries.push({ ...first, held: sizes[from]! }, { ...first, held: rest });
        const last = { after: [from, to - 1, false], off: to - 1 } as const;
        if (!untrimmed)
          tries.push({ ...last, held: sizes[to - 1]! }, { ...last, held: widthOf(from, to - 1) });
      }
      if (untrimmed) tries.push({ after: [from, to, false], held: widthOf(from, to) });
      for (const { after, held, off } of tries) {
        const next = [...left];
        next[index] = after;
        const free = [off, after[1] - after[0] === 1 && !after[2] ? after[0] : undefined];
        for (const part of free) {
          const child = part === undefined ? undefined : below[part];
          if (child !== undefined) next[child] = whole(child);
        }
        const rest = best(next, held, axis);
        const cost = {
          narrowHolds: rest.narrowHolds + (held < narrowestHold ? 1 : 0),
          settings: rest.settings + (held === fence ? 0 : 1),
          quarterTurns: rest.quarterTurns + (blade === "" || blade === axis ? 0 : 1),
        };
        if (least === undefined || isLess(cost, least)) least = cost;
      }
    }
    const found = least ?? { narrowHolds: 0, settings: 0, quarterTurns: 0 };
    known.set(key, found);
    return found;
  };
  if (all.length === 0) return best([], undefined, "");
  // The root comes last, since its parts are listed before it.
  return best(
    all.map((_, index) => (index === all.length - 1 ? whole(index) : undefined)),
    undefined,
    "",
  );
}
