import { inches, millimetres, TICKS_PER_MM } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Dash,
  isInside,
  type Outline,
  offset,
  outlineOf,
  type Point,
  type Ring,
  ringsOf,
  type Span,
  stitch,
} from "../../src/index.js";
import { runsOf } from "../../src/stitch/run.js";
import { circleOf, distanceTo } from "../dense-samples.js";
import { box, disc, lobed, pierced, polygonOutline } from "../plain-outlines.js";
import { anyOutline, anySymmetricOutline } from "../random-outline.js";

/** 0.01 mm. */
const EXACT = TICKS_PER_MM / 100;

const circles = new WeakMap<Span, ReturnType<typeof circleOf>>();

/** Up to so many of a list, spread over it. */
function someOf<Value>(list: readonly Value[], count: number): readonly Value[] {
  const step = Math.max(1, list.length / count);
  return list.filter((_, index) => Math.floor(index / step) > Math.floor((index - 1) / step));
}

/** How far along an edge, and how far off it, a point lies: by the machine's own functions. */
function placeOn(
  span: Span,
  point: Point,
): { readonly along: number; readonly off: number; readonly length: number } {
  const circle = circles.has(span) ? (circles.get(span) ?? null) : circleOf(span);
  circles.set(span, circle);
  if (circle === null) {
    const x = span.to.x - span.from.x;
    const y = span.to.y - span.from.y;
    const length = Math.hypot(x, y);
    const part = ((point.x - span.from.x) * x + (point.y - span.from.y) * y) / length;
    const along = Math.min(length, Math.max(0, part));
    const off = Math.hypot(
      point.x - span.from.x - (x * along) / length,
      point.y - span.from.y - (y * along) / length,
    );
    return { along, off, length };
  }
  const whole = circle.end - circle.start;
  const angle = (Math.atan2(point.y - circle.y, point.x - circle.x) - circle.start) * Math.sign(whole);
  const turn = ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const beyond = turn > (Math.abs(whole) + 2 * Math.PI) / 2;
  const within = beyond ? 0 : Math.min(turn, Math.abs(whole));
  const at = circle.start + within * Math.sign(whole);
  const off = Math.hypot(
    point.x - circle.x - circle.r * Math.cos(at),
    point.y - circle.y - circle.r * Math.sin(at),
  );
  return { along: circle.r * within, off, length: circle.r * Math.abs(whole) };
}

/** Points of a dash and those half-way between them. */
function samplesOf(dash: Dash): readonly Point[] {
  return dash.flatMap((point, index) => {
    const next = dash[index + 1];
    return next === undefined ? [point] : [point, { x: (point.x + next.x) / 2, y: (point.y + next.y) / 2 }];
  });
}

function lengthOf(dash: Dash): number {
  return dash.slice(1).reduce((sum, { x, y }, index) => {
    const before = dash[index] as Point;
    return sum + Math.hypot(x - before.x, y - before.y);
  }, 0);
}

/** The dashes of each smooth stretch of the line, as where they start and end along it. */
function byStretch(outline: Outline, inset: number, windows: boolean, dashes: readonly Dash[]) {
  const rings: readonly Ring[] = offset([outline], -inset).outlines.flatMap((part) =>
    windows ? ringsOf(part) : [part.outer],
  );
  const stretches = rings.flatMap(runsOf).map((run) => ({
    spans: run.edges.map(({ span }) => span),
    isClosed: run.isClosed,
    dashes: [] as { from: number; to: number; length: number }[],
  }));
  for (const dash of dashes) {
    const middle = samplesOf(dash)[dash.length - 1] as Point;
    let best = { off: Number.POSITIVE_INFINITY, stretch: stretches[0] };
    for (const stretch of stretches) {
      for (const span of stretch.spans) {
        const { off } = placeOn(span, middle);
        if (off < best.off) best = { off, stretch };
      }
    }
    const { spans, dashes: own } = best.stretch as (typeof stretches)[number];
    const at = (point: Point) => {
      let sum = 0;
      let found = { off: Number.POSITIVE_INFINITY, along: 0 };
      for (const span of spans) {
        const { off, along, length } = placeOn(span, point);
        if (off < found.off) found = { off, along: sum + along };
        sum += length;
      }
      return found.along;
    };
    const places = dash.map(at);
    // Of a stretch that ends where it starts, that place is its start for a dash that goes on from it.
    const whole = spans.reduce((sum, span) => sum + placeOn(span, span.to).length, 0);
    if (!best.stretch?.isClosed && (places.at(-1) as number) < (places[0] as number)) {
      if ((places[0] as number) > whole - 3) places[0] = 0;
      else places[places.length - 1] = whole;
    }
    // Along the line from point to point; straight where a closed line begins anew.
    const length = places.slice(1).reduce((sum, place, index) => {
      const step = Math.abs(place - (places[index] as number));
      const straight = lengthOf(dash.slice(index, index + 2));
      return sum + (step < 2 * straight ? step : straight);
    }, 0);
    own.push({ from: places[0] as number, to: places.at(-1) as number, length });
  }
  return stretches;
}

