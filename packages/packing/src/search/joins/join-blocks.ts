/**
 * Joins blocks two by two, each time along a side that both have in common, until some fill a whole sheet and no other two
 * fit together. A plan without any waste is made of nothing but such joins: each cut of it frees two parts that share the
 * whole length of the cut.
 *
 * Which two are joined is drawn by lot, weighed by how telling a common side is: a side that only two blocks have is
 * hardly there by chance, and a join is promising where the side that it makes is one that another block, or a sheet, has.
 */
import type { Demand } from "../best-fit.js";
import type { CompiledProblem } from "../compiled-problem.js";
import type { RandomStream } from "../random-stream.js";
import type { Block } from "./block.js";

/** Parameters of the choice; one set serves all problems. */
const TUNING = {
  /** How much a join is worth more whose new side another block has; several of them are less telling. */
  meets: 4,
  /** The same where it reaches from one edge of a sheet to the other, and where it fills a sheet. */
  edge: 2,
  whole: 4,
  /** By how many times itself a worth may be raised by lot. */
  noise: 20,
};

/** A sheet that a block may fill, and how many there are. */
export interface BlankSheet {
  readonly index: number;
  readonly width: number;
  readonly height: number;
  readonly count: number;
}

/** The sheets of a problem, no more of each than there are pieces. */
export function blankSheets(
  { sheets }: CompiledProblem,
  { stock }: Demand,
  pieces: number,
): readonly BlankSheet[] {
  return sheets.map(({ index, width, height }) => {
    return { index, width, height, count: Math.min(pieces, stock[index] ?? 0) };
  });
}

/** No longer side is joined along: every sheet's cuts may be so long. */
export function longestJoin({ sheets }: CompiledProblem): number {
  return Math.min(...sheets.map((sheet) => sheet.longestCut));
}

/** What came of joining. */
export interface Joined {
  /** Blocks that fill a sheet from edge to edge, as they lie on it. */
  readonly whole: readonly { readonly sheet: number; readonly block: Block; readonly turned: boolean }[];
  /** Blocks that were left. */
  readonly left: readonly Block[];
  /** Pairs looked at. */
  readonly work: number;
}

/** Which extent of a block a side is: either, where the block may be turned. */
const WIDTH = 0;
const HEIGHT = 1;
const EITHER = 2;

/** One side of a block that others may be joined along. */
interface Side {
  readonly block: Block;
  readonly length: number;
  /** The block's other extent. */
  readonly other: number;
  readonly which: typeof WIDTH | typeof HEIGHT | typeof EITHER;
}

/**
 * Joins blocks once, from beginning to end.
 * @param kerf what the tool takes between two blocks.
 * @param longestCut no longer side is joined along.
 * @param least no more joins are made once so few blocks are left, those that fill a sheet among them.
 */
export function joinBlocks(
  blocks: readonly Block[],
  sheets: readonly BlankSheet[],
  kerf: number,
  longestCut: number,
  random: RandomStream,
  least = 0,
): Joined {
  const sides = new SideList(blocks, sheets, kerf, longestCut);
  const whole: { sheet: number; block: Block; turned: boolean }[] = [];
  for (let count = blocks.length; ; count--) {
    const pair = count > least ? sides.choose(random) : undefined;
    if (pair === undefined) return { whole, left: sides.blocks(), work: sides.work };
    const joined = joinAt(pair, kerf);
    sides.remove(pair.first.block);
    sides.remove(pair.second.block);
    const filled = sides.fill(joined);
    if (filled === undefined) sides.add(joined);
    else whole.push({ sheet: filled.sheet, block: joined, turned: filled.turned });
  }
}

/** Two sides of one length. */
interface Pair {
  readonly first: Side;
  readonly second: Side;
}

/** Two blocks as one; a block that must not be turned decides how the other one lies. */
function joinAt({ first, second }: Pair, kerf: number): Block {
  const which = first.which === EITHER ? second.which : first.which;
  const along = first.other + kerf + second.other;
  const isRow = which === HEIGHT;
  // A side that is either extent belongs to a block that lies as it is or turned: whichever brings the side along.
  const turnedOf = ({ block, length, which: own }: Side): boolean =>
    own === EITHER && (isRow ? block.height : block.width) !== length;
  return {
    width: isRow ? along : first.length,
    height: isRow ? first.length : along,
    mayTurn: first.block.mayTurn && second.block.mayTurn,
    of: {
      axis: isRow ? "x" : "y",
      first: first.block,
      second: second.block,
      firstTurned: turnedOf(first),
      secondTurned: turnedOf(second),
    },
  };
}

/** The sides of all blocks that are left, in the order of their lengths. */
class SideList {
  work = 0;
  private readonly sides: Side[] = [];
  /** How many blocks have a width, or a height, of a length. */
  private readonly counts = [new Map<number, number>(), new Map<number, number>()] as const;
  private readonly sheets: readonly BlankSheet[];
  /** Sheets of each size that are left. */
  private readonly free: number[];
  private readonly kerf: number;
  private readonly longestCut: number;

  constructor(blocks: readonly Block[], sheets: readonly BlankSheet[], kerf: number, longestCut: number) {
    this.sheets = sheets;
    this.free = sheets.map(({ count }) => count);
    this.kerf = kerf;
    this.longestCut = longestCut;
    for (const block of blocks) {
      for (const side of sidesOf(block)) {
        this.sides.push(side);
        this.count(side, 1);
      }
    }
    this.sides.sort(compareSides);
  }

