/** Cuts a sheet into pieces at random, so that the tree is right by construction. */
import type { CutNode, Hidden, Mode, PieceLeaf, Rectangle, Share, Size, SplitPart } from "../src/model.js";

/** Gives a whole number from 0 to `below` - 1. */
export type Draw = (below: number) => number;

export interface DraftForm extends Size {
  /** Where it lies, and how. */
  readonly uses: { readonly sheet: string; readonly turned: boolean }[];
  readonly hidden?: Hidden;
}

export interface DraftKind {
  readonly id: string;
  readonly forms: DraftForm[];
  readonly layouts: Set<number>;
  placed: number;
}

/** What the cutting draws from and what it leaves behind. */
export interface Workshop {
  readonly mode: Mode;
  readonly kerf: number;
  readonly smallestOffcut: Size | undefined;
  readonly hasWindows: boolean;
  readonly mostKinds: number;
  readonly kinds: DraftKind[];
  /** The longest cut made on each sheet. */
  readonly longest: Map<string, number>;
  /** The deepest level of parallel cuts. */
  levels: number;
}

/** Where a part is cut from, and how often. */
export interface Place {
  readonly draw: Draw;
  readonly sheet: string;
  readonly layout: number;
  readonly run: number;
}

/** Cuts a part of a sheet or window, from its root on. */
export function cutSheet(shop: Workshop, place: Place, size: Size): CutNode {
  return cutPart(shop, place, size, { axis: null, level: 0, depth: 0 });
}

interface Stand {
  readonly axis: "x" | "y" | null;
  readonly level: number;
  readonly depth: number;
}

function cutPart(shop: Workshop, place: Place, size: Size, stand: Stand): CutNode {
  const { draw } = place;
  const choice = draw([40, 16, 8, 5, 4, 3][stand.depth] ?? 1);
  if (choice === 0) return leaf(shop, place, size);
  if (shop.mode === "stopped" && choice % 3 === 2) {
    const blocks = stoppedCuts(shop, place, size, stand);
    if (blocks !== null) return blocks;
  }
  const axis = draw(2) === 0 ? "x" : "y";
  const level = axis === stand.axis ? stand.level : stand.level + 1;
  if (shop.mode === "shelf" && level > 3) return leaf(shop, place, size);
  const sizes = divide(draw, axis === "x" ? size.width : size.height, shop.kerf);
  if (sizes === null) return leaf(shop, place, size);
  const isLastTrim = shop.mode === "shelf" && level === 3;
  if (isLastTrim && axis === stand.axis) return leaf(shop, place, size);
  noteCut(shop, place.sheet, axis === "x" ? size.height : size.width);
  shop.levels = Math.max(shop.levels, level);
  const freed = draw(sizes.length);
  const parts = sizes.map((extent, index): SplitPart => {
    const part =
      axis === "x" ? { width: extent, height: size.height } : { width: size.width, height: extent };
    const next = { axis, level, depth: stand.depth + 1 } as const;
    if (!isLastTrim) return { size: extent, node: cutPart(shop, place, part, next) };
    return { size: extent, node: index === freed ? piece(shop, place, part) : leftover(shop, part) };
  });
  return { type: "split", axis, parts };
}

function noteCut(shop: Workshop, sheet: string, length: number): void {
  shop.longest.set(sheet, Math.max(shop.longest.get(sheet) ?? 0, length));
}

/** Divides an extent into parts one kerf apart: two at random, equal ones, or with a remainder that vanishes. */
function divide(draw: Draw, extent: number, kerf: number): readonly number[] | null {
  const style = draw(4);
  if (style === 1) {
    const count = 2 + draw(4);
    const size = Math.floor((extent - kerf * (count - 1)) / count);
    if (size < 1) return null;
    const rest = extent - count * size - kerf * (count - 1);
    const parts = Array.from({ length: count }, () => size);
    return rest > kerf ? [...parts, rest - kerf] : parts;
  }
  if (style === 2 && kerf > 0) {
    const inner = extent - 1 - draw(kerf);
    if (inner < 1) return null;
    return draw(2) === 0 ? [inner] : (halve(draw, inner, kerf) ?? [inner]);
  }
  const halves = halve(draw, extent, kerf);
  if (halves === null || style !== 3) return halves;
  const rest = halve(draw, halves[1], kerf);
  return rest === null ? halves : [halves[0], ...rest];
}

function halve(draw: Draw, extent: number, kerf: number): readonly [number, number] | null {
  const most = extent - kerf - 1;
  if (most < 1) return null;
  const first = 1 + draw(most);
  return [first, extent - kerf - first];
}

function stoppedCuts(shop: Workshop, place: Place, size: Size, stand: Stand): CutNode | null {
  const { kerf } = shop;
  const { draw } = place;
  const { width, height } = size;
  const xs = lines(draw, width, kerf);
  const ys = lines(draw, height, kerf);
  if (xs === null || ys === null) return null;
  const [x1, x2] = xs;
  const [y1, y2] = ys;
  const isClockwise = draw(2) === 0;
  const level = stand.level + 1;
  shop.levels = Math.max(shop.levels, level);
  const cut = (w: number, h: number) =>
    cutPart(shop, place, { width: w, height: h }, { axis: null, level, depth: stand.depth + 1 });
  const farX = width - x2 - kerf;
  const farY = height - y2 - kerf;
  const restX = width - x1 - kerf;
  const restY = height - y1 - kerf;
  const lengths = isClockwise ? [x2, y2, restX, restY] : [restX, restY, x2, y2];
  for (const length of lengths) noteCut(shop, place.sheet, length);
  const sizes = isClockwise
    ? { top: [x2, y1], right: [farX, y2], bottom: [restX, farY], left: [x1, restY] }
    : { top: [restX, y1], right: [farX, restY], bottom: [x2, farY], left: [x1, y2] };
  const block = ([w, h]: readonly number[]) => cut(w ?? 0, h ?? 0);
  return {
    type: "stopped",
    hand: isClockwise ? "clockwise" : "anticlockwise",
    x1,
    x2,
    y1,
    y2,
    top: block(sizes.top),
    right: block(sizes.right),
    bottom: block(sizes.bottom),
    left: block(sizes.left),
    centre: cut(x2 - x1 - kerf, y2 - y1 - kerf),
  };
}

