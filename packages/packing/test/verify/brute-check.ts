/**
 * A second verifier, for small sheets: it paints every part on a grid, tick by tick, and says only yes or no. It is as
 * short and as slow as can be, and has nothing in common with the first one but the rules.
 */
import type { CutNode, DualFeasible, Packing, Problem, Rectangle, Sheet } from "../../src/model.js";
import { boundOf, costOf, isStockShort, lies, usableSize, usefulSheets, worthOf } from "../identity-bound.js";
import type { ValidPlan } from "../valid-plan.js";
import { paperMeasure } from "./paper-measure.js";

/** Whether a packing is right for its (well-formed) problem. Whatever cannot be read is wrong. */
export function isRight({ problem, packing }: ValidPlan): boolean {
  try {
    judge(problem, packing);
    return true;
  } catch (error) {
    if (error instanceof Wrong || error instanceof TypeError) return false;
    throw error;
  }
}

class Wrong extends Error {}

function must(isSo: boolean): asserts isSo {
  if (!isSo) throw new Wrong();
}

const isCount = (value: unknown, least: number): value is number =>
  Number.isSafeInteger(value) && (value as number) >= least;

/** Levels of parallel cuts on the longest way down; a window counts on its own. */
export function levelsOf(node: CutNode, axis: "x" | "y" | null = null): number {
  if (node.type === "split") {
    const own = node.axis === axis ? 0 : 1;
    return own + Math.max(0, ...node.parts.map((part) => levelsOf(part.node, node.axis)));
  }
  if (node.type !== "stopped") return 0;
  return 1 + Math.max(...blocksOf(node).map((block) => levelsOf(block)));
}

const blocksOf = (node: CutNode & { type: "stopped" }): readonly CutNode[] => [
  node.top,
  node.right,
  node.bottom,
  node.left,
  node.centre,
];

/** Strips, then pieces, then one piece a trim. */
export function isShelf(root: CutNode): boolean {
  const flat = (node: CutNode, axis: "x" | "y"): readonly CutNode[] =>
    node.type === "split" && node.axis === axis
      ? node.parts.flatMap((part) => flat(part.node, axis))
      : [node];
  const other = { x: "y", y: "x" } as const;
  if (root.type !== "split") return true;
  const { axis } = root;
  const strips = flat(root, axis);
  const cells = strips.flatMap((strip) => (strip.type === "split" ? flat(strip, other[axis]) : []));
  const trims = cells.filter((cell) => cell.type === "split").map((cell) => flat(cell, axis));
  return trims.every(
    (parts) =>
      parts.every((part) => part.type !== "split") &&
      parts.filter((part) => part.type === "piece").length === 1,
  );
}

function judge(problem: Problem, packing: Packing): void {
  must(packing.version === 1 && packing.mode === problem.mode && packing.aim === problem.aim);
  const counts = new Map<string, number>();
  const used = new Map<string, number>();
  const places = new Map<string, Set<number>>();
  must(Array.isArray(packing.layouts));
  for (const [index, layout] of packing.layouts.entries()) {
    const sheet = problem.sheets.find(({ id }) => id === layout.sheet);
    must(sheet !== undefined && isCount(layout.run, 1));
    used.set(sheet.id, (used.get(sheet.id) ?? 0) + layout.run);
    judgeTrims(sheet);
    const usable = usableSize(sheet);
    const note = (kind: string, count: number) => {
      counts.set(kind, (counts.get(kind) ?? 0) + count);
      const key = problem.kinds.find(({ id }) => id === kind)?.together;
      if (key === undefined) return;
      must(layout.run === 1);
      places.set(key, (places.get(key) ?? new Set()).add(index));
    };
    judgeGround({ problem, sheet, run: layout.run, note }, layout.tree, usable.width, usable.height);
  }
  for (const layouts of places.values()) must(layouts.size === 1);
  for (const sheet of problem.sheets)
    must((used.get(sheet.id) ?? 0) <= (sheet.stock ?? Number.POSITIVE_INFINITY));

  const count = (kind: { readonly id: string }) => counts.get(kind.id) ?? 0;
  for (const kind of problem.kinds) must(kind.quantity === null || count(kind) <= kind.quantity);
  sameCounts(
    packing.placed,
    problem.kinds.map((kind) => [kind.id, count(kind)] as const),
  );
  const missing = problem.kinds
    .map(
      (kind) => [kind.id, ((problem.aim === "all" ? kind.quantity : kind.least) ?? 0) - count(kind)] as const,
    )
    .filter(([, lack]) => lack > 0);
  sameCounts(packing.missing, missing);
  const sheets = [...used.values()].reduce((sum, run) => sum + run, 0);
  must(packing.sheets === sheets);
  const cost = problem.sheets.reduce(
    (sum, sheet) => sum + BigInt(used.get(sheet.id) ?? 0) * costOf(sheet),
    0n,
  );
  must(packing.cost === String(cost));
  const value = problem.kinds.reduce((sum, kind) => sum + BigInt(count(kind)) * worthOf(kind), 0n);
  must(packing.value === String(value));

  const isShort = judgeBound(problem, packing);
  const { bound } = packing;
  if (missing.length === 0) must(packing.outcome === "complete");
  else if (problem.aim === "fill" && isShort)
    must(packing.outcome === "short" || packing.outcome === "not-found");
  else must(packing.outcome === (isShort ? "short" : "not-found"));
  const best = bound.aim === "fill" ? bound.value === String(value) : bound.cost === String(cost);
  must(packing.proven === (bound.aim === "all" && missing.length > 0 ? isShort : best));

  const { search } = packing;
  must(["quick", "standard", "thorough"].includes(search.effort) && typeof search.lp === "string");
  must(Number.isSafeInteger(search.seed) && isCount(search.starts, 0) && isCount(search.work, 0));
  must(["finished", "proven", "cancelled"].includes(search.ended));
}

