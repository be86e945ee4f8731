import type { Piece } from "@sheetwright/cards";
import type { Kind } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";
import type { PaperStrip } from "../plan-model.js";
import { type StripWorkshop, stripForms } from "./strip-forms.js";

/** How many shapes a full strip of a piece holds, by the id of the piece; pieces that are not named are cut one by one. */
export type Division = ReadonlyMap<Piece["id"], number>;

/** A group's task with its die blanks divided into strips, and what is cut of each kind as if it were a piece. */
export interface DividedTask {
  readonly task: GroupTask;
  /** In the order of the kinds: pieces as they are, and strips with the sizes that they may be cut in. */
  readonly cuts: readonly Piece[];
}

/**
 * States the task of a group with pieces cut in strips: as many full strips as the copies fill, and one for those that
 * remain, or a single blank where one remains. Copies are those that the task asks for. Strips belong to no set: they are
 * planned only where everything is.
 */
export function divideTask(
  task: GroupTask,
  pieces: readonly Piece[],
  division: Division,
  workshop: StripWorkshop,
): DividedTask {
  const known = new Map(pieces.map((piece) => [piece.id, piece]));
  const strips: PaperStrip[] = [];
  const cuts: Piece[] = [];
  const kinds = task.problem.kinds.flatMap((kind): readonly Kind[] => {
    const piece = known.get(kind.id);
    if (piece === undefined) return [kind];
    const quantity = kind.quantity ?? 0;
    return portions(quantity, division.get(piece.id) ?? 1).map(({ holds, count }) => {
      if (holds === 1) {
        cuts.push(piece);
        return { ...kind, quantity: count };
      }
      const forms = stripForms(piece, holds, task, workshop);
      const id = `${piece.id}*${holds}`;
      const name = `${piece.label.replace(/ die blank$/, "")}, strip of ${holds}`;
      strips.push({ kind: id, piece: piece.id, holds, along: forms.map(({ along }) => along) });
      const [blank] = piece.forms;
      cuts.push({
        ...piece,
        id,
        label: name,
        quantity: count,
        forms: forms.map(({ width, height }) => ({ ...blank!, width, height })),
      });
      const { set: _, forms: own, ...rest } = kind;
      const sheets = own[0]?.sheets ?? [];
      return {
        ...rest,
        id,
        name,
        quantity: count,
        forms: forms.map(({ width, height }) => ({ width, height, sheets })),
      };
    });
  });
  const divided = { ...task, problem: { ...task.problem, kinds } };
  return { task: strips.length === 0 ? divided : { ...divided, strips }, cuts };
}

/** Copies in full strips and what remains; the remainder last. */
function portions(quantity: number, full: number): readonly { holds: number; count: number }[] {
  if (full === 1 || quantity < 2) return [{ holds: 1, count: quantity }];
  const rest = quantity % full;
  const whole = Math.floor(quantity / full);
  return [
    ...(whole > 0 ? [{ holds: full, count: whole }] : []),
    ...(rest > 0 ? [{ holds: rest, count: 1 }] : []),
  ];
}
