import { parseLength, type Ticks, type Unit } from "@sheetwright/measure";
import polygonClipping from "polygon-clipping";
import { describe, expect, test } from "vitest";
import {
  type Card,
  type CardLayer,
  type Expansion,
  expandProject,
  type Project,
  visibleAreas,
} from "../../src/index.js";
import type { FileObject, FileValue } from "../random-draw.js";
import { checkProjects } from "../random-expansion.js";

// What these tests know of a file they read from the file itself, not from the project made of it.

/** All layers of a file with their paths, those inside others too. */
function layersOf(file: FileObject): readonly { readonly path: string; readonly layer: FileObject }[] {
  return list(file.cards).flatMap((card, index) => nested(card.front, `cards[${index}].front`));
}

function nested(layers: FileValue | undefined, path: string): ReturnType<typeof layersOf> {
  return list(layers).flatMap((layer, index) => [
    { path: `${path}[${index}]`, layer },
    ...nested(layer.layers, `${path}[${index}].layers`),
  ]);
}

function list(value: FileValue | undefined): readonly FileObject[] {
  return (value ?? []) as readonly FileObject[];
}

/** The path of the layer that a piece belongs to: bands that divide a band, and ends of another paper, have their own. */
function layerPath(path: string): string {
  return path.replace(/(?:\.papers\[\d+\])*(?:\.seam|\.join(?:\.ends)?)?$/, "");
}

/** Whether a layer is cut by a die or to a shape. */
function isShape(layer: FileObject): boolean {
  return layer.die !== undefined || layer.shape !== undefined;
}

/** The path of the lowest of what a layer is made of: its shadow, its outermost mat, or itself. */
function lowestOf(layer: FileObject, path: string): string {
  const mats = list(layer.mats).length;
  if (layer.shadow !== undefined) return `${path}.shadow`;
  return mats > 0 ? `${path}.mats[${mats - 1}]` : path;
}

/** How many pieces of paper, and ribbons or tapes, bands give at each path. */
function countBands(bands: FileObject, path: string, found: Map<string, number>): void {
  const papers = bands.papers as readonly FileValue[];
  const add = (at: string, count: number) => found.set(at, (found.get(at) ?? 0) + count);
  const isInner = (paper: FileValue): paper is FileObject => typeof paper === "object" && "bands" in paper;
  papers.forEach((paper, index) => {
    if (isInner(paper)) countBands(paper, `${path}.papers[${index}]`, found);
    else add(papers.some(isInner) ? `${path}.papers[${index}]` : path, 1);
  });
  const seam = bands.seam;
  if (typeof seam === "object" && ("cover" in seam || "ribbon" in seam || "tape" in seam)) {
    add(`${path}.seam`, papers.length - 1);
  }
}

/** The same of a layer that says how it is made up, if its paper is too small for it. */
function countJoin(join: FileObject, path: string, isWhole: boolean, found: Map<string, number>): void {
  const ends = join.at === "one end" ? 1 : 2;
  const parts = isWhole ? 1 : join.ends === undefined ? Number(join.parts) : 1;
  found.set(path, parts);
  if (isWhole) return;
  if (join.ends !== undefined) found.set(`${path}.join.ends`, ends);
  const seams = join.ends === undefined ? parts - 1 : ends;
  if ("cover" in join || "ribbon" in join || "tape" in join) found.set(`${path}.join`, seams);
}

function ticksOf(value: FileValue | undefined, unit: Unit): Ticks {
  return parseLength(String(value), { unit, allowZero: true });
}

/** The layers of the cards by the path of their pieces. */
function byPath({ cards, pieces, items }: Expansion): ReadonlyMap<string, readonly CardLayer[]> {
  const paths = new Map([...pieces, ...items].map(({ id, path }) => [id, path]));
  const found = new Map<string, CardLayer[]>();
  for (const layer of cards.flatMap(({ layers }) => layers)) {
    const path = paths.get(layer.piece) ?? "";
    found.set(path, [...(found.get(path) ?? []), layer]);
  }
  return found;
}

/** The rectangle round some rectangles. */
function hull(layers: readonly Pick<CardLayer, "x" | "y" | "width" | "height">[]) {
  const x = Math.min(...layers.map((layer) => layer.x));
  const y = Math.min(...layers.map((layer) => layer.y));
  const right = Math.max(...layers.map((layer) => layer.x + layer.width));
  const bottom = Math.max(...layers.map((layer) => layer.y + layer.height));
  return { x, y, width: right - x, height: bottom - y };
}

