import type { Size } from "@sheetwright/measure";

/** A piece that none of its papers is large enough for, in any way it may lie. */
export interface NoPaper extends Size {
  /** The piece's id and label. */
  readonly piece: string;
  readonly label: string;
  /** Where it comes from in the file. */
  readonly path: string;
  /** The design of a paper that comes nearest, and its usable size. */
  readonly design: string;
  readonly usable: Size;
  /** By how much the piece is too large there, lying the best way allowed; 0 where that side fits. */
  readonly over: Size;
  /** True where the best way allowed is after a quarter turn. */
  readonly turned: boolean;
  /** What would help, as sentences. */
  readonly help: readonly string[];
  /** All of it as full sentences. */
  readonly message: string;
}
