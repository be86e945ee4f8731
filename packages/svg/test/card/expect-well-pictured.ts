import { TICKS_PER_MM } from "@sheetwright/measure";
import type { Card, CardLayer, SurfaceName } from "@sheetwright/planner";
import { areaOf, moved, type Outline } from "@sheetwright/shapes";
import { expect } from "vitest";
import { SEVEN_POINTS } from "../drawing/expect-well-set.js";
import {
  type Box,
  excessOf,
  overlapOf,
  overlappingPairs,
  rectBox,
  textBoxes,
} from "../drawing/text-boxes.js";
import { attributeOf, byId, everyElement, numberOf, type ReadElement } from "../read-svg.js";
import { isShown, isShownClearly, type Painted, seesThrough } from "./painted.js";
import { type DrawnCard, picturesOf, readCard } from "./read-card.js";

/** Coordinates are written to 0.001 mm. */
const WRITTEN = 0.002;

/** The rules that every page keeps, whatever it shows. */
export function pageFaults(root: ReadElement): readonly string[] {
  const faults: string[] = [];
  const page = rectBox(byId(root, "page"));
  if (attributeOf(root, "viewBox") !== `0 0 ${page.width} ${page.height}`)
    faults.push("viewBox is not the page");
  if (attributeOf(root, "width") !== `${page.width}mm`) faults.push("width is not the page's");
  if (attributeOf(root, "height") !== `${page.height}mm`) faults.push("height is not the page's");
  const elements = everyElement(root);
  const ids = elements.map((element) => attributeOf(element, "id")).filter((id) => id !== "");
  if (new Set(ids).size !== ids.length) faults.push("an id comes twice");
  faults.push(...ids.filter((id) => !/^[a-z0-9-]+$/.test(id)).map((id) => `the id ${id} is not plain ASCII`));
  const texts = textBoxes(root);
  for (const text of texts) {
    if (!(text.size >= SEVEN_POINTS)) faults.push(`"${text.text}" is smaller than 7 pt`);
    if (excessOf(text, page) > 0) faults.push(`"${text.text}" leaves the page`);
  }
  for (const [a, b] of overlappingPairs(texts, WRITTEN)) faults.push(`"${a.text}" overlaps "${b.text}"`);
  for (const element of elements) {
    if (
      pointsOf(element).some(
        ([x, y]) => !(x >= 0 && y >= 0 && x <= page.width + WRITTEN && y <= page.height + WRITTEN),
      )
    )
      faults.push(`a ${element.name} leaves the page`);
  }
  return faults;
}

/** The points that an element is drawn from. */
function pointsOf(element: ReadElement): readonly (readonly [number, number])[] {
  switch (element.name) {
    case "rect": {
      const { x, y, width, height } = rectBox(element);
      return [
        [x, y],
        [x + width, y + height],
      ];
    }
    case "line":
      return [
        [numberOf(element, "x1"), numberOf(element, "y1")],
        [numberOf(element, "x2"), numberOf(element, "y2")],
      ];
    case "circle":
      return [[numberOf(element, "cx"), numberOf(element, "cy")]];
    case "path":
    case "polyline": {
      const numbers =
        (attributeOf(element, "d") + attributeOf(element, "points")).match(/-?[\d.]+/g)?.map(Number) ?? [];
      return numbers.flatMap((x, i) => (i % 2 === 0 ? [[x, numbers[i + 1] ?? Number.NaN] as const] : []));
    }
    default:
      return [];
  }
}

type Segment = readonly [a: readonly [number, number], b: readonly [number, number]];

function segmentsOf(points: readonly (readonly [number, number])[]): readonly Segment[] {
  return points.slice(1).map((point, i) => [points[i] as readonly [number, number], point]);
}

/** Whether two segments meet, an end on the other one included. */
function meet([a, b]: Segment, [c, d]: Segment): boolean {
  const turn = (p: readonly number[], q: readonly number[], r: readonly number[]) => {
    const value =
      ((q[0] ?? 0) - (p[0] ?? 0)) * ((r[1] ?? 0) - (p[1] ?? 0)) -
      ((q[1] ?? 0) - (p[1] ?? 0)) * ((r[0] ?? 0) - (p[0] ?? 0));
    return Math.abs(value) < 1e-9 ? 0 : Math.sign(value);
  };
  const between = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
    Math.min(p[0] ?? 0, q[0] ?? 0) <= (r[0] ?? 0) + 1e-9 &&
    (r[0] ?? 0) - 1e-9 <= Math.max(p[0] ?? 0, q[0] ?? 0) &&
    Math.min(p[1] ?? 0, q[1] ?? 0) <= (r[1] ?? 0) + 1e-9 &&
    (r[1] ?? 0) - 1e-9 <= Math.max(p[1] ?? 0, q[1] ?? 0);
  const turns = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (turns[0] !== turns[1] && turns[2] !== turns[3]) return true;
  return (
    (turns[0] === 0 && between(a, b, c)) ||
    (turns[1] === 0 && between(a, b, d)) ||
    (turns[2] === 0 && between(c, d, a)) ||
    (turns[3] === 0 && between(c, d, b))
  );
}