function sameCounts(found: unknown, expected: readonly (readonly [string, number])[]): void {
  must(Array.isArray(found) && found.length === expected.length);
  for (const [index, [kind, count]] of expected.entries()) {
    must(found[index].kind === kind && found[index].count === count);
  }
}

function judgeTrims(sheet: Sheet): void {
  const longest = sheet.longestCut ?? Number.POSITIVE_INFINITY;
  const { left = 0, right = 0, top = 0, bottom = 0 } = sheet.trim ?? {};
  if (left + right > 0) must(sheet.height <= longest);
  if (top + bottom > 0) must(sheet.width - left - right <= longest);
}

interface Job {
  readonly problem: Problem;
  readonly sheet: Sheet;
  readonly run: number;
  readonly note: (kind: string, count: number) => void;
}

/** A sheet or a window, painted from its top left corner; a kerf more on the right and at the bottom. */
function judgeGround(job: Job, tree: CutNode, width: number, height: number): void {
  const { problem } = job;
  const kerf = problem.kerf ?? 0;
  const painted = new Set<number>();
  /** Each piece takes a kerf along on the right and at the bottom. */
  const paint = (part: Rectangle) => {
    must(part.x >= 0 && part.y >= 0 && part.x + part.width <= width && part.y + part.height <= height);
    for (let x = part.x; x < part.x + part.width + kerf; x += 1) {
      for (let y = part.y; y < part.y + part.height + kerf; y += 1) {
        must(!painted.has(x * 1000 + y));
        painted.add(x * 1000 + y);
      }
    }
  };
  judgeNode(job, tree, { x: 0, y: 0, width, height }, paint);
  must(levelsOf(tree) <= (problem.stages ?? Number.POSITIVE_INFINITY));
  must(problem.mode !== "shelf" || isShelf(tree));
}

function judgeNode(job: Job, node: CutNode, part: Rectangle, paint: (part: Rectangle) => void): void {
  const { problem, sheet } = job;
  const kerf = problem.kerf ?? 0;
  const longest = sheet.longestCut ?? Number.POSITIVE_INFINITY;
  const { x, y, width, height } = part;
  must(width >= 1 && height >= 1);
  if (node.type === "split") {
    must((node.axis === "x" || node.axis === "y") && Array.isArray(node.parts) && node.parts.length > 0);
    must((node.axis === "x" ? height : width) <= longest);
    let at = 0;
    for (const { size, node: child } of node.parts) {
      must(isCount(size, 1));
      const inner =
        node.axis === "x" ? { x: x + at, y, width: size, height } : { x, y: y + at, width, height: size };
      judgeNode(job, child, inner, paint);
      at += size + kerf;
    }
    // Either the last part ends at the edge, or the blade takes what is left.
    const end = at - kerf;
    const extent = node.axis === "x" ? width : height;
    must(end === extent ? node.parts.length > 1 : end < extent && extent <= at);
  } else if (node.type === "stopped") {
    must(problem.mode === "stopped" && job.run === 1);
    judgeStopped(job, node, part, paint, longest);
  } else if (node.type === "piece") {
    judgePiece(job, node, part, paint);
  } else {
    const least = problem.smallestOffcut ?? { width: 0, height: 0 };
    const fits = (w: number, h: number) => least.width <= w && least.height <= h;
    must(node.type === (fits(width, height) || fits(height, width) ? "offcut" : "waste"));
    paint(part);
  }
}

function judgeStopped(
  job: Job,
  node: CutNode & { type: "stopped" },
  part: Rectangle,
  paint: (part: Rectangle) => void,
  longest: number,
): void {
  const kerf = job.problem.kerf ?? 0;
  const { x1, x2, y1, y2 } = node;
  for (const line of [x1, x2, y1, y2]) must(isCount(line, 1));
  must(node.hand === "clockwise" || node.hand === "anticlockwise");
  const isClockwise = node.hand === "clockwise";
  const [w, h] = [part.width, part.height];
  const [X1, X2, Y1, Y2] = [x1 + kerf, x2 + kerf, y1 + kerf, y2 + kerf];
  // Left, top, right and bottom edges, in the order of the blocks.
  const edges = isClockwise
    ? [
        [0, 0, x2, y1],
        [X2, 0, w, y2],
        [X1, Y2, w, h],
        [0, Y1, x1, h],
      ]
    : [
        [X1, 0, w, y1],
        [X2, Y1, w, h],
        [0, Y2, x2, h],
        [0, 0, x1, y2],
      ];
  const lengths = edges.map(([l = 0, t = 0, r = 0, b = 0], index) => (index % 2 === 0 ? r - l : b - t));
  for (const length of lengths) must(length <= longest);
  for (const [index, block] of blocksOf(node).entries()) {
    const [l = 0, t = 0, r = 0, b = 0] = edges[index] ?? [X1, Y1, x2, y2];
    judgeNode(job, block, { x: part.x + l, y: part.y + t, width: r - l, height: b - t }, paint);
  }
}