const anyWish = fc.record({
  inset: fc.integer({ min: millimetres(1), max: millimetres(4) }),
  dash: fc.integer({ min: millimetres(1.5), max: millimetres(2.5) }),
  gap: fc.integer({ min: millimetres(0.7), max: millimetres(1.2) }),
  corners: fc.constantFrom("met" as const, "free" as const),
  windows: fc.boolean(),
});

describe("stitches on plain shapes", () => {
  const square = box(0, 0, inches(4), inches(4));

  test("lie an eighth of an inch inside a square where nothing else is said, and meet at its corners", () => {
    const { dashes, holes, tooShort, line, pitch } = stitch(square);
    // 3.75 in are 95.25 mm: round((95.25 + 1) / 3) = 32 stitches of 2 mm with 31 gaps of 1 mm come nearest.
    expect(dashes.length).toBe(4 * 32);
    expect(pitch?.least).toBeCloseTo((3 * 95.25 * TICKS_PER_MM) / (32 * 2 + 31 * 1), 6);
    expect({ holes, tooShort, line }).toEqual({ holes: [], tooShort: 0, line: "whole" });
    const ends = dashes.flatMap((dash) => [dash[0], dash.at(-1)].map((end) => `${end?.x},${end?.y}`));
    for (const corner of ["5080,5080", "157480,5080", "157480,157480", "5080,157480"]) {
      expect(ends.filter((end) => end === corner).length).toBe(2);
    }
    expect(dashes.every(({ length }) => length === 2)).toBe(true);
  });

  test("leave corners free where that is wanted, half a gap on both sides", () => {
    const { dashes, pitch } = stitch(square, { corners: "free" });
    // 95.25 / 3 = 31.75
    expect(dashes.length).toBe(4 * 32);
    expect(pitch).toEqual({ least: inches(3.75) / 32, most: inches(3.75) / 32 });
    const gap = inches(3.75) / 32 / 3;
    expect(dashes[0]).toEqual([
      { x: Math.round(5080 + gap / 2), y: 5080 },
      { x: Math.round(5080 + 2.5 * gap), y: 5080 },
    ]);
  });

  test("are pricked with a hole at each corner, or none there", () => {
    const met = stitch(square, { marks: "holes" });
    expect(met.dashes).toEqual([]);
    expect(met.holes.length).toBe(4 * 32);
    expect(new Set(met.holes.map(({ diameter }) => diameter))).toEqual(new Set([millimetres(1)]));
    expect(met.holes.map(({ centre }) => centre)).toContainEqual({ x: 5080, y: 5080 });
    const free = stitch(square, { marks: "holes", corners: "free" });
    expect(free.holes.length).toBe(4 * 32);
    expect(free.holes.map(({ centre }) => centre)).not.toContainEqual({ x: 5080, y: 5080 });
  });

  test("go round a disc in a whole number, all alike, one across the top", () => {
    const { dashes, pitch } = stitch(disc(0, 0, inches(1)));
    const round = 2 * Math.PI * inches(7 / 8);
    expect(dashes.length).toBe(Math.round(round / millimetres(3)));
    expect(pitch?.least).toBeCloseTo(round / dashes.length, 0);
    const lengths = dashes.map(lengthOf);
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThan(2);
    const [first] = dashes as [Dash];
    expect(Math.abs((first[0]?.x as number) + (first.at(-1)?.x as number))).toBeLessThanOrEqual(1);
    expect(first.every(({ y }) => y < -inches(0.87))).toBe(true);
    // Each bends with the line: its middle is no further off than its ends.
    expect(dashes.every(({ length }) => length > 2)).toBe(true);
  });

  test("follow the lobes of a scalloped disc in one run round all valleys", () => {
    const flower = lobed(14, inches(0.7));
    const { dashes, tooShort, pitch } = stitch(flower, { inset: millimetres(2) });
    expect(tooShort).toBe(0);
    expect(pitch?.least).toBe(pitch?.most);
    expect(dashes.length).toBeGreaterThan(60);
  });

  test("go round windows where that is wanted, and keep off them where not", () => {
    const frame = pierced(square, disc(inches(2), inches(2), inches(1)));
    const outer = stitch(frame);
    const both = stitch(frame, { windows: true });
    expect(outer.dashes.length).toBe(128);
    expect(both.dashes.slice(0, 128)).toEqual(outer.dashes);
    const round = both.dashes.slice(128);
    expect(round.length).toBe(Math.round((2 * Math.PI * inches(1.125)) / millimetres(3)));
    for (const point of round.flatMap(samplesOf)) {
      expect(Math.abs(Math.hypot(point.x - inches(2), point.y - inches(2)) - inches(1.125))).toBeLessThan(
        EXACT,
      );
    }
    const near = pierced(square, disc(inches(2), inches(3 / 8), inches(1 / 4)));
    for (const point of stitch(near).dashes.flatMap(samplesOf)) {
      expect(distanceTo(near, point)).toBeGreaterThan(5080 - EXACT);
    }
  });

  test("are told where the line vanishes, splits, or has stretches too short", () => {
    const strip = box(0, 0, inches(3), inches(1 / 4));
    expect(stitch(strip)).toEqual({ dashes: [], holes: [], pitch: null, tooShort: 0, line: "vanished" });
    const dumbbell = polygonOutline(
      [
        [0, 0],
        [2, 0],
        [2, 0.9],
        [4, 0.9],
        [4, 0],
        [6, 0],
        [6, 2],
        [4, 2],
        [4, 1.1],
        [2, 1.1],
        [2, 2],
        [0, 2],
      ].map(([x, y]) => ({ x: inches(x as number), y: inches(y as number) })),
    );
    expect(stitch(dumbbell).line).toBe("split");
    // Inside by 1/8 in: a side of 0.6 mm.
    const narrow = box(0, 0, inches(2), inches(1 / 4) + millimetres(0.6));
    const { tooShort, dashes } = stitch(narrow);
    expect(tooShort).toBe(2);
    expect(dashes.length).toBe(2 * Math.round((inches(1.75) + millimetres(1)) / millimetres(3)));
    const tiny = box(0, 0, inches(1 / 4) + millimetres(0.6), inches(1 / 4) + millimetres(0.6));
    expect(stitch(tiny)).toMatchObject({ dashes: [], tooShort: 4, line: "whole" });
    expect(stitch(tiny, { marks: "holes" })).toMatchObject({ holes: [], tooShort: 4, line: "whole" });
  });

  test("are the same on all sides where the distance just uses up round corners", () => {
    const round = outlineOf({
      shape: "rectangle",
      width: 10_160,
      height: 10_160,
      corners: "round",
      radius: 1524,
    });
    const { dashes, tooShort } = stitch(round, { inset: 3669, dash: 2400, gap: 1120 });
    expect(tooShort).toBe(0);
    expect(dashes.length).toBe(4);
    const lengths = dashes.map(lengthOf);
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(2);
  });

  test("never make one cut of short stretches that meet at their corners", () => {
    // Inside by 1/8 in: sides of 3 mm, one stitch each.
    const side = inches(1 / 4) + millimetres(3);
    const { dashes, tooShort } = stitch(box(0, 0, side, side));
    expect({ count: dashes.length, tooShort }).toEqual({ count: 4, tooShort: 0 });
    const ends = dashes.flatMap((dash) => [dash[0], dash.at(-1)].map((end) => `${end?.x},${end?.y}`));
    expect(new Set(ends).size).toBe(8);
  });
});

