import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkOutline } from "../../src/outline/check-outline.js";
import { mirrored, moved } from "../../src/outline/move.js";
import { type Edge, type Outline, type Ring, reversedRing } from "../../src/outline/outline.js";
import { anyOutline, anyPolygon, discAt, lobedDisc, rectangleOf } from "../random-outline.js";

const ring = (...corners: readonly (readonly [number, number])[]): Ring =>
  corners.map(([x, y]): Edge => ({ to: { x, y } }));
const bare = (outer: Ring): Outline => ({ outer, windows: [] });
const codes = (outline: Outline) => checkOutline(outline).map(({ code }) => code);
const window = ({ outer }: Outline): Ring => reversedRing(outer);

const square = rectangleOf(1000, 1000);

describe("what is right", () => {
  test("are all random outlines and the plain ones", () => {
    expect(checkOutline(discAt({ x: 0, y: 0 }, 40_640))).toEqual([]);
    expect(checkOutline(lobedDisc(12, 40_640, 10_000))).toEqual([]);
    fc.assert(
      fc.property(anyOutline, (outline) => {
        expect(checkOutline(outline)).toEqual([]);
      }),
    );
  });

  test("is a line that touches itself at a point, at corners and on an edge", () => {
    // Two squares that hang together by a corner, run through as one line that turns at it.
    expect(
      codes(bare(ring([0, 0], [50, 0], [50, 50], [100, 50], [100, 100], [50, 100], [50, 50], [0, 50]))),
    ).toEqual([]);
    // A tooth of a comb that touches the opposite side with its tip.
    expect(codes(bare(ring([0, 0], [100, 0], [100, 100], [60, 100], [50, 0], [40, 100], [0, 100])))).toEqual(
      [],
    );
    // Two lobes that touch at a point of their arcs.
    const lobes = bare([
      { to: { x: 200, y: 0 } },
      { to: { x: 200, y: 100 } },
      { to: { x: 100, y: 100 }, through: { x: 150, y: 50 } },
      { to: { x: 0, y: 100 }, through: { x: 50, y: 50 } },
      { to: { x: 0, y: 0 } },
    ]);
    expect(codes(lobes)).toEqual([]);
  });

  test("are windows that touch the outer ring or each other at points", () => {
    const tip = ring([500, 0], [400, 100], [600, 100]);
    expect(codes({ outer: square.outer, windows: [tip] })).toEqual([]);
    const one = window(moved(rectangleOf(100, 100), { x: 100, y: 100 }));
    const two = window(moved(rectangleOf(100, 100), { x: 200, y: 200 }));
    expect(codes({ outer: square.outer, windows: [one, two] })).toEqual([]);
    // A disc that touches all four sides.
    expect(codes({ outer: square.outer, windows: [window(discAt({ x: 500, y: 500 }, 500))] })).toEqual([]);
  });
});

describe("what is wrong with points and edges", () => {
  test("is found with its place", () => {
    const [fault] = checkOutline(bare(ring([0, 0], [9.5, 0], [9, 9])));
    expect(fault?.code).toBe("not-whole");
    expect(fault?.path).toBe("outer[1]");
    expect(fault?.message).toContain("(9.5, 0)");
    expect(codes(bare(ring([0, 0], [Number.NaN, 0], [9, 9])))).toEqual(["not-whole"]);
    expect(codes(bare([{ to: { x: 8, y: 0 }, through: { x: 4, y: -0.5 } }, { to: { x: 0, y: 0 } }]))).toEqual(
      ["not-whole"],
    );
    expect(codes(bare(ring([0, 0], [9, 0], [9, 0], [9, 9])))).toEqual(["no-length"]);
    expect(
      checkOutline(bare([{ to: { x: 0, y: 0 }, through: { x: 5, y: 5 } }])).map(({ code }) => code),
    ).toEqual(["no-length", "too-few-edges"]);
    expect(codes(bare(ring([0, 0], [9, 0])))).toEqual(["too-few-edges"]);
    expect(codes(bare([]))).toContain("too-few-edges");
    expect(codes(rectangleOf(16_000_000, 10))).toEqual([]);
    expect(codes(rectangleOf(16_000_001, 10))).toEqual(["too-large"]);
    // An arc whose ends lie within 10 m and whose bulge does not.
    const far = bare([
      { to: { x: 15_999_999, y: 900 }, through: { x: 16_000_449, y: 450 } },
      { to: { x: 15_999_999, y: 0 } },
    ]);
    expect(codes(far)).toEqual(["too-large"]);
  });

  test("is a straight ring of two edges, even with a point on the line to go through", () => {
    const flat = bare([{ to: { x: 8, y: 0 }, through: { x: 4, y: 0 } }, { to: { x: 0, y: 0 } }]);
    expect(codes(flat)).toEqual(["too-few-edges"]);
  });
});

