// Small bundles made at random: several cards, of several papers, and few sheets; and what their papers can give, found by
// looking at everything. Nothing here comes from the planner: pieces and papers are told apart from the project.

import { flatsOf, type Project } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import type { Problem } from "@sheetwright/packing";
import fc from "fast-check";
import {
  bySize,
  card,
  choice,
  panel,
  paper,
  paperDesign,
  project,
} from "../../../cards/test/small-project.js";
import { type SmallStock, smallStock } from "../../../packing/test/small-stock.js";
import { made } from "../bench-project.js";

/** A piece of every copy of a card: its size in inches, and the papers that it may be cut from. */
interface BundlePiece {
  readonly width: number;
  readonly height: number;
  readonly papers: readonly string[];
}

/** Cards, each of which has a base and some panels, and papers with few sheets. */
export interface Bundle {
  readonly papers: readonly {
    readonly id: string;
    readonly width: number;
    readonly height: number;
    readonly count: number;
  }[];
  readonly cards: readonly { readonly copies: number; readonly pieces: readonly BundlePiece[] }[];
}

const PAPERS = ["night", "cream", "stars"];

const papersOfPiece = fc.oneof(
  { weight: 9, arbitrary: fc.constantFrom(...PAPERS).map((one) => [one]) },
  { weight: 1, arbitrary: fc.constantFrom(["night", "cream"], ["cream", "stars"]) },
);

const pieceWithin = (width: number, height: number): fc.Arbitrary<BundlePiece> =>
  fc.record({
    width: fc.integer({ min: 2, max: width }),
    height: fc.integer({ min: 2, max: height }),
    papers: papersOfPiece,
  });

const cardOf = (most: number): fc.Arbitrary<Bundle["cards"][number]> =>
  fc
    .record({ width: fc.integer({ min: 3, max: 5 }), height: fc.integer({ min: 3, max: 6 }) })
    .chain((size) =>
      fc.record({
        copies: fc.integer({ min: 1, max: most }),
        base: papersOfPiece.map((papers): BundlePiece => ({ ...size, papers })),
        panels: fc.array(pieceWithin(size.width, size.height), { minLength: 1, maxLength: 2 }),
      }),
    )
    .map(({ copies, base, panels }) => ({ copies, pieces: [base, ...panels] }));

const bundleOf = (most: { readonly copies: number; readonly sheets: number }): fc.Arbitrary<Bundle> =>
  fc.record({
    papers: fc.tuple(
      ...PAPERS.map((id) =>
        fc
          .record({
            width: fc.integer({ min: 6, max: 10 }),
            height: fc.integer({ min: 6, max: 10 }),
            count: fc.oneof(
              { weight: 1, arbitrary: fc.constant(0) },
              { weight: 8, arbitrary: fc.constant(1) },
              { weight: 3, arbitrary: fc.integer({ min: 2, max: most.sheets }) },
            ),
          })
          .map((sheet) => ({ id, ...sheet })),
      ),
    ),
    cards: fc.array(cardOf(most.copies), { minLength: 2, maxLength: 3 }),
  });

/** Bundles that are too large to look at everything. */
export const largerBundle: fc.Arbitrary<Bundle> = bundleOf({ copies: 9, sheets: 4 });

const anyBundle: fc.Arbitrary<Bundle> = bundleOf({ copies: 3, sheets: 2 }).filter(
  ({ cards }) => cards.reduce((sum, one) => sum + one.copies * one.pieces.length, 0) <= 10,
);

/** Whether two papers are asked for most of their area, or more. */
function isTight({ papers, cards }: Bundle): boolean {
  const tight = papers.filter(({ id, width, height, count }) => {
    const asked = cards.flatMap(({ copies, pieces }) =>
      pieces.filter((one) => one.papers[0] === id).map((one) => copies * one.width * one.height),
    );
    const area = asked.reduce((sum, one) => sum + one, 0);
    return area > 0.8 * width * height * count && area < 2.5 * width * height * count;
  });
  return tight.length > 1;
}

/** Bundles of at most ten pieces in all, most of which ask for more of two papers than these give. */
export const smallBundle: fc.Arbitrary<Bundle> = fc.oneof(
  { weight: 1, arbitrary: anyBundle },
  { weight: 3, arbitrary: anyBundle.filter(isTight) },
);

/** Bundles of two cards, one of each or two of one of them in a set, of few pieces: many sets of them are looked at. */
export const setBundle: fc.Arbitrary<Bundle> = fc
  .tuple(
    bundleOf({ copies: 1, sheets: 2 }),
    fc.constantFrom([1, 1], [2, 2], [1, 1], [1, 2], [3, 3]),
    fc.integer({ min: 2, max: 4 }),
  )
  .map(([{ papers, cards }, copies, most]) => ({
    papers,
    cards: cards.slice(0, 2).map(({ pieces }, index) => ({
      copies: copies[index]!,
      pieces: pieces.slice(0, index === 0 ? 2 : most - 1),
    })),
  }));

/** The bundle as a project, of flat cards. */
export function bundleProject({ papers, cards }: Bundle): Project {
  return project(
    cards.map(({ copies, pieces: [base, ...panels] }, index) => {
      const { width, height, papers: of } = base!;
      const front = { width: inches(width), height: inches(height) };
      const layers = panels.map((one) =>
        panel(bySize(inches(one.width), inches(one.height)), { paper: choice(...one.papers) }),
      );
      const flats = flatsOf({ front, fold: "flat" });
      return card(front.width, front.height, layers, {
        number: index + 1,
        flats,
        base: choice(...of),
        ...made(copies),
      });
    }),
    {
      papers: papers.map(({ id, width, height, count }) =>
        paper(id, inches(width), inches(height), { designs: [paperDesign(id, { count })] }),
      ),
    },
  );
}