function judgePiece(
  job: Job,
  node: CutNode & { type: "piece" },
  part: Rectangle,
  paint: (part: Rectangle) => void,
): void {
  const { problem, sheet } = job;
  must(Array.isArray(node.shares) && node.shares.length > 0);
  let copies = 0;
  for (const share of node.shares) {
    const kind = problem.kinds.find(({ id }) => id === share.kind);
    must(kind !== undefined && isCount(share.form, 0) && isCount(share.count, 1));
    must(typeof share.turned === "boolean");
    const form = kind.forms[share.form];
    must(form !== undefined);
    const turns = share.turned ? ("turned" as const) : ("upright" as const);
    const use = form.sheets?.find((entry) => entry.sheet === sheet.id);
    must(form.sheets === undefined || use !== undefined);
    const allowed = use?.turns ?? form.turns ?? "both";
    must(allowed === "both" || allowed === turns);
    const [w, h] = share.turned ? [form.height, form.width] : [form.width, form.height];
    must(w === part.width && h === part.height);
    copies += share.count;
    job.note(kind.id, share.count);
    if (node.window === undefined) continue;
    const { window } = node;
    must(form.hidden !== undefined && window.tool === form.hidden.tool);
    must(
      isCount(window.x, 0) && isCount(window.y, 0) && isCount(window.width, 1) && isCount(window.height, 1),
    );
    // Every corner of the window, turned back onto the upright form, lies in the hidden part.
    for (const [cornerX, cornerY] of [
      [window.x, window.y],
      [window.x + window.width, window.y + window.height],
    ] as const) {
      const [u, v] = share.turned ? [cornerY, form.height - cornerX] : [cornerX, cornerY];
      must(u >= form.hidden.x && u <= form.hidden.x + form.hidden.width);
      must(v >= form.hidden.y && v <= form.hidden.y + form.hidden.height);
    }
  }
  must(copies <= job.run);
  paint(part);
  if (node.window === undefined) return;
  judgeGround({ ...job, run: copies }, node.window.tree, node.window.width, node.window.height);
}

/** Compares the bound with what its certificate proves, and tells whether that is a shortage. */
function judgeBound(problem: Problem, { bound }: Packing): boolean {
  must(bound.aim === problem.aim);
  const { certificate } = bound;
  if (certificate.type === "no-fit") {
    const kind = problem.kinds.find(({ id }) => id === certificate.kind);
    must(kind !== undefined && kind.quantity !== 0 && bound.aim === "all");
    must(problem.sheets.every((sheet) => kind.forms.every((form) => lies(form, sheet).length === 0)));
    must(bound.cost === null && bound.sheets === null);
    return true;
  }
  must(certificate.type === "weights" && Array.isArray(certificate.sheets));
  const named = certificate.sheets.map(({ sheet }) => sheet).sort();
  const due = usefulSheets(problem)
    .map(({ id }) => id)
    .sort();
  must(named.length === due.length && named.every((id, index) => id === due[index]));
  const kerf = problem.kerf ?? 0;
  for (const entry of certificate.sheets) {
    const usable = usableSize(problem.sheets.find(({ id }) => id === entry.sheet) as Sheet);
    must(isCount(entry.capacity, 1));
    for (const { x, y } of [entry, ...(entry.besides ?? [])]) {
      judgeFunction(x, usable.width + kerf);
      judgeFunction(y, usable.height + kerf);
    }
  }
  const byPaper = paperMeasure;
  if (bound.aim === "fill") {
    let value: string | null = null;
    try {
      const proven = boundOf(problem, certificate.sheets, byPaper);
      value = proven.aim === "fill" ? proven.value : null;
    } catch (error) {
      must(error instanceof RangeError);
    }
    must(value !== null && bound.value === value);
  } else {
    const proven = boundOf(problem, certificate.sheets, byPaper);
    must(proven.aim === "all" && bound.cost === proven.cost && bound.sheets === proven.sheets);
  }
  return isStockShort(problem, certificate.sheets, byPaper);
}

function judgeFunction(f: DualFeasible, extent: number): void {
  must(["identity", "threshold", "rounding", "step", "fitted"].includes(f.family));
  if (f.family === "rounding") must(isCount(f.k, 1));
  if (f.family === "threshold" || f.family === "step") must(isCount(f.at, 1) && 2 * f.at <= extent);
}
