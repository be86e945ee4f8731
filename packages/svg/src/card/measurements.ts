/**
 * What the measurements of one copy say, in words and in the order of a handout: pieces, steps, roundings, a caution.
 * Page and text are both set from this.
 */

import { formatLength, formatSize, type Ticks } from "@sheetwright/measure";
import type { PieceForm, Rounding } from "@sheetwright/planner";
import { unbroken } from "../text/break-lines.js";
import { DIE_HOW, dieInWords } from "../wording/die-in-words.js";
import { displayName } from "../wording/display-name.js";
import { revealInWords } from "../wording/reveal-in-words.js";
import { type Block, bandBlocks } from "./band-blocks.js";
import type { CardFacts, CardPiece, LayerPiece, SurfaceFacts } from "./card-facts.js";
import { glueCaution } from "./closed-front.js";
import { cutSizes } from "./cut-sizes.js";
import { extraSteps } from "./extra-steps.js";
import { foldStep, scoresAt, slitsAt } from "./fold-steps.js";
import { partsOfLayer } from "./parts-of-layer.js";
import { otherUnit, placeInWords } from "./place-in-words.js";
import { surfaceInWords } from "./surface-in-words.js";

/** A piece as the list tells of it. */
export interface MeasuredPiece {
  readonly piece: CardPiece;
  /** Its sizes in the project's unit and in the other, without the unit's name; two where it may be folded either way. */
  readonly sizes: readonly { readonly first: string; readonly second: string }[];
  /** Where it lies, and what to mind. */
  readonly notes: readonly string[];
}

/** Everything a handout says of one card. */
export interface Measurements {
  readonly pieces: readonly MeasuredPiece[];
  /** What the mark before some sizes means; `null` where there is none. */
  readonly markNote: string | null;
  readonly steps: readonly string[];
  /** Empty where nothing was rounded. */
  readonly roundings: readonly string[];
  readonly caution: string;
}

const CAUTION =
  "Cut with the guard in place and the paper held down by the tool, not by fingers near the blade; put the blade away " +
  "before you pick anything up. For trimmer, blades and glue, what their makers say comes before this page.";
const SLIT_CAUTION =
  "With a craft knife, hold the ruler well back from its edge, cut beside your body and not towards it, and cap the knife.";
const EQUAL_PARTS = ["", "", "Halves", "Thirds", "Quarters", "Fifths", "Sixths"];

/** Works the words out. */
export function measurementsOf(facts: CardFacts): Measurements {
  const surfaces = [facts, ...facts.elsewhere].map((of) => ({ of, blocks: bandBlocks(of) }));
  const pieces = [
    basePiece(facts),
    ...surfaces.flatMap(({ of, blocks }) =>
      of.layers.filter(isFirstOf(facts)).map((layer) => layerPiece(of, layer, blocks)),
    ),
  ];
  const isSlit = facts.card.flats.some(({ slits }) => slits.length > 0);
  const isDieCut = pieces.some(({ piece: { piece } }) => piece.die !== undefined);
  const marked = pieces.some(({ sizes }) =>
    sizes.some(({ first, second }) => `${first}${second}`.includes("~")),
  );
  return {
    pieces,
    markNote: marked ? `~ is rounded: cut by the ${facts.unit === "in" ? "inches" : "millimetres"}.` : null,
    steps: [
      ...baseSteps(facts),
      ...surfaces.flatMap(({ of, blocks }) => layerSteps(of, blocks)),
      ...extraSteps(facts),
    ],
    roundings: surfaces.flatMap(({ of, blocks }) => roundingsOf(of, blocks)),
    caution: [CAUTION, ...(isSlit ? [SLIT_CAUTION] : []), ...(isDieCut ? [DIE_HOW] : [])].join(" "),
  };
}

function sizesOf(
  { unit }: SurfaceFacts,
  sizes: readonly { readonly width: Ticks; readonly height: Ticks }[],
) {
  const second = otherUnit(unit);
  return sizes.map(({ width, height }) => ({
    first: formatSize(width, height, { unit, mark: false }),
    second: formatSize(width, height, { unit: second, mark: false }),
  }));
}

function basePiece(facts: CardFacts): MeasuredPiece {
  const { base, card } = facts;
  const scores = card.flats.flatMap((flat) =>
    flat.scores.length === 0 ? [] : [`score ${scoresAt(flat, facts.unit)}`],
  );
  const slits = card.flats.flatMap((flat) =>
    flat.slits.length === 0
      ? []
      : [`slits ${slitsAt(flat, (length) => unbroken(formatLength(length, { unit: facts.unit })))}`],
  );
  const need = base.piece.grainNeed;
  const along = base.piece.forms.every(({ grainAlong }) => grainAlong !== null);
  const grain =
    need === "ignore" || !along
      ? []
      : [need === "require" ? "grain must run along the fold" : "grain best along the fold"];
  return {
    piece: base,
    sizes: sizesOf(facts, card.flats),
    notes: [...(scores.length === 0 ? [] : [scores.join(" or ")]), ...slits, ...grain, ...minding(base)],
  };
}