describe("projects made at random", () => {
  test("no layer is lost: each of the file gives just its pieces, and each card its base", () => {
    checkProjects(({ file, expansion }) => {
      const expected = new Map<string, number>();
      const whole = new Set(
        expansion.cards.flatMap(({ joins }) =>
          joins.flatMap(({ by, path }) => (by === "whole" ? [path] : [])),
        ),
      );
      list(file.cards).forEach((card, index) => {
        expected.set(`cards[${index}].base`, 1);
        if (card.fold === "easel") {
          expected.set(`cards[${index}].${card["front-paper"] === undefined ? "fold" : "front-paper"}`, 1);
        }
        if (card.insert !== undefined) expected.set(`cards[${index}].insert`, 1);
      });
      for (const { path, layer } of layersOf(file)) {
        if (layer.bands !== undefined) countBands(layer, path, expected);
        else if (layer.join === undefined) expected.set(path, 1);
        else countJoin(layer.join as FileObject, path, whole.has(path), expected);
        list(layer.mats).forEach((_, index) => {
          expected.set(`${path}.mats[${index}]`, 1);
        });
        if (layer.shadow !== undefined) expected.set(`${path}.shadow`, 1);
      }
      const found = new Map<string, number>();
      const all = [...expansion.pieces, ...expansion.items];
      for (const { path } of all) found.set(path, (found.get(path) ?? 0) + 1);
      expect(found).toEqual(expected);
      // Each piece but the base of a card lies on it just once, and an insert on both pages.
      for (const card of expansion.cards) {
        const own = all.filter((piece) => piece.card === card.number).map(({ id }) => id);
        const laid = [card.base, ...card.layers.map(({ piece }) => piece)];
        expect([...new Set(laid)].sort()).toEqual([...own].sort());
        const inserts = expansion.pieces.filter(
          ({ purpose, card: number }) => purpose === "insert" && number === card.number,
        );
        expect(laid).toHaveLength(own.length + inserts.length);
      }
    });
  });

  test("labels are unique and made of the number, letters and a purpose", () => {
    checkProjects(({ expansion: { pieces, items } }) => {
      expect(new Set([...pieces, ...items].map(({ id }) => id)).size).toBe(pieces.length + items.length);
      const labelled = [...pieces, ...items.map((item) => ({ ...item, purpose: item.kind }))];
      for (const { id, label, purpose, card } of labelled) {
        expect(label).toMatch(/^\d+[a-z]+ .+$/);
        expect(label).toBe(`${id} ${purpose}`);
        expect(Number.parseInt(id, 10)).toBe(card);
      }
    });
  });

  test("every border is as asked, to the tick", () => {
    checkProjects(({ file, expansion }) => {
      const unit = file.units === "mm" ? "mm" : "in";
      const layers = byPath(expansion);
      const classic = unit === "in" ? "1/8 in" : "3 mm";
      for (const { path, layer } of layersOf(file)) {
        // Mats of a die cut are as wide as their die makes them.
        for (const mat of isShape(layer) ? [] : list(layer.mats)) {
          const index = list(layer.mats).indexOf(mat);
          const border = ticksOf(mat.border, unit);
          // The border of a mat shows round the next layer inwards.
          const inner = index === 0 ? path : `${path}.mats[${index - 1}]`;
          const sides = { left: border, right: border, top: border, bottom: border };
          expect(layers.get(inner)?.map((each) => each.border)).toEqual([sides]);
        }
        const hasBorder = layer.mat ?? layer.panel ?? layer.bands;
        if (hasBorder === undefined || layer.size !== undefined) continue;
        const border = layer.border ?? classic;
        const asked = typeof border === "object" ? (border as FileObject) : { sides: border };
        const side = (name: string) =>
          asked.total === undefined
            ? ticksOf(asked[name] ?? asked.sides ?? 0, unit)
            : ticksOf(asked.total, unit) / 2;
        const sides = { left: side("left"), right: side("right"), top: side("top"), bottom: side("bottom") };
        // Parts that stand apart, or of which one is divided again, have borders of their own: all together have this one.
        const all = [...layers].flatMap(([at, own]) =>
          layerPath(at) === path && !at.endsWith(".seam") && !at.endsWith(".join") ? own : [],
        );
        const edge = (name: keyof typeof sides) => Math.min(...all.map((each) => each.border[name]));
        expect({
          left: edge("left"),
          right: edge("right"),
          top: edge("top"),
          bottom: edge("bottom"),
        }).toEqual(sides);
      }
    });
  });

  test("everything lies inside what carries it, as far from its edges as its border says", () => {
    checkProjects(({ expansion }) => {
      const layers = byPath(expansion);
      const paths = new Map([...expansion.pieces, ...expansion.items].map(({ id, path }) => [id, path]));
      // A layer with all its parts, but without what covers its seams.
      const wholes = new Map<string, CardLayer[]>();
      for (const [path, own] of layers) {
        if (path.endsWith(".seam") || path.endsWith(".join")) continue;
        wholes.set(layerPath(path), [...(wholes.get(layerPath(path)) ?? []), ...own]);
      }
      for (const card of expansion.cards) {
        card.layers.forEach((layer, index) => {
          const { border, on, surface } = layer;
          expect(Math.min(border.left, border.right, border.top, border.bottom)).toBeGreaterThanOrEqual(0);
          if (on !== null) expect(on).toBeLessThan(index);
          const path = paths.get(layer.piece) ?? "";
          const below = on === null ? undefined : card.layers[on];
          const page = card.surfaces.find(({ name }) => name === surface) ?? card.front;
          const carrier =
            below === undefined
              ? { x: 0, y: 0, width: page.width, height: page.height }
              : hull(wholes.get(layerPath(paths.get(below.piece) ?? "")) ?? []);
          // Bands that meet edge to edge have the border of all of them together.
          const { x, y, width, height } = layer;
          const own = [{ x, y, width, height }];
          if (!path.endsWith(".seam") && !path.endsWith(".join")) own.push(hull(layers.get(path) ?? []));
          expect(own).toContainEqual({
            x: carrier.x + border.left,
            y: carrier.y + border.top,
            width: carrier.width - border.left - border.right,
            height: carrier.height - border.top - border.bottom,
          });
        });
      }
    });
  });

  test("each layer lies on the last one before it that carries, or on the one that holds its list", () => {
    checkProjects(({ file, expansion }) => {
      const paths = new Map(expansion.pieces.map(({ id, path }) => [id, path]));
      const carriers = new Map<string, string | null>();
      const follow = (layers: FileValue | undefined, path: string, holder: string | null) => {
        let below = holder;
        list(layers).forEach((layer, index) => {
          const own = `${path}[${index}]`;
          // Of a sentiment with mats it is the outermost that lies on the carrier.
          carriers.set(lowestOf(layer, own), below);
          follow(layer.layers, `${own}.layers`, own);
          const fills = (layer.panel ?? layer.bands) !== undefined && layer.size === undefined;
          if (list(layer.layers).length === 0 && (layer.mat !== undefined || fills)) below = own;
        });
      };
      list(file.cards).forEach((card, index) => {
        const front = card["front-paper"] === undefined ? "fold" : "front-paper";
        follow(
          card.front,
          `cards[${index}].front`,
          card.fold === "easel" ? `cards[${index}].${front}` : null,
        );
      });
      for (const { layers } of expansion.cards) {
        for (const { piece, on } of layers) {
          const path = paths.get(piece) ?? "";
          const carrier = carriers.get(path.includes(".mats[") ? path : layerPath(path));
          if (carrier === undefined || path.endsWith(".seam") || path.endsWith(".join")) continue;
          expect(on === null ? null : layerPath(paths.get(layers[on]?.piece ?? "") ?? "")).toBe(carrier);
        }
      }
    });
  });

  test("everything of a size lies where the file says, in the middle where it says nothing", () => {
    checkProjects(({ file, project, expansion }) => {
      const unit = file.units === "mm" ? "mm" : "in";
      const layers = byPath(expansion);
      for (const { path, layer } of layersOf(file)) {
        if (layer.size === undefined && layer.strip === undefined && !isShape(layer)) continue;
        const outer = lowestOf(layer, path);
        const all = [...layers].flatMap(([at, own]) =>
          (outer === path ? layerPath(at) : at) === outer && !at.endsWith(".seam") && !at.endsWith(".join")
            ? own
            : [],
        );
        if (all.length === 0) throw new Error(`Nothing at ${path}.`);
        const own = hull(all);
        const edge = (name: keyof CardLayer["border"]) => Math.min(...all.map(({ border }) => border[name]));
        const lines = [layer.line ?? []].flat().join();
        for (const [start, end, extent, thirds] of [
          ["left", "right", own.width, ["left third", "right third"]],
          ["top", "bottom", own.height, ["upper third", "lower third"]],
        ] as const) {
          const [before, after] = [edge(start), edge(end)];
          const third = thirds.findIndex((line) => lines.includes(line)) + 1;
          if (layer[start] !== undefined) expect(before).toBe(ticksOf(layer[start], unit));
          else if (layer[end] !== undefined) expect(after).toBe(ticksOf(layer[end], unit));
          else if (third === 0) expect([0, 1]).toContain(after - before);
          else {
            const middle = before + Math.floor(extent / 2);
            const exact = (third * (before + extent + after)) / 3;
            expect(middle % project.precision).toBe(0);
            expect(Math.abs(middle - exact)).toBeLessThanOrEqual(project.precision / 2);
          }
        }
      }
    });
  });

  test("roundings tell the exact place of what was rounded", () => {
    checkProjects(({ project, expansion }) => {
      for (const { roundings, layers } of expansion.cards) {
        for (const { piece, position, by } of roundings) {
          expect(layers.some((layer) => layer.piece === piece)).toBe(true);
          expect(position % project.precision).toBe(0);
          expect(Math.abs(by)).toBeLessThanOrEqual(project.precision / 2);
          expect(by).not.toBe(0);
        }
      }
    });
  });

  test("doubling the copies doubles every quantity, and nothing else", () => {
    checkProjects(({ project, expansion }) => {
      const cards = project.cards.map((card) => ({
        ...card,
        copies: 2 * card.copies,
        copiesFor: { guests: 2 * card.copiesFor.guests, samples: 2 * card.copiesFor.samples },
      }));
      const doubled = expandProject({ ...project, cards });
      expect(doubled).toEqual({
        ...expansion,
        cards: expansion.cards.map((card, index) => ({
          ...card,
          copies: cards[index]?.copies,
          copiesFor: cards[index]?.copiesFor,
        })),
        pieces: expansion.pieces.map((piece) => ({ ...piece, quantity: 2 * piece.quantity })),
        items: expansion.items.map((item) => ({ ...item, quantity: 2 * item.quantity })),
      });
    });
  });

  test("the same project gives the same bytes, also after it was written as JSON", () => {
    checkProjects(({ project, expansion }) => {
      const bytes = JSON.stringify(expansion);
      expect(JSON.stringify(expandProject(project))).toBe(bytes);
      expect(JSON.stringify(expandProject(JSON.parse(JSON.stringify(project)) as Project))).toBe(bytes);
      expect(JSON.parse(bytes)).toEqual(expansion);
    });
  });

  test("what shows of base and layers adds up to the front", () => {
    checkProjects(({ expansion: { cards } }) => {
      for (const card of cards) {
        const { whole, base, layers } = visibleAreas(card);
        expect(whole).toBe(BigInt(card.front.width) * BigInt(card.front.height));
        expect(layers.reduce((sum, area) => sum + area, base)).toBe(whole);
        expect([base, ...layers].every((area) => area >= 0n)).toBe(true);
      }
    });
  });

  test("what shows agrees with a library that clips polygons", () => {
    checkProjects(({ expansion: { cards } }) => {
      for (const card of cards) {
        const { base, layers } = visibleAreas(card);
        const shown = card.layers.filter(({ surface }) => surface === "front");
        expect({
          base,
          layers: layers.filter((_, index) => card.layers[index]?.surface === "front"),
        }).toEqual(clippedAreas({ ...card, layers: shown }));
      }
    });
  });
});

