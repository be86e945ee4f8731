import { formatLength, formatSize, type Size, type Ticks } from "@sheetwright/measure";
import { outlineOf, stitch, thinPlaces } from "@sheetwright/shapes";
import { shapeOfPiece } from "../expand/shape-of-piece.js";
import type { CardLayer, Expansion, Piece, PieceDie } from "../expansion.js";
import type { DieCut, DieSize, Layer, Project } from "../project.js";
import { usualDieMachine } from "../project-file/read-die-machine.js";
import type { Found } from "./finding.js";

/**
 * Finds die blanks that are too large for the die machine, bridges of paper that will tear, and lines of stitches that do not
 * run all round.
 *
 * @internal
 */
export function findOddDieCuts(project: Project, { cards, pieces }: Expansion): readonly Found[] {
  const { units, dieMachine = usualDieMachine(units) } = project;
  const layers = new Map(cards.flatMap((card) => card.layers.map((layer) => [layer.piece, layer] as const)));
  return [
    ...pieces.flatMap((piece) => {
      const { die } = piece;
      if (die === undefined) return [];
      return [
        ...(die.name === null ? [] : tooWide(piece, die, dieMachine.platform, project)),
        ...thinBridges(piece, layers.get(piece.id), dieMachine.narrowestBridge, project),
      ];
    }),
    ...project.cards.flatMap(({ surfaces }) =>
      surfaces.flatMap((surface) => surface.layers.flatMap((layer) => brokenStitches(layer, pieces))),
    ),
  ];
}

function tooWide(
  { label, path, forms }: Piece,
  { name, cut }: PieceDie,
  platform: Size,
  { units: unit }: Project,
): readonly Found[] {
  const [form] = forms;
  if (form === undefined || goesOn(form, platform)) return [];
  const say = ({ width, height }: Size) => formatSize(width, height, { unit });
  const help = goesOn(cut, platform)
    ? `The shape itself is ${say(cut)}: with a narrower margin it goes.`
    : `The shape itself is ${say(cut)} and does not go either: take a smaller size, or a larger machine.`;
  const message =
    `The ${label} of ${say(form)}, for the die ${name}, does not go between the plates of the die machine, ` +
    `${say(platform)}, whichever way it lies. ${help} If your plates are larger, say so under die-machine, such as platform: large.`;
  return [{ code: "die-blank-too-wide", path, message }];
}

function goesOn({ width, height }: Size, platform: Size): boolean {
  const isUpright = width <= platform.width && height <= platform.height;
  return isUpright || (height <= platform.width && width <= platform.height);
}

/** What is left after a straight cut counts: that is what has to hold. */
function thinBridges(
  { label, path }: Piece,
  layer: CardLayer | undefined,
  narrowest: Ticks,
  { units: unit }: Project,
): readonly Found[] {
  if (narrowest === 0 || layer?.outline === undefined) return [];
  const thin = layer.outline.flatMap((outline) =>
    thinPlaces(outline, narrowest).filter(({ kind }) => kind === "bridge"),
  );
  const [first] = thin;
  if (first === undefined) return [];
  const width = Math.min(...thin.map((place) => place.width));
  const say = (ticks: Ticks) => formatLength(ticks, { unit });
  const places = thin.length === 1 ? "At one place" : `At ${thin.length} places`;
  const message =
    `${places} of ${shapeOfPiece(`the ${label}`)} the paper between two cuts is narrow, ${say(Math.round(width))} at the narrowest, and ` +
    `narrower than ${say(narrowest)} tears and curls. Make the window smaller or the shape larger, or cut off less.`;
  return [{ code: "thin-bridge", path, message }];
}

function brokenStitches(layer: Layer, pieces: readonly Piece[]): readonly Found[] {
  const inner = layer.layers.flatMap((one) => brokenStitches(one, pieces));
  return layer.kind === "die" && isBroken(layer) ? [brokenIn(layer, pieces), ...inner] : inner;
}

function isBroken({ shape, stitched }: DieSize): boolean {
  if (shape === undefined || stitched === undefined) return false;
  const { by: _, ...options } = stitched;
  const { line, tooShort } = stitch(outlineOf(shape), options);
  return line === "split" || tooShort > 0;
}

function brokenIn({ path, stitched }: DieCut, pieces: readonly Piece[]): Found {
  const label = pieces.find((piece) => piece.path === path)?.label ?? "die blank";
  const message =
    `The line of stitches in ${shapeOfPiece(`the ${label}`)} does not run all round: where the shape is too narrow, or a stretch of its edge ` +
    "shorter than half a stitch, there is none. Bring the line nearer to the edge, or take shorter stitches.";
  return { code: "stitches-broken", path: stitched?.by === "hand" ? `${path}.stitched` : path, message };
}