describe("the wish of a line of stitches", () => {
  /*
   * Stitches-per-inch tables: pitch in mm. Along sides of 10 in whole numbers of stitches give exactly these.
   */
  test.each([
    { perInch: 6, pitch: 4.23 },
    { perInch: 8, pitch: 3.18 },
    { perInch: 10, pitch: 2.54 },
    { perInch: 12, pitch: 2.12 },
  ])("of $perInch stitches per inch gives a pitch of $pitch mm", ({ perInch, pitch }) => {
    const sheet = box(0, 0, inches(10.25), inches(10.25));
    const { dashes, pitch: found } = stitch(sheet, { perInch, corners: "free" });
    expect(dashes.length).toBe(4 * 10 * perInch);
    expect(Math.abs((found?.least as number) / TICKS_PER_MM - pitch)).toBeLessThan(0.0051);
    expect(found?.most).toBe(found?.least);
    const pricked = stitch(sheet, { perInch, marks: "holes" });
    expect(pricked.holes.length).toBe(4 * 10 * perInch);
    expect(Math.abs((pricked.pitch?.most as number) / TICKS_PER_MM - pitch)).toBeLessThan(0.0051);
  });

  test("may give stitches per inch with the length of a stitch or of a gap", () => {
    const sheet = box(0, 0, inches(10.25), inches(10.25));
    const dash = stitch(sheet, { perInch: 10, dash: millimetres(2), corners: "free" });
    expect(lengthOf(dash.dashes[0] as Dash) / TICKS_PER_MM).toBeCloseTo(2, 2);
    const gap = stitch(sheet, { perInch: 10, gap: millimetres(2), corners: "free" });
    expect(lengthOf(gap.dashes[0] as Dash) / TICKS_PER_MM).toBeCloseTo(0.54, 2);
  });

  test.each([
    [{ inset: 0 }, "a distance of the stitches from the edge in whole ticks, at least 1"],
    [{ inset: 1.5 }, "found 1.5"],
    [{ dash: 100 }, "a stitch in whole ticks, at least 160"],
    [{ gap: Number.NaN }, "a gap between stitches in whole ticks"],
    [{ perInch: 0 }, "found 0. Fewer"],
    [{ perInch: 200 }, "found 200"],
    [{ perInch: 10, dash: 5000 }, "found 10 with stitches of 5000 ticks"],
    [{ perInch: 10, dash: 3000, gap: 1000 }, "leave one out"],
    [{ marks: "holes", holeDiameter: 4800 }, "they would run together"],
    [{ marks: "holes", holeDiameter: 2000, inset: 1000 }, "they would run through the edge"],
  ] as const)("is refused with a reason: %o", (options, message) => {
    const refused = () => stitch(box(0, 0, 90000, 90000), options);
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});

describe("stitches on any outline", () => {
  test("lie in the material at the distance asked for, to 0.01 mm", () => {
    fc.assert(
      fc.property(anyOutline, anyWish, fc.boolean(), (outline, wish, pricked) => {
        const { dashes, holes } = stitch(outline, { ...wish, marks: pricked ? "holes" : "dashes" });
        expect(dashes.every(({ length }) => length >= 2)).toBe(true);
        const whole = [...dashes.flat(), ...holes.map(({ centre }) => centre)];
        expect(whole.every(({ x, y }) => Number.isSafeInteger(x) && Number.isSafeInteger(y))).toBe(true);
        const points = [
          ...someOf(dashes, 12).flatMap(samplesOf),
          ...someOf(holes, 24).map(({ centre }) => centre),
        ];
        const off = points.map((point) => Math.abs(distanceTo(outline, point) - wish.inset));
        expect(Math.max(0, ...off)).toBeLessThanOrEqual(EXACT);
        // All of a line lies in the material as soon as one point of each stitch does.
        const ofEach = [...dashes.map(([first]) => first as Point), ...holes.map(({ centre }) => centre)];
        expect(someOf(ofEach, 12).every((point) => isInside(outline, point))).toBe(true);
      }),
    );
  });

  test("are whole, equal within each stretch with equal gaps, and as near to the wish as whole numbers allow", () => {
    fc.assert(
      fc.property(anyOutline, anyWish, (outline, wish) => {
        const { dashes, pitch } = stitch(outline, wish);
        for (const { dashes: own, isClosed } of byStretch(outline, wish.inset, wish.windows, dashes)) {
          if (own.length < 2) continue;
          const lengths = own.map(({ length }) => length);
          // Both ends of both are rounded by up to 0.71 ticks each.
          expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThan(3);
          const inOrder = [...own].sort((a, b) => a.from - b.from);
          const gaps = inOrder.slice(1).map(({ from }, index) => from - (inOrder[index]?.to as number));
          // The stitch across a closed line's seam starts near its end and ends near its start.
          const seen = isClosed ? gaps.filter((gap) => gap > 0 && gap < 4 * wish.gap) : gaps;
          expect(Math.max(...seen) - Math.min(...seen)).toBeLessThan(3);
          const step = (lengths[0] as number) + (seen[0] as number);
          expect(step).toBeGreaterThan((pitch?.least as number) - 4);
          expect(step).toBeLessThan((pitch?.most as number) + 4);
          // Two stitches where one and a half would fit, or two and a half, are furthest off: with gaps as long as stitches
          // (1.5 c + 0.5 g) / (2 c + g) = 2/3 and (2.5 c + 1.5 g) / (2 c + g) = 4/3.
          expect(step / (wish.dash + wish.gap)).toBeGreaterThan(0.66);
          expect(step / (wish.dash + wish.gap)).toBeLessThan(1.34);
        }
      }),
    );
  });

  test("are symmetric where the outline is", () => {
    fc.assert(
      fc.property(anySymmetricOutline, anyWish, fc.boolean(), (outline, wish, pricked) => {
        const { dashes, holes } = stitch(outline, { ...wish, marks: pricked ? "holes" : "dashes" });
        const near = (a: Point | undefined, b: Point | undefined) =>
          a !== undefined && b !== undefined && Math.abs(a.x + b.x) <= 4 && Math.abs(a.y - b.y) <= 4;
        const alone = dashes.filter(
          (dash) => !dashes.some((other) => near(other[0], dash.at(-1)) && near(other.at(-1), dash[0])),
        );
        expect(alone).toEqual([]);
        expect(holes.filter(({ centre }) => !holes.some((other) => near(other.centre, centre)))).toEqual([]);
      }),
    );
  });
});
