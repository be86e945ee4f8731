import type { Ticks } from "@sheetwright/measure";
import type { LayerPiece, SurfaceFacts } from "./card-facts.js";
import type { Surface } from "./visible-part.js";

/** Bands that meet edge to edge; they lie and carry as one surface. */
export interface Block extends Surface {
  /** From the top or the left. */
  readonly bands: readonly LayerPiece[];
  /** `across`: one below the other. */
  readonly runs: "across" | "upright";
  /** Where the bands begin, from the start of the block, and its extent at the end. */
  readonly boundaries: readonly Ticks[];
}

/** Finds the blocks of a card: layers of one entry of the file, on one carrier, each beginning where the last one ends. */
export function bandBlocks({ layers }: Pick<SurfaceFacts, "layers">): readonly Block[] {
  const blocks: Block[] = [];
  for (let i = 0; i < layers.length; ) {
    const block = blockFrom(layers, i);
    if (block !== null) blocks.push(block);
    i += block?.bands.length ?? 1;
  }
  return blocks;
}

function blockFrom(layers: readonly LayerPiece[], start: number): Block | null {
  const [across, upright] = (["across", "upright"] as const).map((runs) => {
    let end = start + 1;
    while (follows(layers[end - 1], layers[end], runs)) end += 1;
    return layers.slice(start, end);
  });
  const runs = (across?.length ?? 0) >= (upright?.length ?? 0) ? "across" : "upright";
  const bands = (runs === "across" ? across : upright) ?? [];
  const first = bands[0]?.layer;
  if (first === undefined || bands.length < 2) return null;
  const boundaries = [0];
  for (const { layer } of bands) {
    boundaries.push((boundaries.at(-1) ?? 0) + (runs === "across" ? layer.height : layer.width));
  }
  const extent = boundaries.at(-1) ?? 0;
  return {
    x: first.x,
    y: first.y,
    width: runs === "across" ? first.width : extent,
    height: runs === "across" ? extent : first.height,
    bands,
    runs,
    boundaries,
  };
}

function follows(
  before: LayerPiece | undefined,
  after: LayerPiece | undefined,
  runs: Block["runs"],
): boolean {
  if (before === undefined || after === undefined) return false;
  const [a, b] = [before.layer, after.layer];
  if (
    before.piece.path !== after.piece.path ||
    before.piece.purpose !== after.piece.purpose ||
    a.on !== b.on
  ) {
    return false;
  }
  return runs === "across"
    ? a.x === b.x && a.width === b.width && a.y + a.height === b.y
    : a.y === b.y && a.height === b.height && a.x + a.width === b.x;
}