describe("what runs the wrong way round", () => {
  test("is an outer ring with a negative area and a window with a positive one", () => {
    expect(codes(bare(reversedRing(square.outer)))).toEqual(["wrong-direction"]);
    const hole = moved(rectangleOf(100, 100), { x: 100, y: 100 }).outer;
    const [fault] = checkOutline({ outer: square.outer, windows: [hole] });
    expect(fault?.code).toBe("wrong-direction");
    expect(fault?.path).toBe("windows[0]");
    fc.assert(
      fc.property(anyPolygon, ({ outer }) => {
        expect(codes(bare(reversedRing(outer)))).toEqual(["wrong-direction"]);
      }),
    );
  });

  test("or encloses nothing", () => {
    expect(codes(bare(ring([0, 0], [10, 10], [10, 0], [0, 10])))).toEqual(["no-area", "crossing"]);
    expect(codes(bare(ring([0, 0], [10, 0], [20, 0])))).toContain("no-area");
  });
});

describe("what crosses itself", () => {
  test("is a figure eight, of lines, of arcs, large and small", () => {
    expect(codes(bare(ring([0, 0], [80, 80], [80, 0], [0, 60])))).toContain("crossing");
    expect(codes(bare(ring([0, 0], [3, 3], [3, 0], [0, 2])))).toContain("crossing");
    const round = bare([
      { to: { x: 0, y: 0 } },
      { to: { x: 9000, y: 9000 } },
      { to: { x: 9000, y: 0 }, through: { x: 15_000, y: 4500 } },
      { to: { x: 0, y: 6000 } },
    ]);
    expect(codes(round)).toContain("crossing");
  });

  test("through a corner of its own", () => {
    // Both lines go through (50, 50), a corner of each: (0, 0) to (100, 100) and (100, 0) to (0, 110).
    const eight = bare(ring([0, 0], [50, 50], [100, 100], [100, 0], [50, 50], [0, 110]));
    expect(codes(eight)).toEqual(["crossing"]);
    expect(checkOutline(eight)[0]?.at).not.toBe(null);
    // A corner of one on the middle of an edge of the other.
    const through = bare(ring([0, 0], [100, 0], [100, 100], [50, 0], [0, -100]));
    expect(codes(through)).toContain("crossing");
    // As small as it can be.
    expect(codes(bare(ring([0, 0], [1, 1], [2, 2], [2, 0], [1, 1], [0, 3])))).toContain("crossing");
  });

  test("with both lobes on the same side: a loop in the line", () => {
    // A pentagram is wound round twice in its middle.
    const star = bare(ring([50, 0], [79, 90], [2, 34], [98, 34], [21, 90]));
    expect(codes(star)).toContain("crossing");
    // A loop that starts and ends at one corner and lies inside.
    const loop = bare(ring([0, 0], [50, 0], [70, 40], [30, 40], [50, 0], [100, 0], [100, 100], [0, 100]));
    expect(codes(loop)).toEqual(["crossing"]);
    // A loop at a corner that lies outside and runs with the line is only touched.
    const lobe = bare(ring([0, 0], [50, 0], [30, -40], [70, -40], [50, 0], [100, 0], [100, 100], [0, 100]));
    expect(codes(lobe)).toEqual([]);
  });

  test("by equal lobes on both sides, whose areas take each other up", () => {
    // The top side loops outside the wrong way round and inside the right way round, equally far.
    const line = bare(
      ring(
        [0, 0],
        [50, 0],
        [70, -40],
        [30, -40],
        [50, 0],
        [150, 0],
        [170, 40],
        [130, 40],
        [150, 0],
        [200, 0],
        [200, 100],
        [0, 100],
      ),
    );
    expect(codes(line)).toEqual(["crossing"]);
  });

  test("is an edge that runs back on another one", () => {
    expect(
      codes(bare(ring([0, 0], [100, 0], [100, 50], [150, 50], [100, 50], [100, 100], [0, 100]))),
    ).toEqual(["overlapping-edges"]);
    // An arc there and back.
    const horn = { x: -150, y: -200 };
    const there: Edge[] = [
      { to: { x: 0, y: 0 } },
      { to: { x: -300, y: 0 }, through: horn },
      { to: { x: 0, y: 0 }, through: horn },
    ];
    expect(codes(bare([...there, { to: { x: 900, y: 0 } }, { to: { x: 0, y: 900 } }]))).toEqual([
      "overlapping-edges",
    ]);
  });

  test("is found in every outline whose edge is made to cross the next but one", () => {
    fc.assert(
      fc.property(anyPolygon, fc.nat(), ({ outer }, start) => {
        fc.pre(outer.length >= 4);
        // Two neighbouring corners change places.
        const corners = outer.map(({ to }) => to);
        const i = start % corners.length;
        const j = (i + 1) % corners.length;
        const swapped = corners.map((corner, index) =>
          index === i ? corners[j] : index === j ? corners[i] : corner,
        );
        const before = corners[(i + corners.length - 1) % corners.length] as { x: number; y: number };
        const after = corners[(j + 1) % corners.length] as { x: number; y: number };
        const a = corners[i] as { x: number; y: number };
        const b = corners[j] as { x: number; y: number };
        const turn = (
          p: { x: number; y: number },
          q: { x: number; y: number },
          r: { x: number; y: number },
        ) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
        // The lines before-b and a-after cross exactly where the four are in convex position that way.
        const crosses =
          turn(before, b, a) * turn(before, b, after) < 0 && turn(a, after, before) * turn(a, after, b) < 0;
        fc.pre(crosses);
        const found = codes(bare(swapped.map((to) => ({ to: to as { x: number; y: number } }))));
        expect(found).toContain("crossing");
      }),
    );
  });
});

