import type { Expansion, Paper, PaperDesign, Piece } from "@sheetwright/cards";
import { faceOf, facesById } from "./faces-by-id.js";

/** Papers that must be planned together, since some piece may come from any of them, and all pieces from them. */
export interface PaperCluster {
  /** In the order of the project. */
  readonly designs: readonly { readonly paper: Paper; readonly design: PaperDesign }[];
  /** In the order of the labels. */
  readonly pieces: readonly Piece[];
  /** Bags that the papers go into whole, so that one bag is planned. Absent: they are cut for all. */
  readonly bags?: number | undefined;
}

/**
 * Divides pieces and papers into the smallest clusters that can be planned apart: the connected parts of the graph that
 * joins every piece with the designs it may be cut from. Papers without a piece are in no cluster. Clusters come in the
 * order of their first designs.
 */
export function groupPapers(
  expansion: Pick<Expansion, "papers" | "pieces">,
  leftOut: ReadonlySet<string>,
): readonly PaperCluster[] {
  const faces = facesById(expansion.papers);
  const pieces = expansion.pieces.filter((piece) => !leftOut.has(piece.id));
  const designsOf = (piece: Piece): readonly string[] => piece.faces.map((id) => faceOf(faces, id).design.id);

  const leaders = new Map<string, string>();
  const leaderOf = (design: string): string => {
    const above = leaders.get(design) ?? design;
    return above === design ? design : leaderOf(above);
  };
  for (const piece of pieces) {
    const [first, ...others] = designsOf(piece);
    if (first === undefined) throw new RangeError(`Expected piece ${piece.id} to name a face, found none.`);
    leaders.set(first, leaderOf(first));
    for (const other of others) leaders.set(leaderOf(other), leaderOf(first));
  }

  const clusters = new Map<string, { designs: PaperCluster["designs"][number][]; pieces: Piece[] }>();
  for (const paper of expansion.papers) {
    for (const design of paper.designs) {
      if (!leaders.has(design.id)) continue;
      const leader = leaderOf(design.id);
      const cluster = clusters.get(leader) ?? { designs: [], pieces: [] };
      cluster.designs.push({ paper, design });
      clusters.set(leader, cluster);
    }
  }
  for (const piece of pieces) clusters.get(leaderOf(designsOf(piece)[0] ?? ""))?.pieces.push(piece);
  return [...clusters.values()].map(withBags);
}

/** Papers of one cluster all go out whole, or none does: no piece may come from both. */
function withBags(cluster: PaperCluster): PaperCluster {
  const bags = cluster.designs[0]?.paper.bags;
  return bags === undefined ? cluster : { ...cluster, bags };
}

/** A cluster with the pieces of one bag, where its papers go out whole; any other one as it is. */
export function inOneBag(cluster: PaperCluster): PaperCluster {
  const { bags } = cluster;
  if (bags === undefined) return cluster;
  return {
    ...cluster,
    pieces: cluster.pieces.map((piece) => ({ ...piece, quantity: piece.quantity / bags })),
  };
}