/** Two lines with room before, between and behind them. */
function lines(draw: Draw, extent: number, kerf: number): readonly [number, number] | null {
  const spare = extent - 2 * kerf - 3;
  if (spare < 0) return null;
  const before = draw(spare + 1);
  const between = draw(spare - before + 1);
  return [1 + before, 1 + before + kerf + 1 + between];
}

function leaf(shop: Workshop, place: Place, size: Size): CutNode {
  return place.draw(5) < 4 && (shop.kinds.length < shop.mostKinds || findUses(shop, size).length > 0)
    ? piece(shop, place, size)
    : leftover(shop, size);
}

export function leftover(shop: { readonly smallestOffcut: Size | undefined }, size: Size): CutNode {
  const least = shop.smallestOffcut;
  if (least === undefined) return { type: "offcut" };
  const sides = (s: Size) => [s.width, s.height].sort((a, b) => a - b) as [number, number];
  const [short, long] = sides(size);
  const [leastShort, leastLong] = sides(least);
  return { type: short >= leastShort && long >= leastLong ? "offcut" : "waste" };
}

function piece(shop: Workshop, place: Place, size: Size): CutNode {
  const { kinds } = shop;
  const { draw } = place;
  const candidates = findUses(shop, size);
  const mayAdd = kinds.length < shop.mostKinds;
  const chosen = draw(candidates.length + 1);
  if ((chosen === 0 && mayAdd) || candidates.length === 0) return freshPiece(shop, place, size);
  const shares: Share[] = [];
  let rest = place.run;
  for (const candidate of [candidates[Math.max(0, chosen - 1)], candidates[draw(candidates.length)]]) {
    if (candidate === undefined || rest === 0 || (shares.length === 1 && draw(2) === 0)) continue;
    const count = rest - draw(rest);
    shares.push(use(place, candidate.kind, candidate.index, candidate.turned, count));
    rest -= count;
  }
  return { type: "piece", shares };
}

/** The forms that fill a part of this size. */
function findUses({ kinds }: Workshop, { width, height }: Size) {
  return kinds.flatMap((kind) =>
    kind.forms.flatMap((form, index) => [
      ...(form.width === width && form.height === height ? [{ kind, index, turned: false }] : []),
      ...(form.height === width && form.width === height ? [{ kind, index, turned: true }] : []),
    ]),
  );
}

function use(place: Place, kind: DraftKind, index: number, turned: boolean, count: number): Share {
  kind.forms[index]?.uses.push({ sheet: place.sheet, turned });
  kind.layouts.add(place.layout);
  kind.placed += count;
  return { kind: kind.id, form: index, turned, count };
}

/** A piece of a new kind, now and then with a window in it. */
function freshPiece(shop: Workshop, place: Place, size: Size): CutNode {
  const { kinds } = shop;
  const { draw } = place;
  const turned = draw(2) === 1;
  const { width, height } = turned ? { width: size.height, height: size.width } : size;
  const isOpened = shop.hasWindows && size.width >= 5 && size.height >= 5 && draw(3) < 2;
  const x = draw(size.width - 3);
  const y = draw(size.height - 3);
  const lying = { x, y, width: 3 + draw(size.width - x - 2), height: 3 + draw(size.height - y - 2) };
  const tool = draw(2) === 0 ? "knife" : "cutting machine";
  const form: DraftForm = {
    width,
    height,
    uses: [],
    ...(isOpened ? { hidden: { ...(turned ? turnBack(lying, height) : lying), tool } } : {}),
  };
  const decoy = { width: 1 + draw(width), height: 1 + draw(height + 5), uses: [] };
  const index = draw(5) === 4 ? 1 : 0;
  const kind: DraftKind = {
    id: `piece ${kinds.length + 1}`,
    forms: index === 1 ? [decoy, form] : [form],
    layouts: new Set(),
    placed: 0,
  };
  kinds.push(kind);
  const count = place.run - draw(place.run);
  const shares = [use(place, kind, index, turned, count)];
  const leaf: PieceLeaf = { type: "piece", shares };
  if (!isOpened) return leaf;
  const opening = {
    x: x + draw(2),
    y: y + draw(2),
    width: lying.width - 1 - draw(2),
    height: lying.height - 1 - draw(2),
  };
  const tree = cutSheet(shop, { ...place, run: count }, opening);
  return { ...leaf, window: { ...opening, tool, tree } };
}

/** Undoes a clockwise quarter turn of a rectangle on a piece of this upright height. */
function turnBack(lying: Rectangle, height: number): Rectangle {
  return { x: lying.y, y: height - lying.x - lying.width, width: lying.height, height: lying.width };
}