function crossesBox([a, b]: Segment, box: Box): boolean {
  const corners = [
    [box.x, box.y],
    [box.x + box.width, box.y],
    [box.x + box.width, box.y + box.height],
    [box.x, box.y + box.height],
  ] as const;
  const inside = ([x, y]: readonly [number, number]) =>
    x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height;
  return (
    inside(a) ||
    inside(b) ||
    corners.some((corner, i) => meet([a, b], [corner, corners[(i + 1) % 4] ?? corner]))
  );
}

/** A surface as it is to be drawn: its size, and what lies on it from the bottom to the top, from its corner. */
interface Expected {
  readonly name: SurfaceName;
  readonly size: { readonly width: number; readonly height: number };
  readonly base: string;
  /** What is seen of layers on the inside, from the front's corner. */
  readonly glimpses: readonly (Box & { readonly piece: string })[];
  /** What carries a layer, by the id of its piece. */
  readonly layers: readonly (CardLayer & { readonly carrier: string })[];
}

/** The surfaces that are to be drawn: the front with doors and flap of a closed card, and each other one with layers. */
function expectedSurfaces(card: Card): readonly Expected[] {
  const on = (name: SurfaceName, dx = 0, dy = 0) =>
    card.layers.flatMap((layer) => {
      if (layer.surface !== name) return [];
      const carrier = layer.on === null ? card.base : (card.layers[layer.on]?.piece ?? "");
      return [{ ...layer, x: layer.x + dx, y: layer.y + dy, carrier }];
    });
  const { width, height } = card.front;
  const half = card.flats[0]?.fold === "z" ? on("flap") : [];
  const sizeOf = (name: SurfaceName) =>
    card.surfaces.find((one) => one.name === name) ?? { width: 0, height: 0 };
  const front: Expected = {
    name: "front",
    size: card.front,
    base: card.base,
    glimpses: glimpsesOf(card),
    layers: [
      ...on("left-door"),
      ...on("right-door", width - sizeOf("right-door").width),
      ...on("upper-door"),
      ...on("lower-door", 0, height - sizeOf("lower-door").height),
      ...half,
      ...on("front"),
    ],
  };
  const seen = [
    "front",
    "left-door",
    "right-door",
    "upper-door",
    "lower-door",
    ...(half.length > 0 ? ["flap"] : []),
  ];
  const others = card.surfaces
    .filter(({ name }) => !seen.includes(name) && on(name).length > 0)
    .map(({ name, ...size }): Expected => ({ name, size, base: card.base, glimpses: [], layers: on(name) }));
  return [front, ...others];
}

/** The half of the inside that a z or an easel shows when it is closed. */
function glimpsesOf({ flats: [flat], front, layers }: Card): Expected["glimpses"] {
  if (flat === undefined || (flat.fold !== "z" && flat.fold !== "easel")) return [];
  const [side, start] = flat.along === "width" ? (["width", "x"] as const) : (["height", "y"] as const);
  const half = Math.floor(front[side] / 2);
  return layers.flatMap((layer) => {
    const end = layer[start] + layer[side];
    if (layer.surface !== "inside" || end <= half) return [];
    const from = Math.max(half, layer[start]);
    const { x, y, width, height, piece } = layer;
    return [{ x, y, width, height, piece, [start]: from, [side]: end - from }];
  });
}

/** What is wrong with the pictures of a card whose surfaces are drawn at these scales. */
export function pictureFaults(
  root: ReadElement,
  card: Card,
  scaleOf: (surface: SurfaceName) => number,
): readonly string[] {
  const pictures = picturesOf(root);
  const expected = expectedSurfaces(card);
  const names = [...pictures.keys()].join();
  if (names !== expected.map(({ name }) => name).join()) return [`the surfaces are ${names}`];
  return expected.flatMap((surface) => {
    const drawn = readCard(pictures.get(surface.name) as ReadElement);
    return [
      ...proportionFaults(drawn, surface, scaleOf(surface.name)),
      ...callOutFaults(drawn, surface),
      ...foldFaults(drawn, card, surface),
    ].map((fault) => `${surface.name}: ${fault}`);
  });
}