function layerPiece(facts: SurfaceFacts, layer: LayerPiece, blocks: readonly Block[]): MeasuredPiece {
  const { unit } = facts;
  const block = blocks.find(({ bands }) => bands.includes(layer));
  const on = `on ${foamUnder(layer, unit)}${carrierName(facts, layer, blocks, "id")}`;
  const place = placeInWords(layer.layer.border, unit);
  const where =
    block === undefined
      ? `${on}: ${place}`
      : `${bandPlace(block, layer, facts)} of ${namesOf(block.bands, "id")}` +
        (block.bands[0] === layer ? `, together ${on}: ${place}` : "");
  const [form] = layer.piece.forms;
  const need = layer.piece.grainNeed;
  const run = form?.grainAlong === "height" ? "upright" : "across";
  const grain =
    need === "ignore" || form === undefined || form.grainAlong === null
      ? []
      : [need === "require" ? `grain must run ${run}` : `grain best ${run}`];
  const { die } = layer.piece;
  const shape = die === undefined ? [] : [`cut by ${dieInWords(die, unit)}`];
  const { forms, faces } = layer.piece;
  const scores = forms.flatMap((one) => one.scores.map((score) => `score ${scoreAt(score, unit)}`));
  const ends = layer.piece.purpose === "ribbon" && faces.length === 0 ? ["with ends to tape behind"] : [];
  const folded = scores.length === 0 ? [] : [scores.join(" or ")];
  const notes = [
    ...shape,
    ...folded,
    where,
    ...revealsOf(facts, layer),
    ...ends,
    ...grain,
    ...minding(layer),
  ];
  return { piece: layer, sizes: sizesOf(facts, cutSizes(layer)), notes };
}

/** What a mat that the next die up cuts shows round it. */
function revealsOf({ card, unit }: SurfaceFacts, { piece }: LayerPiece): readonly string[] {
  return (card.reveals ?? [])
    .filter((reveal) => reveal.piece === piece.id)
    .map((reveal) => revealInWords(reveal, unit));
}

function scoreAt({ along, at }: PieceForm["scores"][number], unit: CardFacts["unit"]): string {
  return `${unbroken(formatLength(at, { unit }))} from the ${along === "width" ? "left" : "top"}`;
}

/** An insert lies on both inside pages, and is one piece. */
function isFirstOf({ card }: Pick<CardFacts, "card">): (layer: LayerPiece) => boolean {
  return ({ piece, layer }) => card.layers.find((one) => one.piece === piece.id)?.surface === layer.surface;
}

/** `1/16 in of foam on `; nothing where the layer is glued flat. */
function foamUnder({ layer: { foam } }: LayerPiece, unit: CardFacts["unit"]): string {
  return foam === undefined ? "" : `${unbroken(formatLength(foam, { unit }))} of foam on `;
}

/** Where a band lies in its block: `top`, `2 13/16 in below the top`. */
function bandPlace({ bands, boundaries, runs }: Block, layer: LayerPiece, { unit }: SurfaceFacts): string {
  const start = boundaries[bands.indexOf(layer)] ?? 0;
  const edge = runs === "across" ? "top" : "left";
  return start === 0 ? `at the ${edge}` : `${unbroken(formatLength(start, { unit }))} from the ${edge}`;
}

/** What a maker has to mind when she cuts the piece or lays it. */
function minding({ face, piece, backs, ...rest }: CardPiece | LayerPiece): readonly string[] {
  const words = "layer" in rest ? rest.layer.text : null;
  return [
    ...(face.pattern === "one-way" ? ["pattern upright"] : []),
    ...backShowing(piece.faces.length, backs),
    ...(words === null ? [] : [`words: “${displayName({ id: "", name: words })}”`]),
  ];
}

/** That the printed back of a sheet shows; of which, where only some of the faces to cut from are backs. */
function backShowing(faces: number, backs: readonly string[]): readonly string[] {
  if (backs.length === 0) return [];
  if (backs.length === faces) return ["printed back showing"];
  return [`printed back showing where it is ${[...new Set(backs)].join(" or ")}`];
}

