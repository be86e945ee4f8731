import { inches, millimetres, parseLength, type Ticks, type Unit } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { type CardLayer, checkProject, type Expansion } from "../../src/index.js";
import type { FileObject, FileValue } from "../random-draw.js";
import { checkProjects } from "../random-expansion.js";

// What these tests know of bands they read from the file itself, not from the project made of it.

const WORDS: Readonly<Record<string, readonly number[]>> = {
  halves: [1, 1],
  thirds: [1, 1, 1],
  quarters: [1, 1, 1, 1],
  "two thirds and one third": [2, 1],
  "one third and two thirds": [1, 2],
};

type Rectangle = Pick<CardLayer, "x" | "y" | "width" | "height">;

/** Something divided into bands: a layer, or one of the bands of another. */
interface Divided {
  readonly path: string;
  readonly bands: FileObject;
  readonly runs: "across" | "upright";
  readonly parts: readonly Rectangle[];
  /** Index after the last band of the layer among the card's layers. */
  readonly until: number;
  readonly card: Expansion["cards"][number];
}

function list(value: FileValue | undefined): readonly FileObject[] {
  return (value ?? []) as readonly FileObject[];
}

function layersOf(
  layers: FileValue | undefined,
  path: string,
): readonly { path: string; layer: FileObject }[] {
  return list(layers).flatMap((layer, index) => [
    { path: `${path}[${index}]`, layer },
    ...layersOf(layer.layers, `${path}[${index}].layers`),
  ]);
}

function hull(all: readonly Rectangle[]): Rectangle {
  const x = Math.min(...all.map((one) => one.x));
  const y = Math.min(...all.map((one) => one.y));
  const right = Math.max(...all.map((one) => one.x + one.width));
  const bottom = Math.max(...all.map((one) => one.y + one.height));
  return { x, y, width: right - x, height: bottom - y };
}

const isInner = (paper: FileValue): paper is FileObject => typeof paper === "object" && "bands" in paper;

/** All bands of a project, those that divide others too. */
function dividedIn(file: FileObject, { cards, pieces }: Expansion): readonly Divided[] {
  const paths = new Map(pieces.map(({ id, path }) => [id, path]));
  return list(file.cards).flatMap((written, index) =>
    layersOf(written.front, `cards[${index}].front`).flatMap(({ path, layer }) => {
      const card = cards[index];
      if (layer.bands === undefined || card === undefined) return [];
      const own = card.layers.filter(({ piece }) => {
        const at = paths.get(piece) ?? "";
        return (at === path || at.startsWith(`${path}.papers[`)) && !at.endsWith(".seam");
      });
      const until = 1 + Math.max(...own.map((one) => card.layers.indexOf(one)));
      const rest = [...own];
      const found: Divided[] = [];
      // The bands lie in the order of the file.
      const take = (bands: FileObject, at: string, usual: "across" | "upright"): Rectangle => {
        const runs = (bands.runs as "across" | "upright" | undefined) ?? usual;
        const parts = (bands.papers as readonly FileValue[]).map((paper, i) => {
          if (isInner(paper))
            return take(paper, `${at}.papers[${i}]`, runs === "across" ? "upright" : "across");
          const next = rest.shift();
          if (next === undefined) throw new Error(`Too few bands at ${at}.`);
          return next;
        });
        found.push({ path: at, bands, runs, parts, until, card });
        return hull(parts);
      };
      take(layer, path, "across");
      expect(rest).toEqual([]);
      return found;
    }),
  );
}

function seamKeys({ bands: { seam } }: Divided): FileObject {
  return typeof seam === "object" ? (seam as FileObject) : {};
}

/** Places along the direction that bands follow each other in. */
function alongOf({ runs }: Divided) {
  return (one: Rectangle) =>
    runs === "upright"
      ? { start: one.x, extent: one.width, side: one.y, across: one.height }
      : { start: one.y, extent: one.height, side: one.x, across: one.width };
}

function ticks(value: FileValue | undefined, unit: Unit): Ticks {
  return value === undefined ? 0 : parseLength(String(value), { unit, allowZero: true });
}

