import type { Kind, Problem, Share, Size } from "@sheetwright/packing";
import { spaced, unbroken } from "../text/break-lines.js";
import { displayName } from "../wording/display-name.js";
import type { LaidOut, PlacedPiece } from "./lay-out.js";
import type { PlaceMarks } from "./lying-marks.js";

/** Pieces that carry the same label, under the number that stands for it on small pieces. */
export interface ListedPieces {
  /** Counted from 1 in the order of the list. */
  readonly number: number;
  /** The whole label, never shortened: a name, or for a shared place every name with its count. */
  readonly label: string;
  /** The label in the parts between which a line may break. */
  readonly words: readonly string[];
  /** True for a place that does not yield the same kind on every sheet of the run. */
  readonly shared: boolean;
  /** Size of the piece with the pattern upright; for a shared place of unlike sizes, as it lies. */
  readonly size: Size;
  /** Places with this label on one sheet. */
  readonly places: number;
  /** Pieces with this label from all sheets of the run. */
  readonly pieces: number;
}

/** The list of a layout, and for each placed piece (same order as in the layout) its entry. */
export interface PieceList {
  readonly entries: readonly ListedPieces[];
  readonly entryOf: readonly ListedPieces[];
}

/**
 * Groups the pieces of a layout by what is written on them: kinds in the problem's order, shared places after them. Where
 * `places` says that the printed back shows, the label says so too. Throws a RangeError where a share names a kind or form
 * that the problem does not have.
 */
export function listPieces(
  problem: Problem,
  laidOut: LaidOut,
  run: number,
  places: readonly PlaceMarks[] = [],
): PieceList {
  const backUp = new Set(
    laidOut.pieces.flatMap(({ shares }, index) => shares.filter((_, i) => places[index]?.backUp[i] === true)),
  );
  const order = new Map(problem.kinds.map((kind, index) => [kind.id, index]));
  const groups = new Map<string, { readonly key: readonly number[]; readonly members: PlacedPiece[] }>();
  const keys: string[] = [];

  for (const piece of laidOut.pieces) {
    const shared = isShared(piece, run);
    const key = [shared ? 1 : 0];
    for (const share of inOrder(piece.shares, order)) {
      key.push(order.get(share.kind) ?? 0, share.form, share.count, Number(backUp.has(share)));
    }
    const text = key.join(" ");
    keys.push(text);
    const group = groups.get(text);
    if (group === undefined) groups.set(text, { key, members: [piece] });
    else group.members.push(piece);
  }

  const byText = new Map<string, ListedPieces>();
  const entries = [...groups]
    .sort(([, a], [, b]) => compareKeys(a.key, b.key))
    .map(([text, { members }], index) => {
      const entry = describe(problem, order, members, run, index + 1, backUp);
      byText.set(text, entry);
      return entry;
    });
  return { entries, entryOf: keys.map((key) => byText.get(key) as ListedPieces) };
}

function isShared(piece: PlacedPiece, run: number): boolean {
  return piece.shares.length !== 1 || piece.shares[0]?.count !== run;
}

function inOrder(shares: readonly Share[], order: ReadonlyMap<string, number>): readonly Share[] {
  for (const { kind } of shares) {
    if (!order.has(kind))
      throw new RangeError(`The problem has no kind with the id ${JSON.stringify(kind)}.`);
  }
  const place = ({ kind, form, count }: Share) => [order.get(kind) ?? 0, form, count];
  return [...shares].sort((a, b) => compareKeys(place(a), place(b)));
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const difference = (a[i] as number) - (b[i] as number);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

function describe(
  problem: Problem,
  order: ReadonlyMap<string, number>,
  members: readonly PlacedPiece[],
  run: number,
  number: number,
  backUp: ReadonlySet<Share>,
): ListedPieces {
  const first = members[0] as PlacedPiece;
  const shares = inOrder(first.shares, order).map((share) => {
    const kind = problem.kinds[order.get(share.kind) as number] as Kind;
    const form = kind.forms[share.form];
    if (form === undefined) {
      throw new RangeError(`The kind ${JSON.stringify(kind.id)} has no form ${share.form}.`);
    }
    const name = `${displayName(kind)}${backUp.has(share) ? ` ${unbroken("(back up)")}` : ""}`;
    return { name, form, count: share.count };
  });
  const placed = shares.reduce((sum, { count }) => sum + count, 0);
  const shared = isShared(first, run);

  let words: readonly string[];
  if (shared) {
    const parts = shares.map(({ name, count }) => `${name} x ${count}`);
    // On the sheets that no share claims the place is left over.
    if (placed < run) parts.push(`offcut x ${run - placed}`);
    words = parts.map((part, i) => (i < parts.length - 1 ? `${part},` : part));
  } else {
    words = wordsOf(shares[0]?.name ?? "");
  }

  const form = shares[0]?.form ?? first;
  const alike = shares.every((share) => share.form.width === form.width && share.form.height === form.height);
  const { width, height } = alike ? form : first;
  return {
    number,
    label: spaced(words.join(" ")),
    words,
    shared,
    size: { width, height },
    places: members.length,
    pieces: members.length * placed,
  };
}

/** A name in words; what a strip holds, as in `2d moon, strip of 4`, stands on one line. */
function wordsOf(name: string): readonly string[] {
  const [, before = name, strip] = /^(.+) (strip of \d+)$/.exec(name) ?? [];
  return strip === undefined ? name.split(" ") : [...before.split(" "), unbroken(strip)];
}