/** What carries a layer: a surface of the base, a piece, or the bands of a block. */
function carrierName(
  { card, base, layers }: SurfaceFacts,
  { layer: { on, surface } }: LayerPiece,
  blocks: readonly Block[],
  by: "id" | "label",
): string {
  if (on === null) {
    const where = surfaceInWords(card, surface);
    if (by === "label") return `${surface.startsWith("page-") ? "" : "the "}${where} of ${base.label}`;
    return surface === "front" ? base.piece.id : `${base.piece.id}, ${where}`;
  }
  const carrier = layers[on];
  if (carrier === undefined) return base.piece.id;
  const bands = blocks.find((block) => block.bands.includes(carrier))?.bands ?? [carrier];
  const parts = partsOfLayer(layers, carrier);
  return namesOf(parts.length > bands.length ? parts : bands, by);
}

function nameOf(piece: CardPiece, by: "id" | "label"): string {
  return by === "id" ? piece.piece.id : unbroken(piece.label);
}

/** `1c and 1d`, `1c to 1e`: of more than two the first and the last. */
function namesOf(pieces: readonly CardPiece[], by: "id" | "label"): string {
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return "";
  if (pieces.length > 2) return unbroken(`${first.piece.id} to ${last.piece.id}`);
  return first === last ? nameOf(first, by) : `${nameOf(first, by)} and ${nameOf(last, by)}`;
}

function baseSteps({ base, card, unit }: CardFacts): readonly string[] {
  const folds = card.flats.map((flat) => foldStep(flat, unbroken(base.label), unit));
  const [first] = folds;
  if (first === undefined) return [];
  // A card that may be folded either way has one step for both.
  return folds.length === 1
    ? first
    : [folds.map((steps) => steps.join(" ")).join(" Or: ")].filter((step) => step !== "");
}

function layerSteps(facts: SurfaceFacts, blocks: readonly Block[]): readonly string[] {
  const { card, layers, unit } = facts;
  const steps: string[] = [];
  const done = new Set<LayerPiece>();
  for (const layer of layers) {
    if (done.has(layer)) continue;
    const block = blocks.find(({ bands }) => bands.includes(layer));
    const place = placeInWords(layer.layer.border, unit);
    const carrier = `${foamUnder(layer, unit)}${carrierName(facts, layer, blocks, "label")}`;
    const together = block?.bands ?? [layer];
    for (const band of together) done.add(band);
    const isOnFront = layer.layer.surface === "front" && layer.layer.on === null;
    const cautions = isOnFront ? together.map((each) => glueCaution(card, each.layer)) : [];
    const glue = cautions.find((said) => said !== null) ?? null;
    const mind = glue === null ? "" : ` ${glue}`;
    const scores = layer.piece.forms.map((form) => form.scores.map((score) => scoreAt(score, unit)));
    if (scores.some((own) => own.length > 0)) {
      // A folded leaf lies on two pages and is laid once.
      if (!isFirstOf(facts)(layer)) continue;
      const at = scores.map((own) => own.join(" and ")).join(" or ");
      steps.push(
        `Score ${unbroken(layer.label)} ${at}, fold it, and lay it with its fold in that of the card on ${carrier}: ` +
          `${place}; on the other page alike.${mind}`,
      );
    } else if (block === undefined) {
      const seam = besideSeam(facts, layer) ?? seamUnder(layer, blocks);
      const isCover = card.seams.some(({ cover }) => cover === layer.piece.id);
      const middle =
        seam !== null
          ? `, its middle on the seam of ${namesOf(seam, "id")}`
          : isCover
            ? ", its middle on their seam"
            : "";
      const { die } = layer.piece;
      if (die !== undefined) steps.push(`Cut ${unbroken(layer.label)} by ${dieInWords(die, unit)}.`);
      const what = die === undefined ? unbroken(layer.label) : `the shape of ${unbroken(layer.label)}`;
      steps.push(`Lay ${what} on ${carrier}${middle}: ${place}.${mind}${endsBehind(facts, layer, blocks)}`);
    } else {
      const order = block.runs === "across" ? "from the top down" : "from left to right";
      steps.push(
        `Lay ${namesOf(block.bands, "label")} edge to edge, ${order}, on ${carrier}: together ${place}.${mind}`,
      );
    }
  }
  return steps;
}

/** What becomes of the ends of a ribbon; they cannot go behind what is glued down to its edges already. */
function endsBehind(facts: SurfaceFacts, layer: LayerPiece, blocks: readonly Block[]): string {
  const { piece } = layer;
  if (piece.purpose !== "ribbon" || piece.faces.length > 0) return "";
  if (layer.layer.on === null) return " Tape its ends behind.";
  return ` Tape its ends behind; until then leave the edges of ${carrierName(facts, layer, blocks, "id")} there unglued.`;
}