function proportionFaults(
  { front, layers, words, glimpses }: DrawnCard,
  expected: Expected,
  scale: number,
): readonly string[] {
  const faults: string[] = [];
  const near = (drawn: number, ticks: number) => Math.abs(drawn - (ticks * scale) / TICKS_PER_MM) < WRITTEN;
  if (!near(front.width, expected.size.width) || !near(front.height, expected.size.height))
    faults.push("the surface is not to scale");
  if (layers.map(({ piece }) => piece).join() !== expected.layers.map(({ piece }) => piece).join())
    faults.push("layers are not painted from the bottom to the top");
  const isAt = (box: Box, layer: Box) =>
    near(box.x, layer.x) &&
    near(box.y, layer.y) &&
    near(box.width, layer.width) &&
    near(box.height, layer.height);
  const seen = expected.glimpses.every(
    (glimpse, i) => glimpses[i] !== undefined && isAt(glimpses[i] as Box, glimpse),
  );
  if (
    !seen ||
    glimpses.map(({ piece }) => piece).join() !== expected.glimpses.map(({ piece }) => piece).join()
  )
    faults.push("the inside is not seen as it lies");
  expected.layers.forEach((layer, i) => {
    const box = layers[i];
    if (box === undefined) return;
    if (!isAt(box, layer)) faults.push(`${layer.piece} is not at its place`);
    if ((box.outlines === undefined) !== (layer.outline === undefined))
      faults.push(`${layer.piece} is not drawn to its shape`);
    if (box.outlines !== undefined && layer.outline !== undefined) {
      const area = (outlines: readonly Outline[]) => outlines.reduce((sum, one) => sum + areaOf(one), 0);
      if (Math.abs(area(box.outlines) / area(layer.outline) / scale ** 2 - 1) > 2e-3)
        faults.push(`${layer.piece} is not drawn to its shape`);
    }
    if (box.on !== layer.carrier) faults.push(`${layer.piece} says it lies on ${box.on}`);
  });
  const surfaces = surfacesOf({ front, layers, glimpses });
  for (const { of, box } of words) {
    const index = surfaces.findIndex(({ id }) => id === of);
    if (excessOf(box, surfaces[index] as Box) > 0) faults.push(`"${box.text}" leaves its layer`);
    if (surfaces.slice(index + 1).some((over) => overlapOf(over, box) > 0))
      faults.push(`"${box.text}" is covered`);
  }
  return faults;
}

/** The front and its layers as they lie on the page. */
function surfacesOf({
  front,
  layers,
  glimpses,
}: Pick<DrawnCard, "front" | "layers" | "glimpses">): readonly (Painted & { id: string; piece: string })[] {
  const onPage = <T extends Box>(box: T): T & { readonly scale: number } => ({
    ...box,
    x: box.x + front.x,
    y: box.y + front.y,
    scale: TICKS_PER_MM,
  });
  return [front, ...glimpses.map((glimpse) => ({ ...onPage(glimpse), id: "" })), ...layers.map(onPage)];
}

