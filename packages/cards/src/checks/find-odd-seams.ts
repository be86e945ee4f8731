import { formatLength } from "@sheetwright/measure";
import { CUTTING_ERROR } from "../expand/seam-of.js";
import type { Card, CardSeam, Expansion } from "../expansion.js";
import type { Project } from "../project.js";
import type { Found } from "./finding.js";
import { listed } from "./listed.js";
import { seamShows } from "./seam-shows.js";

/**
 * Finds seams that show on any surface without being asked to, and covers that are not wider than the gap of their seam and
 * the error of a cut on both sides of it.
 *
 * @internal
 */
export function findOddSeams(_: Project, { cards, units }: Expansion): readonly Found[] {
  return cards.flatMap((card) => {
    // Those of one layer are told of together.
    const paths = [...new Set(card.seams.map(({ path }) => path))];
    return paths.flatMap((path) => lookAtSeams(path, card, units));
  });
}

function lookAtSeams(path: string, card: Card, unit: Expansion["units"]): readonly Found[] {
  const seams = card.seams.filter((seam) => seam.path === path);
  const bare = seams.filter((seam) => seam.cover === null && !seam.bare && seamShows(seam, card.layers));
  return [
    ...(bare.length === 0 ? [] : [sayBare(path, bare, unit)]),
    ...seams.flatMap((seam) => lookAtCover(seam, card, unit)).slice(0, 1),
  ];
}

function sayBare(path: string, seams: readonly CardSeam[], unit: Expansion["units"]): Found {
  const isJoin = path.endsWith(".join");
  const where = listed(seams.map(({ position }) => formatLength(position, { unit })));
  const start = seams[0]?.runs === "upright" ? "left" : "top";
  const [noun, them, they] = seams.length > 1 ? ["seams", "them", "they are"] : ["seam", "it", "it is"];
  const bare = isJoin ? "bare: true" : "seam: bare";
  const message =
    `The ${noun} ${where} from the ${start} of ${isJoin ? "this layer" : "these bands"} will show. ` +
    `Cover ${them} with a strip, or write \`${bare}\` if ${they} to be seen.`;
  return { code: "bare-seam", path, message };
}

function lookAtCover(seam: CardSeam, { layers }: Card, unit: Expansion["units"]): readonly Found[] {
  const cover = layers.find(({ piece }) => piece === seam.cover);
  if (cover === undefined) return [];
  const [width, gap] = seam.runs === "across" ? [cover.height, seam.height] : [cover.width, seam.width];
  const least = gap + 2 * CUTTING_ERROR[unit];
  if (width > least) return [];
  const say = (ticks: number) => formatLength(ticks, { unit });
  const apart = gap === 0 ? "" : `, and the parts stand ${say(gap)} apart`;
  return [
    {
      code: "narrow-cover",
      path: seam.path.endsWith(".join") ? `${seam.path}.width` : `${seam.path}.seam.width`,
      message:
        `A cover of ${say(width)} may not hide its seam: cuts are up to ${say(CUTTING_ERROR[unit])} off on each ` +
        `side${apart}. Make it wider than ${say(least)}.`,
    },
  ];
}