/** The two parts on both sides of the seam that a layer covers; `null` where it covers none, or there are more of them. */
function besideSeam({ card, layers }: SurfaceFacts, cover: LayerPiece): readonly LayerPiece[] | null {
  const seam = card.seams.find((one) => one.cover === cover.piece.id);
  const carrier = layers[cover.layer.on ?? -1];
  if (seam === undefined || carrier === undefined) return null;
  const [start, side, cross, breadth] =
    seam.runs === "across"
      ? (["y", "height", "x", "width"] as const)
      : (["x", "width", "y", "height"] as const);
  const parts = layers.filter(
    ({ layer, piece }) =>
      layer.surface === seam.surface &&
      layer.on === carrier.layer.on &&
      piece.path.startsWith(seam.path.replace(/\.join$/, "")) &&
      layer[cross] < seam[cross] + seam[breadth] &&
      layer[cross] + layer[breadth] > seam[cross],
  );
  const before = parts.filter(({ layer }) => layer[start] + layer[side] === seam[start]);
  const after = parts.filter(({ layer }) => layer[start] === seam[start] + seam[side]);
  return before.length === 1 && after.length === 1 ? [...before, ...after] : null;
}

/** The two bands whose seam lies under the middle of a layer on them; `null` where none does. */
function seamUnder({ layer }: LayerPiece, blocks: readonly Block[]): readonly LayerPiece[] | null {
  for (const { bands, boundaries, runs, ...block } of blocks) {
    const carrier = bands[0];
    // The doors of a gate are told of together, each with places of its own.
    if (carrier?.layer.surface !== layer.surface || layer.on === null) continue;
    const [start, extent] =
      runs === "across" ? [layer.y - block.y, layer.height] : [layer.x - block.x, layer.width];
    const whole =
      runs === "across"
        ? layer.x === block.x && layer.width === block.width
        : layer.y === block.y && layer.height === block.height;
    const at = boundaries.indexOf(start + Math.floor(extent / 2));
    const [before, after] = [bands[at - 1], bands[at]];
    if (whole && before !== undefined && after !== undefined) return [before, after];
  }
  return null;
}

function roundingsOf(facts: SurfaceFacts, blocks: readonly Block[]): readonly string[] {
  const { card, layers, unit } = facts;
  const sentences: string[] = [];
  for (const block of blocks) {
    const ids = block.bands.map(({ piece }) => piece.id);
    const moved = card.roundings.filter(({ what, piece }) => what === "seam" && ids.includes(piece));
    if (moved.length === 0) continue;
    const parts = block.boundaries.slice(1).map((end, i) => end - (block.boundaries[i] ?? 0));
    const said = parts.map((part) => formatLength(part, { unit, mark: false }));
    sentences.push(
      `${sharesInWords(block, moved)}, rounded so that seams fall on marks of the ruler: ` +
        `${said.map(unbroken).join(", ")} ${unit} for ${namesOf(block.bands, "id")}.`,
    );
  }
  const told = new Set(blocks.flatMap(({ bands }) => bands.map(({ piece }) => piece.id)));
  for (const { what, piece, position } of card.roundings) {
    if (what === "seam") {
      // Parts that stand apart, or are divided again, are no block.
      const layer = layers.find((other) => other.piece.id === piece);
      const seam = card.seams.find(
        (one) => one.position === position && layer?.piece.path.startsWith(one.path.replace(/\.join$/, "")),
      );
      if (layer === undefined || seam === undefined || told.has(piece)) continue;
      const [side, edge] = seam.runs === "across" ? ["below", "top"] : ["right of", "left"];
      const length = unbroken(formatLength(position, { unit }));
      sentences.push(
        `The seam ${side} ${layer.label} is rounded to a mark of the ruler: its middle lies ${length} from the ${edge} of ` +
          "what is divided there.",
      );
      continue;
    }
    const layer = layers.find((other) => other.piece.id === piece);
    if (layer === undefined) continue;
    const { border, height } = layer.layer;
    const edge = border.top + Math.floor(height / 2) === position ? "top" : "left";
    const length = unbroken(formatLength(position, { unit }));
    sentences.push(
      `${layer.label} is centred on a line of thirds, rounded to a mark of the ruler: its middle lies ${length} from ` +
        `the ${edge} of ${carrierName(facts, layer, blocks, "id")}.`,
    );
  }
  return sentences;
}

/** `Thirds` where the parts would be equal but for the rounding. */
function sharesInWords({ boundaries }: Block, moved: readonly Rounding[]): string {
  const parts = boundaries.length - 1;
  const extent = boundaries.at(-1) ?? 0;
  const equal = boundaries.every((boundary, i) => {
    const rounding = moved.find(({ position }) => position === boundary);
    return Math.abs(boundary - (rounding?.by ?? 0) - (i * extent) / parts) < 1;
  });
  return equal ? (EQUAL_PARTS[parts] ?? `${parts} equal parts`) : "Shares";
}
