// Bands made at random, with bands that divide them, and joins of layers that a pad is too small for. What keeps them free
// of contradictions is that a share is taken as what is left of it at least when its ends are rounded and gaps taken off.

import { inches, millimetres, type Size, type Ticks } from "@sheetwright/measure";
import type { Draw, FileObject, FileValue } from "./random-draw.js";
import type { RandomPapers } from "./random-papers.js";

/** What bands are made of. */
export interface BandRoom {
  readonly draw: Draw;
  readonly papers: RandomPapers;
  readonly precision: Ticks;
}

const WORDS: Readonly<Record<string, readonly number[]>> = {
  halves: [1, 1],
  thirds: [1, 1, 1],
  quarters: [1, 1, 1, 1],
  "two thirds and one third": [2, 1],
  "one third and two thirds": [1, 2],
};

/** Bands for a layer of a size; `null` where there is no room for them. */
export function randomBands(room: BandRoom, size: Size): FileObject | null {
  return bandsIn(room, size, room.draw.one(["across", "upright"] as const), "across", 0);
}

type Runs = "across" | "upright";

function bandsIn(room: BandRoom, size: Size, runs: Runs, usual: Runs, depth: number): FileObject | null {
  const { draw, papers, precision } = room;
  const side = runs === "across" ? "height" : "width";
  const shares = randomShares(room, size[side], depth === 0);
  if (shares === null) return null;
  const { bands, parts } = shares;
  const gap = draw.sometimes(25) ? draw.step : 0;
  // What is left of each when both its ends are moved by rounding, and gaps are taken off.
  const least = parts.map((part) => part - precision - 2 * gap - 2);
  if (Math.min(...least) < 2 * precision) return null;
  const edge = Math.min(parts[0] ?? 0, parts.at(-1) ?? 0);
  const widest = Math.floor(Math.min(2 * edge - precision - 2, size[side] - draw.step) / draw.step);
  const other = runs === "across" ? "upright" : "across";
  return {
    bands,
    papers: least.map((part) => {
      const inner = { ...size, [side]: part };
      const nested =
        depth < 2 && draw.sometimes(12)
          ? bandsIn(room, inner, draw.one([other, runs]), other, depth + 1)
          : null;
      return nested ?? papers.choice();
    }),
    ...(runs !== usual || draw.sometimes(20) ? { runs } : {}),
    ...randomSeam(room, widest, gap),
  };
}

/** How bands are divided, and what each takes at least before anything is rounded. */
function randomShares(
  { draw, precision }: BandRoom,
  extent: Ticks,
  isExact: boolean,
): { readonly bands: FileValue; readonly parts: readonly Ticks[] } | null {
  const byRatio = (bands: FileValue, ratios: readonly number[]) => {
    const sum = ratios.reduce((all, ratio) => all + ratio, 0);
    return { bands, parts: ratios.map((ratio) => Math.floor((extent * ratio) / sum)) };
  };
  const way = draw.whole(0, 9);
  if (way < 2) {
    const word = draw.one(Object.keys(WORDS));
    return byRatio(word, WORDS[word] ?? []);
  }
  if (way > 6) {
    const steps = Math.floor(extent / draw.step);
    const count = draw.whole(2, 3);
    const each = Math.floor(steps / (count + 1));
    if (each * draw.step < 4 * precision) return null;
    const widths = Array.from({ length: count - 1 }, () => draw.whole(Math.ceil(each / 2), each));
    const rest = extent - widths.reduce((sum, width) => sum + width, 0) * draw.step;
    const at = draw.whole(0, widths.length);
    const written: FileValue[] = widths.map((width) => draw.length(width));
    const adds = isExact && rest % draw.step === 0 && draw.sometimes(30);
    written.splice(at, 0, adds ? draw.length(rest / draw.step) : "rest");
    const parts = widths.map((width) => width * draw.step);
    parts.splice(at, 0, rest);
    return { bands: { widths: written }, parts };
  }
  const ratios = Array.from({ length: draw.whole(2, 4) }, () => draw.whole(1, 4));
  return byRatio(ratios, ratios);
}

function randomSeam({ draw, papers }: BandRoom, widest: number, gap: Ticks): FileObject {
  const apart = gap === 0 ? {} : { gap: draw.length(gap / draw.step) };
  const way = draw.whole(0, 7);
  if (way < 2 && gap === 0) return {};
  if (way === 0) return { seam: apart };
  if (way < 3 || widest < 1) return { seam: gap === 0 ? "bare" : { bare: true, ...apart } };
  return { seam: { ...randomCover(draw, papers, Math.min(widest, 20)), ...apart } };
}

function randomCover(draw: Draw, papers: RandomPapers, most: number): FileObject {
  const width = draw.length(draw.whole(1, most));
  const way = draw.whole(0, 5);
  if (way === 0) return { tape: "washi", width };
  if (way === 1) return { ribbon: "copper ribbon", width, colour: "#b87333" };
  return { cover: papers.choice(), width };
}

/**
 * How a layer from a pad is made up; nothing where it is of other paper, or where no join would do. A pad has no trim and
 * no offcuts and is square, so that what it gives is known.
 */
export function randomJoin({ draw, papers, precision }: BandRoom, own: FileObject, size: Size): FileObject {
  const { stars } = papers.file;
  const paper = own.mat ?? own.panel ?? own.strip;
  if (stars === undefined || typeof paper !== "string" || !/^stars(\.[a-z]+)?$/.test(paper)) return {};
  if (own.grain !== undefined) return {};
  const pad = Number.parseInt(String((stars as FileObject).pad), 10);
  const gives = draw.unit === "in" ? inches(pad) : millimetres(pad);
  const long = Math.max(size.width, size.height);
  if (Math.min(size.width, size.height) > gives || long > 2 * gives - 2 * precision) return {};
  if (!draw.sometimes(60)) return {};
  const bare: FileObject = draw.sometimes(50) ? {} : { bare: true };
  const gap: FileObject = draw.sometimes(20) && long > 12 * precision ? { gap: draw.length(1) } : {};
  const way = draw.whole(0, 2);
  if (way === 0) {
    const at: FileObject = draw.sometimes(50) ? {} : { at: draw.one(["both ends", "one end"]) };
    return { join: { ends: papers.choice(), ...at, ...bare } };
  }
  const third = Math.floor(long / 3 / draw.step) - 1;
  const seam = third < 2 || draw.sometimes(40) ? bare : randomCover(draw, papers, Math.min(third, 16));
  return { join: { parts: way === 1 ? 2 : 3, ...seam, ...gap } };
}
