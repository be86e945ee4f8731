import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  closedSize,
  type FoldDirection,
  type FoldKind,
  type FoldWish,
  flatsOf,
  foldedPanels,
  placeOnClosed,
  type SurfaceName,
  surfacesOf,
  thickestPoint,
} from "../../src/index.js";

const front = { width: inches(4), height: inches(6) };

function flatOf(fold: FoldWish) {
  const [flat] = flatsOf({ front, fold });
  if (flat === undefined) throw new Error("Expected a flat.");
  return flat;
}

/** How many panels lie on each other where most do. */
function panelsAtMost(fold: FoldWish): number {
  const panels = foldedPanels(flatOf(fold));
  return thickestPoint(
    panels.map(({ from, to }) => ({ x: from, y: 0, width: to - from, height: 1, thickness: 1 })),
  );
}

describe("a folded card", () => {
  it.each<[FoldWish, number]>([
    ["flat", 1],
    ["side", 2],
    ["top", 2],
    ["gate", 2],
    ["z", 3],
    ["tri", 3],
    ["easel", 3],
    ["shutter", 3],
    ["accordion", 3],
    [{ kind: "accordion", panels: 7 }, 7],
    ["double-parallel", 4],
    ["roll", 4],
    ["double-gate", 4],
  ])("of the kind %j has %d panels on each other", (fold, panels) => {
    expect(panelsAtMost(fold)).toBe(panels);
  });

  it("of one's own is worked out from its panels", () => {
    const own = (widths: readonly number[], folds: readonly FoldDirection[]) =>
      panelsAtMost({ kind: "own", along: "width", widths: widths.map(inches), folds });
    // The two outer panels do not reach each other.
    expect(own([1, 4, 2], ["mountain", "mountain"])).toBe(2);
    expect(own([3, 4, 2], ["mountain", "mountain"])).toBe(3);
    expect(own([1, 4, 1, 1], ["mountain", "mountain", "valley"])).toBe(3);
  });

  it.each<FoldKind>([
    "side",
    "top",
    "gate",
    "double-gate",
    "z",
    "tri",
    "roll",
    "accordion",
    "easel",
    "shutter",
  ])("of the kind %s closes to its front", (kind) => {
    expect(closedSize(flatOf(kind as FoldWish))).toEqual(front);
  });
});

describe("a place of a surface", () => {
  const spot = { x: inches(1 / 2), y: inches(1), width: inches(1), height: inches(1) };
  const at = (fold: FoldWish, surface: SurfaceName) => {
    const { x, y } = placeOnClosed(flatOf(fold), surface, spot);
    return [x / inches(1), y / inches(1)];
  };

  it("is where it is on what faces the reader, and mirrored left to right on what does not", () => {
    expect(at("side", "front")).toEqual([0.5, 1]);
    expect(at("side", "inside")).toEqual([0.5, 1]);
    expect(at("side", "inside-front")).toEqual([2.5, 1]);
    expect(at("side", "back")).toEqual([2.5, 1]);
    expect(at("flat", "back")).toEqual([2.5, 1]);
  });

  it("is upside down behind a front that is lifted", () => {
    expect(at("top", "front")).toEqual([0.5, 1]);
    expect(at("top", "inside")).toEqual([0.5, 1]);
    expect(at("top", "inside-front")).toEqual([0.5, 4]);
    expect(at("top", "back")).toEqual([2.5, 1]);
  });

  it("lies on its own door, flap or page", () => {
    expect(at("gate", "left-door")).toEqual([0.5, 1]);
    expect(at("gate", "right-door")).toEqual([2.5, 1]);
    expect(at("gate", "inside")).toEqual([0.5, 1]);
    expect(at("z", "flap")).toEqual([0.5, 1]);
    expect(at("z", "inside")).toEqual([0.5, 1]);
    expect(at("z", "back")).toEqual([2.5, 1]);
    expect(at("easel", "inside")).toEqual([0.5, 1]);
    expect(at("tri", "inside")).toEqual([0.5, 1]);
    // Opened, the first page is the inside of the front, the second that of the panel behind it.
    expect(at("accordion", "page-1")).toEqual([2.5, 1]);
    expect(at("accordion", "page-2")).toEqual([0.5, 1]);
    expect(at("accordion", "page-3")).toEqual([2.5, 1]);
  });

  it.each<FoldWish>([
    "flat",
    "side",
    "top",
    "gate",
    { kind: "gate", along: "height" },
    "double-gate",
    "z",
    { kind: "z", along: "height" },
    "tri",
    "roll",
    "double-parallel",
    "accordion",
    "easel",
    "shutter",
  ])("never lies outside the closed card (%j)", (fold) => {
    const flat = flatOf(fold);
    const closed = closedSize(flat);
    for (const { name, width, height } of surfacesOf(flat, front)) {
      const { x, y, ...size } = placeOnClosed(flat, name, { x: 0, y: 0, width, height });
      expect(size).toEqual({ width, height });
      expect([x >= 0, y >= 0, x + width <= closed.width, y + height <= closed.height]).toEqual(
        Array.from({ length: 4 }, () => true),
      );
    }
  });
});

test("panels lie as a strip of paper that is folded from its first panel on, panel by panel", () => {
  const widths = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 8 });
  const folds = fc.array(fc.constantFrom<FoldDirection>("mountain", "valley"), {
    minLength: 7,
    maxLength: 7,
  });
  fc.assert(
    fc.property(widths, folds, (panels, directions) => {
      const own = {
        kind: "own",
        along: "width",
        widths: panels,
        folds: directions.slice(0, panels.length - 1),
      } as const;
      const [flat] = flatsOf({ front: { width: panels.at(-1) ?? 1, height: 1 }, fold: own });
      if (flat === undefined) throw new Error("Expected a flat.");
      // The oracle walks along the strip: at each score it turns round.
      let place = 0;
      let step = 1;
      const walked = panels.map((width) => {
        const start = place;
        place += step * width;
        step = -step;
        return [Math.min(start, place), Math.max(start, place)] as const;
      });
      const [least, most] = [Math.min(...walked.map(([a]) => a)), Math.max(...walked.map(([, b]) => b))];
      const found = foldedPanels(flat).map(({ from, to }) => [from, to]);
      const asWalked = walked.map(([a, b]) => [a - least, b - least]);
      const mirrored = walked.map(([a, b]) => [most - b, most - a]);
      expect([asWalked, mirrored]).toContainEqual(found);
    }),
  );
});
