// What each part of a card is made of, in g/m2 and ticks of thickness.

import { millimetres, type Ticks } from "@sheetwright/measure";
import { indexFaces } from "../expand/face-index.js";
import type { Expansion, Item, Piece } from "../expansion.js";
import { type Basis, paperMeasures, weaker } from "./paper-measures.js";

/** What a piece or an item is made of. Where several papers will do, the heaviest and the thickest of them. */
export interface Stuff {
  /** In g/m2. */
  readonly grammage: number;
  readonly caliper: Ticks;
  readonly grammageBasis: Basis;
  readonly caliperBasis: Basis;
}

/** Satin ribbon and paper tape. From memory, with low confidence. */
const USUAL: Readonly<Record<Item["kind"], { readonly grammage: number; readonly caliper: Ticks }>> = {
  ribbon: { grammage: 100, caliper: millimetres(0.3) },
  tape: { grammage: 80, caliper: millimetres(0.1) },
};

/**
 * Tells for the id of a piece or an item of a project what it is made of; `undefined` of an id that is not there.
 *
 * @internal
 */
export function stuffOf({
  papers,
  pieces,
  items,
}: Pick<Expansion, "papers" | "pieces" | "items">): (id: string) => Stuff | undefined {
  const faces = indexFaces({ papers });
  const measures = new Map(papers.map((paper) => [paper.id, paperMeasures(paper)]));
  const ofPiece = ({ faces: ids }: Piece): Stuff | undefined => {
    const found = [...new Set(ids.map((id) => faces.get(id)?.paper.id ?? ""))].flatMap(
      (id) => measures.get(id) ?? [],
    );
    if (found.length === 0) return undefined;
    return {
      grammage: Math.max(...found.map(({ grammage }) => grammage.value)),
      caliper: Math.max(...found.map(({ caliper }) => caliper.value)),
      grammageBasis: found.map(({ grammage }) => grammage.basis).reduce(weaker),
      caliperBasis: found.map(({ caliper }) => caliper.basis).reduce(weaker),
    };
  };
  const known = new Map<string, Stuff>();
  for (const piece of pieces) {
    const stuff = ofPiece(piece);
    if (stuff !== undefined) known.set(piece.id, stuff);
  }
  for (const { id, kind } of items) {
    known.set(id, { ...USUAL[kind], grammageBasis: "assumed", caliperBasis: "assumed" });
  }
  return (id) => known.get(id);
}