function callOutFaults(drawn: DrawnCard, expected: Expected): readonly string[] {
  const faults: string[] = [];
  const { front, callOuts, leaders, words, folds } = drawn;
  const surfaces = surfacesOf(drawn);
  // Visibility is decided on the card's own numbers: rounding may open a hair between two drawn edges.
  const exact: readonly Painted[] = [
    { x: 0, y: 0, ...expected.size },
    ...expected.glimpses,
    ...expected.layers.map(({ x, y, width, height, outline }) => ({
      ...{ x, y, width, height },
      ...(outline === undefined ? {} : { outlines: outline.map((part) => moved(part, { x, y })) }),
    })),
  ];
  const hasShapes = exact.some(({ outlines }) => outlines !== undefined);
  surfaces.forEach(({ id, piece }, index) => {
    if (id === "") return;
    const found = callOuts.filter(({ of }) => of === id);
    const pointing = leaders.filter(({ of }) => of === id);
    if (found.length > 1 || pointing.length !== found.length)
      faults.push(`${piece} has ${found.length} call-outs`);
    if (!isShown(exact, index) && !hasShapes) {
      if (found.length > 0) faults.push(`${piece} is pointed at but cannot be seen`);
      return;
    }
    // Beside shapes, what shows no more than a sliver need not be pointed at.
    if (found.length === 0 && hasShapes && !isShownClearly(exact, index)) return;
    const [end] = pointing[0]?.points ?? [];
    if (end === undefined) faults.push(`${piece} can be seen but has no leader`);
    else if (!seesThrough(surfaces, index, end))
      faults.push(`the leader of ${piece} ends beside its visible part`);
  });

  const labels = callOuts.map(({ of, texts, samples }) => ({ of, boxes: [...texts, ...samples] }));
  labels.forEach(({ of, boxes }, i) => {
    if (boxes.some((box) => overlapOf(box, front) > 0)) faults.push(`the label of ${of} lies on the picture`);
    for (const other of labels.slice(i + 1)) {
      if (boxes.some((box) => other.boxes.some((second) => overlapOf(box, second) > 0)))
        faults.push(`the labels of ${of} and ${other.of} overlap`);
    }
  });
  leaders.forEach(({ of, points }, i) => {
    const segments = segmentsOf(points);
    for (const other of leaders.slice(i + 1)) {
      if (segments.some((a) => segmentsOf(other.points).some((b) => meet(a, b))))
        faults.push(`the leaders of ${of} and ${other.of} meet`);
    }
    const avoided = [...words.map(({ box }) => box), ...folds.flatMap(({ word }) => word ?? [])];
    const foreign = labels.filter((label) => label.of !== of).flatMap(({ boxes }) => boxes);
    for (const box of [...avoided, ...foreign]) {
      if (segments.some((segment) => crossesBox(segment, box)))
        faults.push(`the leader of ${of} crosses a text`);
    }
    const [x, y] = points.at(-1) ?? [0, 0];
    const own = labels.find((label) => label.of === of)?.boxes ?? [];
    const reach = own.some((box) => excessOf({ x, y, width: 0, height: 0 }, box) < 1.2);
    if (!reach) faults.push(`the leader of ${of} does not reach its label`);
  });
  return faults;
}

/** Along which edges of the front cards with one fold are folded, and those whose front closes at both sides. */
const FRONT_EDGES: Readonly<Record<string, readonly string[]>> = {
  flat: [],
  side: ["left"],
  top: ["top"],
  easel: ["top"],
  gate: ["left", "right"],
  shutter: ["left", "right"],
  "double-gate": ["left", "right"],
};

function foldFaults({ front, folds, lines }: DrawnCard, card: Card, { name }: Expected): readonly string[] {
  const faults: string[] = [];
  if (name === "front") {
    const edges = card.flats.flatMap(({ fold, along }) => {
      const found = FRONT_EDGES[fold] ?? ["left"];
      const standing: Readonly<Record<string, string>> = { left: "top", right: "bottom" };
      return along === "width" ? found : found.map((edge) => standing[edge] ?? edge);
    });
    if (folds.map(({ edge }) => edge).join() !== edges.join())
      faults.push(`folded at ${folds.map(({ edge }) => edge).join()}, not ${edges.join()}`);
    const isDivided = card.flats.some(({ fold }) =>
      ["gate", "double-gate", "z", "easel", "shutter"].includes(fold),
    );
    if (isDivided !== lines.length > 0) faults.push(`${lines.length} edges of paper show on the front`);
  }
  for (const line of lines) {
    if (excessOf(line, front) > WRITTEN) faults.push("an edge of paper leaves the front");
    if (line.width > WRITTEN === line.height > WRITTEN)
      faults.push("an edge of paper is neither upright nor level");
  }
  if (folds.length > 0 && folds[0]?.word === null) faults.push("no word says that it is a fold");
  for (const { edge, lines: double, word } of folds) {
    if (double.length !== 2 || (word !== null && !/\bfold$/.test(word.text)))
      faults.push(`the fold at the ${edge} is not marked`);
    if (word !== null && overlapOf(word, front) > 0) faults.push("the word of a fold lies on the picture");
    for (const { x, y, width, height } of double) {
      const off: Readonly<Record<string, number>> = {
        left: front.x - x,
        right: x - front.x - front.width,
        top: front.y - y,
        bottom: y - front.y - front.height,
      };
      const upright = edge === "left" || edge === "right";
      const [along, length] = upright ? [height, front.height] : [width, front.width];
      const across = off[edge] ?? 0;
      if (Math.abs(along - length) > WRITTEN || across <= 0 || across > 2)
        faults.push(`the fold at the ${edge} is not at its edge`);
    }
  }
  return faults;
}

export function expectWellPictured(root: ReadElement, card: Card): void {
  expect([...pageFaults(root), ...pictureFaults(root, card, () => 1)]).toEqual([]);
}
