import { formatLength, formatSize, type Unit } from "@sheetwright/measure";
import type { CutOrder, CutPart } from "@sheetwright/packing";
import type { LaidOut } from "../layout/lay-out.js";
import type { PieceList } from "../layout/list-pieces.js";
import { unbroken } from "../text/break-lines.js";

/** Says each cut in words: what to take, where to line it up, and what comes of it. */
export function cutSentences(
  { parts, cuts }: CutOrder,
  laidOut: LaidOut,
  { entryOf }: PieceList,
  unit: Unit,
): readonly string[] {
  const byId = new Map(parts.map((part) => [part.id, part]));
  const cameFrom = new Map(
    cuts.flatMap(({ number, held, off }) => [
      [held, number] as const,
      ...(off === null ? [] : [[off, number] as const]),
    ]),
  );
  const labels = new Map(laidOut.pieces.map((piece, index) => [placeOf(piece), entryOf[index]?.label ?? ""]));
  const sizeOf = ({ width, height }: CutPart) => unbroken(formatSize(width, height, { unit }));

  function partOf(id: number): CutPart {
    const part = byId.get(id);
    if (part === undefined)
      throw new RangeError(`cuts: the cut order names a part ${id} that it does not list.`);
    return part;
  }

  function gives(id: number): string {
    const part = partOf(id);
    switch (part.what) {
      case "piece":
        return labels.get(placeOf(part)) ?? `a piece ${sizeOf(part)}`;
      case "offcut":
        return `an offcut ${sizeOf(part)}`;
      case "waste":
      case "trim":
        return `${part.what} ${sizeOf(part)}`;
      default:
        return `a part ${sizeOf(part)}`;
    }
  }

  return cuts.map(({ part, edge, distance, held, off, newSetting, tooNarrow }) => {
    const from = cameFrom.get(part);
    const take =
      from === undefined ? "" : `From ${unbroken(`cut ${from}`)} take the part ${sizeOf(partOf(part))}. `;
    const at = unbroken(formatLength(distance, { unit }));
    const set = newSetting ? `Line up the ${edge} edge at ${at}` : `Same setting, ${edge} edge at ${at}`;
    const how = tooNarrow
      ? "too narrow to hold, so cut along a metal ruler"
      : newSetting
        ? "cut edge to edge"
        : "cut";
    const given = off === null ? gives(held) : bothOf(gives(held), gives(off));
    return `${take}${set}, ${how}: ${given}.`;
  });
}

/** What a cut gives on its two sides; a list that would stand there twice is said once. */
function bothOf(held: string, off: string): string {
  return held === off && held.includes(", ") ? `twice ${held}` : `${held} and ${off}`;
}

function placeOf({ x, y, width, height }: Pick<CutPart, "x" | "y" | "width" | "height">): string {
  return `${x} ${y} ${width} ${height}`;
}