describe("bands made at random", () => {
  test("make up what they divide with the gaps between them, to the tick", () => {
    checkProjects(({ file, expansion }) => {
      const unit = file.units === "mm" ? "mm" : "in";
      for (const divided of dividedIn(file, expansion)) {
        const along = alongOf(divided);
        const gap = ticks(seamKeys(divided).gap, unit);
        const parts = divided.parts.map(along);
        const whole = along(hull(divided.parts));
        let end = whole.start - gap;
        for (const part of parts) {
          expect(part.start).toBe(end + gap);
          expect(part.extent).toBeGreaterThan(0);
          expect([part.side, part.across]).toEqual([whole.side, whole.across]);
          end = part.start + part.extent;
        }
        expect(end).toBe(whole.start + whole.extent);
      }
    });
  });

  test("meet where their shares end, to half the precision, and where their widths end, to the tick", () => {
    checkProjects(({ file, project, expansion }) => {
      const unit = file.units === "mm" ? "mm" : "in";
      for (const divided of dividedIn(file, expansion)) {
        const along = alongOf(divided);
        const gap = ticks(seamKeys(divided).gap, unit);
        const whole = along(hull(divided.parts));
        const seams = divided.parts
          .slice(1)
          .map((part) => along(part).start - (gap - Math.floor(gap / 2)) - whole.start);
        const { bands } = divided.bands;
        if (typeof bands === "object" && "widths" in bands) {
          const widths = bands.widths as readonly FileValue[];
          const given = widths.map((width) => (width === "rest" ? 0 : ticks(width, unit)));
          const rest = whole.extent - given.reduce((sum, width) => sum + width, 0);
          let at = 0;
          seams.forEach((seam, index) => {
            at += widths[index] === "rest" ? rest : (given[index] ?? 0);
            expect(seam).toBe(at);
          });
          continue;
        }
        const ratios = typeof bands === "string" ? (WORDS[bands] ?? []) : (bands as readonly number[]);
        const sum = ratios.reduce((all, ratio) => all + ratio, 0);
        seams.forEach((seam, index) => {
          const before = ratios.slice(0, index + 1).reduce((all, ratio) => all + ratio, 0);
          expect(seam % project.precision).toBe(0);
          expect(Math.abs(seam - (whole.extent * before) / sum)).toBeLessThanOrEqual(project.precision / 2);
        });
      }
    });
  });

  test("have covers as wide as asked, centred on each seam, and ribbons with ends to tape behind", () => {
    checkProjects(({ file, expansion }) => {
      const unit = file.units === "mm" ? "mm" : "in";
      const paths = new Map([...expansion.pieces, ...expansion.items].map(({ id, path }) => [id, path]));
      for (const divided of dividedIn(file, expansion)) {
        const along = alongOf(divided);
        const keys = seamKeys(divided);
        const covers = divided.card.layers.filter(({ piece }) => paths.get(piece) === `${divided.path}.seam`);
        const isCovered = "cover" in keys || "ribbon" in keys || "tape" in keys;
        expect(covers).toHaveLength(isCovered ? divided.parts.length - 1 : 0);
        const [width, gap] = [ticks(keys.width, unit), ticks(keys.gap, unit)];
        covers.forEach((cover, index) => {
          const { start, extent, side, across } = along(cover);
          const seam = along(divided.parts[index + 1] ?? cover).start - (gap - Math.floor(gap / 2));
          const whole = along(hull(divided.parts));
          expect(extent).toBe(width);
          // An odd number of ticks has its middle half a tick off.
          expect(Math.abs(2 * start + extent - 2 * seam)).toBe(width % 2);
          expect([side, across]).toEqual([whole.side, whole.across]);
          const item = expansion.items.find(({ id }) => id === cover.piece);
          expect(item?.kind).toBe("ribbon" in keys ? "ribbon" : "tape" in keys ? "tape" : undefined);
          if (item === undefined) return;
          const ends = unit === "in" ? inches(1) : millimetres(26);
          expect(item).toMatchObject({ width, length: across + (item.kind === "ribbon" ? ends : 0) });
          expect(item.quantity).toBe(divided.card.copies);
        });
      }
    });
  });

  test("have no seam that is neither covered, nor bare by the maker's word, nor warned of", () => {
    checkProjects(({ file, project, expansion }) => {
      const unit = file.units === "mm" ? "mm" : "in";
      const error = unit === "in" ? inches(1 / 16) : millimetres(1.5);
      const findings = checkProject(project);
      const told = (code: string) =>
        new Set(findings.filter((one) => one.code === code).map(({ path }) => path));
      const [bareTold, narrowTold] = [told("bare-seam"), told("narrow-cover")];
      for (const divided of dividedIn(file, expansion)) {
        const keys = seamKeys(divided);
        const isCovered = "cover" in keys || "ribbon" in keys || "tape" in keys;
        const isBare = divided.bands.seam === "bare" || keys.bare === true;
        const gap = ticks(keys.gap, unit);
        const shows = divided.parts.slice(1).some((part) => showsAt(divided, part, gap));
        expect(bareTold.has(divided.path)).toBe(!isCovered && !isBare && shows);
        const isNarrow = isCovered && ticks(keys.width, unit) <= gap + 2 * error;
        expect(narrowTold.has(`${divided.path}.seam.width`)).toBe(isNarrow);
      }
    });
  });
});

/** Whether the seam before a band is uncovered at one of the points between the edges of all that lies above. */
function showsAt(divided: Divided, part: Rectangle, gap: Ticks): boolean {
  const along = alongOf(divided);
  const { start, side, across } = along(part);
  const above = divided.card.layers
    .slice(divided.until)
    .filter(({ surface }) => surface === "front")
    .map(along)
    .filter((one) => one.start < start - gap && one.start + one.extent > start);
  const edges = [side, side + across, ...above.flatMap((one) => [one.side, one.side + one.across])].sort(
    (a, b) => a - b,
  );
  return edges.slice(1).some((edge, index) => {
    const point = ((edges[index] ?? 0) + edge) / 2;
    if (point <= side || point >= side + across || edge === edges[index]) return false;
    return !above.some((one) => one.side < point && point < one.side + one.across);
  });
}
