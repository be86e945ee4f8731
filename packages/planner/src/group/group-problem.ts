import { allowedTurns, type Paper, type PaperDesign, type Piece, type Project } from "@sheetwright/cards";
import { formatSize } from "@sheetwright/measure";
import type { Form, Kind, Problem, Sheet, SheetTurns, Turns } from "@sheetwright/packing";
import type { PaperGroup } from "../plan-model.js";
import { costUnits } from "./cost-units.js";
import { faceOf, facesById, type SheetFace } from "./faces-by-id.js";
import type { PaperCluster } from "./group-papers.js";

/** What of the project, besides papers and pieces, a group's problem hangs on. */
export type Workshop = Pick<Project, "units" | "trimmer">;

/** Papers planned together, before the search. */
export type GroupTask = Pick<PaperGroup, "designs" | "problem" | "sheets" | "strips" | "bags">;

/**
 * States what is to be cut from a cluster of papers as a problem for packing. Forms keep their order, so that a share's
 * form is the piece's; a form without sheets cannot be cut from this cluster.
 *
 * @param hopeless Numbers of the cards that cannot be completed, since no paper can give some piece of theirs: where stock
 * is short, the others come first.
 */
export function groupProblem(
  cluster: PaperCluster,
  workshop: Workshop,
  hopeless: ReadonlySet<number>,
): GroupTask {
  const sheets = cluster.designs.flatMap(({ paper, design }) => [
    { sheet: design.id, paper, design, offcut: null },
    ...design.offcuts.map((_, i) => ({ sheet: `${design.id}/${i + 1}`, paper, design, offcut: i + 1 })),
  ]);
  const faces = facesById(cluster.designs.map(({ paper }) => paper));
  const costOf = sheetCosts(cluster);
  const { kerf, smallestOffcut, cuts } = workshop.trimmer;
  const problem: Problem = {
    kinds: cluster.pieces.map((piece) => kindOf(piece, faces, sheets, hopeless)),
    sheets: sheets.map((one) => sheetOf(sheetOfBag(one, cluster.bags), workshop, costOf)),
    mode: cuts === "strips" ? "shelf" : "guillotine",
    aim: "all",
    ...(kerf === 0 ? {} : { kerf }),
    smallestOffcut: { width: smallestOffcut.width, height: smallestOffcut.height },
  };
  return {
    designs: cluster.designs.map(({ design }) => design.id),
    problem,
    ...(cluster.bags === undefined ? {} : { bags: cluster.bags }),
    sheets: sheets.map(({ sheet, design, offcut }) => ({ sheet, design: design.id, offcut })),
  };
}

/** Of what goes out whole each bag gets the same: what does not divide stays with the maker. */
function sheetOfBag(one: ClusterSheet, bags: number | undefined): ClusterSheet {
  if (bags === undefined) return one;
  const { design } = one;
  const offcuts = design.offcuts.map((offcut) => ({ ...offcut, count: Math.floor(offcut.count / bags) }));
  const count = design.count === null ? null : Math.floor(design.count / bags);
  return { ...one, design: { ...design, count, offcuts } };
}

interface ClusterSheet {
  readonly sheet: string;
  readonly paper: Paper;
  readonly design: PaperDesign;
  /** The offcut's place in the design's list, from 1; `null` for a whole sheet. */
  readonly offcut: number | null;
}

function kindOf(
  piece: Piece,
  faces: ReadonlyMap<string, SheetFace>,
  sheets: readonly ClusterSheet[],
  hopeless: ReadonlySet<number>,
): Kind {
  const sides = piece.faces.map((id) => faceOf(faces, id));
  return {
    id: piece.id,
    name: piece.label,
    quantity: piece.quantity,
    forms: piece.forms.map((form): Form => {
      const allowed = sheets.flatMap(({ sheet, paper, design }): SheetTurns[] => {
        const turns = sides
          .filter((side) => side.design.id === design.id)
          .map(({ face }) => allowedTurns(form, face.pattern, paper.grain, piece.grainNeed))
          .reduce(eitherTurns, null);
        return turns === null ? [] : [{ sheet, turns }];
      });
      return { width: form.width, height: form.height, sheets: allowed };
    }),
    ...(hopeless.has(piece.card) || piece.quantity === 0 ? {} : { set: { of: String(piece.card), each: 1 } }),
  };
}

function eitherTurns(a: Turns | null, b: Turns | null): Turns | null {
  if (a === null || b === null) return a ?? b;
  return a === b ? a : "both";
}

function sheetOf(one: ClusterSheet, { units, trimmer }: Workshop, costOf: SheetCosts): Sheet {
  const { sheet: id, paper, design, offcut } = one;
  const name = paper.material === "pad" ? `${paper.name}: ${design.name}` : paper.name;
  const longest = trimmer.longestCut === null ? {} : { longestCut: trimmer.longestCut };
  if (offcut !== null) {
    const { width, height, count } = design.offcuts[offcut - 1]!;
    const size = formatSize(width, height, { unit: units });
    return { id, name: `${name}, offcut ${size}`, width, height, stock: count, cost: 0, ...longest };
  }
  const { left, right, top, bottom } = paper.trim;
  return {
    id,
    name,
    width: paper.sheet.width,
    height: paper.sheet.height,
    ...(design.count === null ? {} : { stock: design.count }),
    ...(costOf === null ? {} : { cost: costOf(design) }),
    ...(left + right + top + bottom === 0 ? {} : { trim: { left, right, top, bottom } }),
    ...longest,
  };
}

/** What a whole sheet costs in the problem; `null`: its area. */
type SheetCosts = ((design: PaperDesign) => number) | null;

/** More free sheets than a plan takes, so that all of them together weigh less than the smallest difference of costs. */
const FREE_SHEETS = 10_000n;

/**
 * Costs decide where every design has one and some is not free; else the area of the sheets does. Where some is free, its
 * sheets still weigh a little: offcuts, which weigh nothing, go before them.
 */
function sheetCosts({ designs }: PaperCluster): SheetCosts {
  const costs = designs.map(({ design }) => (design.cost === null ? null : costUnits(design.cost)));
  if (costs.includes(null) || costs.every((cost) => cost === 0n)) return null;
  const scale = costs.includes(0n) ? FREE_SHEETS : 1n;
  return ({ cost }) => {
    const units = costUnits(cost ?? "0");
    return Number(units === 0n ? 1n : units * scale);
  };
}