describe("windows", () => {
  const hole = (x: number, y: number, width = 100, height = 100) =>
    window(moved(rectangleOf(width, height), { x, y }));

  test("that lie outside, or reach outside, are found", () => {
    expect(codes({ outer: square.outer, windows: [hole(2000, 0)] })).toEqual(["window-outside"]);
    // Corners beyond the side, with no edge that crosses between its ends but those of the window.
    expect(codes({ outer: square.outer, windows: [hole(950, 100)] })).toEqual(["crossing"]);
    const disc = discAt({ x: 0, y: 0 }, 40_000);
    expect(codes({ outer: disc.outer, windows: [window(discAt({ x: 30_000, y: 0 }, 20_000))] })).toEqual([
      "window-outside",
    ]);
    // Larger than the outer ring all round.
    expect(codes({ outer: square.outer, windows: [hole(-10, -10, 1020, 1020)] })).toEqual(["window-outside"]);
  });

  test("that share a length of an edge with the outer ring or another window are found", () => {
    expect(codes({ outer: square.outer, windows: [hole(0, 100)] })).toEqual(["overlapping-edges"]);
    expect(codes({ outer: square.outer, windows: [hole(100, 100), hole(200, 150)] })).toEqual([
      "overlapping-edges",
    ]);
    const disc = discAt({ x: 0, y: 0 }, 40_000);
    expect(codes({ outer: disc.outer, windows: [window(disc)] })).toEqual(["overlapping-edges"]);
  });

  test("that overlap, or lie in one another, are found", () => {
    expect(codes({ outer: square.outer, windows: [hole(100, 100), hole(150, 150)] })).toEqual(["crossing"]);
    const [fault] = checkOutline({ outer: square.outer, windows: [hole(100, 100), hole(120, 120, 20, 20)] });
    expect(fault?.code).toBe("windows-overlap");
    expect(fault?.path).toBe("windows[1]");
    const discs = [discAt({ x: 20_000, y: 30_000 }, 9000), discAt({ x: 30_000, y: 30_000 }, 9000)].map(
      window,
    );
    expect(codes({ outer: rectangleOf(90_000, 90_000).outer, windows: discs })).toEqual(["windows-overlap"]);
  });

  test("are judged the same in a mirror", () => {
    const odd: Outline = { outer: square.outer, windows: [hole(950, 100), hole(120, 120, 20, 20)] };
    expect(codes(mirrored(odd))).toEqual(codes(odd));
  });
});
