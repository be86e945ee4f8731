// What a project must keep to before anything can be measured. A project that was read from a file does; one that another
// tool made may not.

import { LONGEST_LENGTH, type Size } from "@sheetwright/measure";
import { surfacesOf } from "../fold/surfaces.js";
import type { Along, BandParts, Design, Extent, Flat, Layer, LayerJoin, Place, Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { checkDieCut } from "./check-die-cut.js";
import { checkFinish } from "./check-finish.js";
import { checkCount, checkLength, checkSize } from "./check-values.js";
import { fault } from "./fault.js";
import { isCovering, seamOf } from "./seam-of.js";

/** Most cards of a project, copies of a card, and lists of layers one inside another. */
const MOST_CARDS = 200;
const MOST_COPIES = 100_000;
const DEEPEST = 12;

/**
 * Finds numbers out of their range in a project as a whole: its precision and its list of cards.
 *
 * @internal
 */
export function checkProjectNumbers({ precision, cards }: Project): readonly ProjectFault[] {
  const faults = [...checkLength("precision", precision, 1)];
  if (cards.length === 0 || cards.length > MOST_CARDS) {
    faults.push(tooMany("cards", cards.length, `from 1 to ${MOST_CARDS} cards`));
  }
  const numbers = new Set<number>();
  for (const { number, path } of cards) {
    if (numbers.has(number)) {
      const message = `Two cards have the number ${number}, so that labels would not tell their pieces apart. Number them from 1.`;
      faults.push(
        fault({ code: "twice", path, found: String(number), expected: "a number of its own", message }),
      );
    }
    numbers.add(number);
  }
  return faults;
}

/**
 * Finds numbers out of their range in one card.
 *
 * @internal
 */
export function checkCardNumbers(design: Design): readonly ProjectFault[] {
  const { path, number, front, flats, copies, copiesFor, surfaces } = design;
  const faults = [
    ...checkCount(`${path}.number`, number, 1, Number.MAX_SAFE_INTEGER),
    ...checkSize(`${path}.size`, front),
    ...checkCount(`${path}.copies`, copies, 1, MOST_COPIES),
    ...surfaces.flatMap(({ layers }) => layers.flatMap((layer) => checkLayer(layer, 1))),
    ...checkSurfaces(design),
    ...checkLeaves(design),
    ...checkFinish(design),
  ];
  if (copiesFor.guests + copiesFor.samples !== copies) {
    const found = `${copiesFor.guests} and ${copiesFor.samples}`;
    const message = `Copies for guests and samples, ${found}, do not add up to ${copies} copies.`;
    faults.push(contradiction(`${path}.copies`, found, `copies that add up to ${copies}`, message));
  }
  const { spares } = copiesFor;
  if (spares !== undefined) faults.push(...checkCount(`${path}.copies.spares`, spares, 1, MOST_COPIES));
  if (flats.length === 0) {
    const message =
      "The card has no flat that it could be folded from. Give it a side fold, a top fold or either.";
    faults.push(fault({ code: "missing", path: `${path}.fold`, found: "none", expected: "a fold", message }));
  }
  faults.push(...flats.flatMap((flat) => checkFlat(flat, front, path)));
  return faults;
}

function checkSurfaces({ surfaces, flats, front }: Design): readonly ProjectFault[] {
  const seen = new Set<string>();
  return surfaces.flatMap(({ name, path }) => {
    const missing = flats.some((flat) => surfacesOf(flat, front).every((known) => known.name !== name));
    const twice = seen.has(name);
    seen.add(name);
    if (twice) {
      const message = `The surface ${name} is there twice. Put its layers in one list.`;
      return [fault({ code: "twice", path, found: name, expected: "each surface once", message })];
    }
    const message = `The fold of this card gives no ${name}. Lay it on a surface that it has.`;
    return missing ? [contradiction(path, name, "a surface of the card", message)] : [];
  });
}

/** An insert lies in the one fold of a card, and a front of its own belongs to an easel. */
function checkLeaves({ path, insert, frontPaper, flats }: Design): readonly ProjectFault[] {
  const faults: ProjectFault[] = [];
  const [fold = "none"] = flats.map((flat) => flat.fold);
  if (insert !== undefined) {
    faults.push(...checkLength(`${insert.path}.border`, insert.border, 0));
    if (flats.some((flat) => flat.fold !== "side" && flat.fold !== "top")) {
      const message = `An insert lies in the fold of a card that is folded once, at the side or the top, and this one has the fold ${fold}. Lay a panel inside instead.`;
      faults.push(contradiction(insert.path, fold, "a card with a side or a top fold", message));
    }
  }
  if (frontPaper !== undefined && flats.some((flat) => flat.fold !== "easel")) {
    const message = `Only an easel has a front of its own, and this card has the fold ${fold}. Lay a panel on the front instead.`;
    faults.push(contradiction(`${path}.front-paper`, fold, "a card with an easel fold", message));
  }
  return faults;
}

/** A flat is its panels, with a score between each two; its other side is that of the front. */
function checkFlat(flat: Flat, front: Size, card: string): readonly ProjectFault[] {
  const { fold, along, panels, scores, slits } = flat;
  const across = along === "width" ? "height" : "width";
  const path = `${card}.fold`;
  const numbers = [
    ...panels.flatMap((panel) => checkLength(path, panel, 1)),
    ...slits.flatMap(({ at, from, to }) => [at, from, to].flatMap((length) => checkLength(path, length, 0))),
  ];
  if (numbers.length > 0) return numbers.slice(0, 1);
  let at = 0;
  const ends = panels.map((panel) => {
    at += panel;
    return at;
  });
  const right =
    ends.at(-1) === flat[along] &&
    flat[across] === front[across] &&
    scores.length === panels.length - 1 &&
    scores.every((score, index) => score.along === along && score.at === ends[index]) &&
    slits.every(
      (slit) =>
        slit.at < flat[slit.along === "width" ? "height" : "width"] &&
        slit.from < slit.to &&
        slit.to <= flat[slit.along],
    );
  if (!right) {
    const message = `The flat of a ${fold} fold is not made of its panels: they add up to its ${along}, with a score between each two.`;
    return [contradiction(path, fold, "a flat made of its panels", message)];
  }
  if (fold !== "side" && fold !== "top") return [];
  const half = fold === "side" ? "width" : "height";
  if (along === half && panels.length === 2 && panels.every((panel) => panel === front[half])) return [];
  const message = `The flat of a ${fold} fold is not two fronts with the score between them.`;
  return [contradiction(path, fold, "a flat of two fronts", message)];
}

function checkLayer(layer: Layer, depth: number): readonly ProjectFault[] {
  const { path } = layer;
  if (depth > DEEPEST) return [tooMany(path, depth, `at most ${DEEPEST} lists of layers one inside another`)];
  return [...checkOwn(layer, depth), ...layer.layers.flatMap((inner) => checkLayer(inner, depth + 1))];
}

function checkOwn(layer: Layer, depth: number): readonly ProjectFault[] {
  const { path, name, foam } = layer;
  const faults: ProjectFault[] = [...(foam === null ? [] : checkLength(`${path}.foam`, foam, 1))];
  if (name !== null && name.trim() === "") {
    const message = "The name of this layer is empty. Write one, or leave it out to call it by its kind.";
    faults.push(
      fault({ code: "missing", path: `${path}.name`, found: "nothing", expected: "a name", message }),
    );
  }
  switch (layer.kind) {
    case "strip":
      return [
        ...faults,
        ...checkLength(`${path}.width`, layer.width, 1),
        ...(layer.length === null ? [] : checkLength(`${path}.length`, layer.length, 1)),
        ...place(path, layer.place),
        ...checkJoin(layer.join, path),
      ];
    case "sentiment":
      return [
        ...faults,
        ...checkSize(`${path}.size`, layer.size),
        ...place(path, layer.place),
        ...layer.mats.flatMap(({ border }, index) => checkLength(`${path}.mats[${index}].border`, border, 0)),
      ];
    case "die":
      return [...faults, ...checkDieCut(layer), ...place(path, layer.place)];
    case "bands": {
      faults.push(...extent(path, layer.extent), ...checkBands(layer, path, depth));
      return faults;
    }
    default:
      return [...faults, ...extent(path, layer.extent), ...checkJoin(layer.join, path)];
  }
}

function checkJoin(join: LayerJoin | undefined, path: string): readonly ProjectFault[] {
  if (join === undefined || join.by === "hide") return [];
  const { cover, width, gap } = seamOf(join);
  return [
    ...(join.by === "parts" ? checkCount(`${path}.join.parts`, join.parts, 2, 3) : []),
    ...(isCovering(cover) ? checkLength(`${path}.join.width`, width, 1) : []),
    ...checkLength(`${path}.join.gap`, gap, 0),
  ];
}

/** Bands, and bands that divide one of them. */
function checkBands(
  { shares, papers, seam }: BandParts,
  path: string,
  depth: number,
): readonly ProjectFault[] {
  if (depth > DEEPEST) return [tooMany(path, depth, `at most ${DEEPEST} levels of bands one inside another`)];
  const count = shares.by === "ratio" ? shares.ratios.length : shares.widths.length;
  const faults: ProjectFault[] = [];
  if (shares.by === "ratio") {
    faults.push(
      ...shares.ratios.flatMap((ratio, index) =>
        checkCount(`${path}.bands[${index}]`, ratio, 1, LONGEST_LENGTH),
      ),
    );
  } else {
    const widths = `${path}.bands.widths`;
    const rests = shares.widths.filter((width) => width === "rest").length;
    faults.push(
      ...shares.widths.flatMap((width, index) =>
        width === "rest" ? [] : checkLength(`${widths}[${index}]`, width, 1),
      ),
    );
    if (rests > 1) {
      const message = `Here ${rests} bands are rest, so that nobody could tell how wide each is. Give all but one a width.`;
      faults.push(contradiction(widths, `${rests} times rest`, "rest once", message));
    }
  }
  if (count === 0 || count !== papers.length) {
    const found = `${papers.length} for ${count} bands`;
    const message = `There are ${count} bands and ${papers.length} papers. Name one paper for each band.`;
    faults.push(contradiction(`${path}.papers`, found, "as many papers as bands", message));
  }
  const { cover, width, gap } = seamOf({ seam });
  return [
    ...faults,
    ...(isCovering(cover) ? checkLength(`${path}.seam.width`, width, 1) : []),
    ...checkLength(`${path}.seam.gap`, gap, 0),
    ...papers.flatMap((paper, index) =>
      "faces" in paper ? [] : checkBands(paper, `${path}.papers[${index}]`, depth + 1),
    ),
  ];
}

function extent(path: string, given: Extent): readonly ProjectFault[] {
  if (given.by === "size") return [...checkSize(`${path}.size`, given.size), ...place(path, given.place)];
  const { left, right, top, bottom } = given.border;
  return [left, right, top, bottom].flatMap((side) => checkLength(`${path}.border`, side, 0)).slice(0, 1);
}

function place(path: string, { x, y }: Place): readonly ProjectFault[] {
  return [...along(path, x, "left", "right"), ...along(path, y, "top", "bottom")];
}

function along(path: string, given: Along, start: string, end: string): readonly ProjectFault[] {
  if (given.from === "middle") return [];
  if (given.from === "third") {
    if (given.third === 1 || given.third === 2) return [];
    const expected = "the first or the second third";
    const found = String(given.third);
    const message = `Expected ${expected} as 1 or 2, found ${found}.`;
    return [fault({ code: "not-a-word", path: `${path}.line`, found, expected, message })];
  }
  return checkLength(`${path}.${given.from === "start" ? start : end}`, given.distance, 0);
}

function tooMany(path: string, found: number, expected: string): ProjectFault {
  const message = `Expected ${expected}, found ${found}.`;
  return fault({ code: "too-many", path, found: String(found), expected, message });
}

function contradiction(path: string, found: string, expected: string, message: string): ProjectFault {
  return fault({ code: "contradiction", path, found, expected, message });
}