/** What the papers of a bundle can give. */
export interface BundleStock {
  /** Whether all papers together give so many copies of each card. */
  readonly gives: (copies: readonly number[]) => boolean;
  /** Copies of each card by the rule of docs/plans.md. */
  readonly byRule: () => readonly number[];
  /** The most area, in square inches, of the pieces cut with at least so many copies. */
  readonly mostArea: (copies: readonly number[]) => number;
}

/** Looks at everything that can be cut for up to so many copies of each card. */
export function bundleStock(bundle: Bundle, upTo: readonly number[]): BundleStock {
  const parts = partsOf(bundle).map((part) => partStock(bundle, part, upTo));
  const gives = (copies: readonly number[]): boolean =>
    parts.every(({ stock, least }) => stock.gives(least(copies)));
  return {
    gives,
    byRule: () => {
      const short = parts.filter(({ stock, least }) => !stock.gives(least(upTo)));
      const growing = bundle.cards.map(
        (one, index) => canBe(bundle, one.pieces) && short.some(({ cards }) => cards.has(index)),
      );
      const isGiven = (copies: readonly number[]): boolean =>
        short.every(({ stock, least }) => stock.gives(least(copies)));
      return copiesByRule(upTo, growing, isGiven).copies.map((count, index) =>
        growing[index] || !canBe(bundle, bundle.cards[index]!.pieces) ? count : upTo[index]!,
      );
    },
    mostArea: (copies) =>
      parts.reduce((sum, { stock, least }) => sum + stock.mostValue(least(copies)).value, 0),
  };
}

/** Whether every piece has a paper that is large enough, and one that is not used up. */
function canBe({ papers }: Bundle, pieces: readonly BundlePiece[]): boolean {
  return pieces.every((piece) => {
    const own = papers.filter(({ id }) => piece.papers.includes(id));
    return own.some((sheet) => fits(piece, sheet)) && own.some(({ count }) => count > 0);
  });
}

type Rectangle = Pick<BundlePiece, "width" | "height">;

function fits(piece: Rectangle, sheet: Rectangle): boolean {
  return (
    (piece.width <= sheet.width && piece.height <= sheet.height) ||
    (piece.height <= sheet.width && piece.width <= sheet.height)
  );
}

/** Papers that some piece ties together. */
function partsOf({ papers, cards }: Bundle): readonly ReadonlySet<string>[] {
  const parts = papers.map(({ id }) => new Set([id]));
  for (const { papers: of } of cards.flatMap(({ pieces }) => pieces)) {
    const [first, ...others] = parts.filter((part) => of.some((id) => part.has(id)));
    for (const other of others) {
      for (const id of other) first!.add(id);
      parts.splice(parts.indexOf(other), 1);
    }
  }
  return parts;
}

interface PartStock {
  readonly stock: SmallStock;
  readonly cards: ReadonlySet<number>;
  readonly least: (copies: readonly number[]) => readonly number[];
}

function partStock({ papers, cards }: Bundle, part: ReadonlySet<string>, upTo: readonly number[]): PartStock {
  const sheets = papers.filter(({ id }) => part.has(id));
  const own = cards.flatMap(({ pieces }, index) =>
    pieces
      // What is too large for all its papers is planned nowhere.
      .filter((piece) => sheets.some((sheet) => piece.papers.includes(sheet.id) && fits(piece, sheet)))
      .map((piece) => ({ index, piece })),
  );
  const problem: Problem = {
    kinds: own.map(({ index, piece: { width, height, papers: of } }, k) => ({
      id: `${k}`,
      quantity: upTo[index]!,
      forms: [{ width, height, sheets: of.map((sheet) => ({ sheet })) }],
    })),
    sheets: sheets.map(({ id, width, height, count }) => ({ id, width, height, stock: count })),
    mode: "guillotine",
    aim: "all",
  };
  return {
    stock: smallStock(problem),
    cards: new Set(own.map(({ index }) => index)),
    least: (copies) => own.map(({ index }) => copies[index]!),
  };
}

/** One step of the rule after the other; cards that do not grow stay at none. `steps` is what it comes to on the way. */
export function copiesByRule(
  wanted: readonly number[],
  mayGrow: readonly boolean[],
  gives: (copies: readonly number[]) => boolean,
): { readonly copies: readonly number[]; readonly steps: readonly number[] } {
  const whole = Math.max(0, ...wanted.filter((_, index) => mayGrow[index]));
  const steps: number[] = [];
  let copies: readonly number[] = wanted.map(() => 0);
  let growing = mayGrow;
  while (growing.includes(true)) {
    const shared = (part: number): readonly number[] =>
      copies.map((count, index) =>
        growing[index] ? Math.max(count, Math.floor((wanted[index]! * part) / whole)) : count,
      );
    const parts = Array.from({ length: whole + 1 }, (_, part) => whole - part);
    const part = parts.find((one) => gives(shared(one))) ?? 0;
    steps.push(part);
    copies = shared(part);
    growing = growing.map((grows, index) => {
      if (!grows) return false;
      const more = copies.map((count, other) => (other === index ? count + 1 : count));
      const isMore = more[index]! <= wanted[index]! && gives(more);
      steps.push(isMore ? 1 : 0);
      if (isMore) copies = more;
      return isMore;
    });
  }
  return { copies, steps };
}