type Clipped = ReturnType<typeof polygonClipping.union>;

function clippedAreas({ front, layers }: Card) {
  const shapes = layers.map(ring);
  const areas = shapes.map((shape, index) => {
    const above = shapes.slice(index + 1);
    return areaOf(above.length === 0 ? [shape] : polygonClipping.difference(shape, ...above));
  });
  const all = ring({ x: 0, y: 0, ...front });
  const base = areaOf(shapes.length === 0 ? [all] : polygonClipping.difference(all, ...shapes));
  return { base, layers: areas };
}

function ring({ x, y, width, height }: Pick<CardLayer, "x" | "y" | "width" | "height">): Clipped[number] {
  const [right, bottom] = [x + width, y + height];
  return [
    [
      [x, y],
      [right, y],
      [right, bottom],
      [x, bottom],
      [x, y],
    ],
  ];
}

/** Its corners are floats, so the area is rounded to whole square ticks. */
function areaOf(polygons: Clipped): bigint {
  let twice = 0;
  for (const polygon of polygons) {
    for (const corners of polygon) {
      corners.slice(1).forEach(([x, y], index) => {
        const [fromX, fromY] = corners[index] ?? [0, 0];
        twice += fromX * y - x * fromY;
      });
    }
  }
  return BigInt(Math.round(Math.abs(twice) / 2));
}