  /** The blocks that are left, each once. */
  blocks(): readonly Block[] {
    return this.sides.filter(isFirstSide).map(({ block }) => block);
  }

  add(block: Block): void {
    for (const side of sidesOf(block)) {
      this.sides.splice(this.positionOf(side), 0, side);
      this.count(side, 1);
    }
  }

  remove(block: Block): void {
    for (const side of sidesOf(block)) {
      let at = this.positionOf(side);
      while (this.sides[at]?.block !== block || this.sides[at]?.which !== side.which) at++;
      this.sides.splice(at, 1);
      this.count(side, -1);
    }
  }

  /** Takes a sheet that a block fills from edge to edge; undefined where there is none. */
  fill({ width, height, mayTurn }: Block): { readonly sheet: number; readonly turned: boolean } | undefined {
    for (const [i, sheet] of this.sheets.entries()) {
      if (this.free[i] === 0) continue;
      const isUpright = sheet.width === width && sheet.height === height;
      const isTurned = mayTurn && sheet.width === height && sheet.height === width;
      if (!isUpright && !isTurned) continue;
      this.free[i] = (this.free[i] as number) - 1;
      return { sheet: sheet.index, turned: !isUpright };
    }
    return undefined;
  }

  /** Draws a pair to join; undefined where no two fit together. */
  choose(random: RandomStream): Pair | undefined {
    const { sides } = this;
    let best: Pair | undefined;
    let most = -1;
    for (let from = 0; from < sides.length; ) {
      const { length } = sides[from] as Side;
      let to = from + 1;
      while (to < sides.length && (sides[to] as Side).length === length) to++;
      if (to - from > 1 && length <= this.longestCut) {
        for (let i = from; i < to - 1; i++) {
          const first = sides[i] as Side;
          // Of blocks alike one is enough.
          if (i > from && isAlike(first, sides[i - 1] as Side)) continue;
          for (let j = i + 1; j < to; j++) {
            const second = sides[j] as Side;
            if (j > i + 1 && isAlike(second, sides[j - 1] as Side)) continue;
            const worth = this.worthOf(first, second, random);
            if (worth <= most) continue;
            most = worth;
            best = { first, second };
          }
        }
      }
      from = to;
    }
    return best;
  }

  /** What a join is worth, by lot; -1 where the two cannot be joined. */
  private worthOf(first: Side, second: Side, random: RandomStream): number {
    this.work++;
    const { which: a } = first;
    const { which: b } = second;
    if (a !== b && a !== EITHER && b !== EITHER) return -1;
    const which = a === EITHER ? b : a;
    const along = first.other + this.kerf + second.other;
    const { length } = first;
    let edge = 0;
    let fits = false;
    for (let i = 0; i < this.sheets.length; i++) {
      if (this.free[i] === 0) continue;
      const { width, height } = this.sheets[i] as BlankSheet;
      if (which !== HEIGHT && length <= width && along <= height) {
        fits = true;
        if (along === height) edge = Math.max(edge, length === width ? TUNING.whole : TUNING.edge);
      }
      if (which !== WIDTH && length <= height && along <= width) {
        fits = true;
        if (along === width) edge = Math.max(edge, length === height ? TUNING.whole : TUNING.edge);
      }
    }
    if (!fits) return -1;
    const shared = this.counts[which === HEIGHT ? 1 : 0].get(length) ?? 2;
    const met = this.counts[which === HEIGHT ? 0 : 1].get(along) ?? 0;
    const meets = edge > 0 ? edge : met > 0 ? 1 / Math.sqrt(met) : 0;
    return ((1 + TUNING.meets * meets) / Math.max(1, shared - 1)) * (1 + TUNING.noise * random.unit());
  }

  private count({ length, which }: Side, change: number): void {
    for (const extent of [WIDTH, HEIGHT] as const) {
      if (which !== EITHER && which !== extent) continue;
      const counts = this.counts[extent];
      counts.set(length, (counts.get(length) ?? 0) + change);
    }
  }

  /** Where a side stands, or the first one like it. */
  private positionOf(side: Side): number {
    let from = 0;
    let to = this.sides.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if (compareSides(this.sides[middle] as Side, side) < 0) from = middle + 1;
      else to = middle;
    }
    return from;
  }
}

function sidesOf(block: Block): readonly Side[] {
  const { width, height, mayTurn } = block;
  const which = mayTurn ? EITHER : WIDTH;
  if (mayTurn && width === height) return [{ block, length: width, other: height, which }];
  return [
    { block, length: width, other: height, which },
    { block, length: height, other: width, which: mayTurn ? EITHER : HEIGHT },
  ];
}

/** Whether a side is the one that its block is counted by. */
function isFirstSide({ block, length, which }: Side): boolean {
  return which === WIDTH || (which === EITHER && length === block.width);
}

function compareSides(a: Side, b: Side): number {
  return a.length - b.length || a.which - b.which || a.other - b.other;
}

function isAlike(a: Side, b: Side): boolean {
  return a.which === b.which && a.other === b.other && a.block.mayTurn === b.block.mayTurn;
}
