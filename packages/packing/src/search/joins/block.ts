import type { CompiledProblem } from "../compiled-problem.js";

/** A piece, or two blocks side by side that have one whole side in common: no paper is lost between them. */
export interface Block {
  /** Extents as it lies, unless it is turned as a whole. */
  readonly width: number;
  readonly height: number;
  /** Whether it may be turned by a quarter. */
  readonly mayTurn: boolean;
  /** The kind of a piece; of two blocks these, first the left or upper one. */
  readonly of: number | JoinedBlocks;
}

/** What a block of two is made of. */
interface JoinedBlocks {
  /** The extent that is divided: `x` for two side by side. */
  readonly axis: "x" | "y";
  readonly first: Block;
  readonly second: Block;
  /** Whether each is turned before they are joined. */
  readonly firstTurned: boolean;
  readonly secondTurned: boolean;
}

/** Every wanted copy as a block of its own, in its first form. */
export function piecesAsBlocks(problem: CompiledProblem, wanted: readonly number[]): readonly Block[] {
  return problem.kinds.flatMap(({ index, lays }): Block[] => {
    const own = lays.flat();
    const first = own[0];
    if (first === undefined) return [];
    const { width, height } = first;
    const mayTurn = own.some((lay) => lay.width === height && lay.height === width);
    const block: Block = { width, height, mayTurn, of: index };
    return Array.from({ length: wanted[index] ?? 0 }, () => block);
  });
}
