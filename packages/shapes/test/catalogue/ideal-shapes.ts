import { type Scallops, type Shape, scallopsOf } from "../../src/index.js";

/*
 * Areas of the ideal shapes, by the functions of the machine: closed formulas where there are any, else fine sums over curves
 * that are set up here from what the shape is said to be. Nothing of it is how the package draws them.
 */

/** Between a chord and its arc: r^2 (t - sin t) / 2. Source: any table of the circular segment. */
function segment(chord: number, rise: number): number {
  const radius = chord ** 2 / (8 * rise) + rise / 2;
  const turn = 4 * Math.atan((2 * rise) / chord);
  return (radius ** 2 * (turn - Math.sin(turn))) / 2;
}

/** Of the ideal shape, in square ticks. */
export function idealArea(shape: Shape): number {
  switch (shape.shape) {
    case "circle":
      return (Math.PI * shape.diameter ** 2) / 4;
    case "oval":
      return (Math.PI * shape.width * shape.height) / 4;
    case "square":
      return shape.side ** 2 - cornersOf(shape);
    case "rectangle":
      return shape.width * shape.height - cornersOf(shape);
    case "polygon":
      // n / 2 R^2 sin(2 pi / n).
      return (shape.sides / 2) * (shape.diameter / 2) ** 2 * Math.sin((2 * Math.PI) / shape.sides);
    case "star": {
      const points = shape.points ?? 5;
      const radius = shape.diameter / 2;
      return points * radius * (radius - starDepth(shape.depth, points, radius)) * Math.sin(Math.PI / points);
    }
    case "heart":
      return heartArea(shape.width, shape.height);
    case "arch": {
      const rise = shape.rise ?? Math.min(shape.width / 2, shape.height);
      return shape.width * (shape.height - rise) + segment(shape.width, rise);
    }
    case "half-circle":
      return (Math.PI * shape.diameter ** 2) / 8;
    case "leaf":
      return 2 * segment(Math.max(shape.width, shape.height), Math.min(shape.width, shape.height) / 2);
    case "drop": {
      // A kite of two right triangles and the sector below them.
      const radius = shape.width / 2;
      const distance = shape.height - radius;
      const angle = Math.acos(radius / distance);
      return radius ** 2 * (Math.tan(angle) + Math.PI - angle);
    }
    case "tag": {
      const { width, height } = shape;
      const cut = shape.cut ?? Math.min(width / 4, height / 2);
      const hole = shape.hole ?? Math.min(10160, width / 8, height / 4);
      return width * height - cut ** 2 - (Math.PI * hole ** 2) / 4;
    }
    case "banner": {
      const { width, height, tail } = shape;
      const [length, breadth] = tail === "down" ? [height, width] : [width, height];
      const notch = shape.notch ?? Math.min(breadth / 2, length / 3);
      return width * height - ((tail === "both" ? 2 : 1) * breadth * notch) / 2;
    }
    case "scalloped-circle":
      return lobedArea(shape.diameter, shape.depth, scallopsOf(shape)?.count as number);
    case "scalloped-oval":
      return scallopedOvalArea(shape.width, shape.height, shape.depth, scallopsOf(shape)?.count as number);
    case "scalloped-square":
      return scallopedArea(shape.side, shape.side, shape.depth, scallopsOf(shape) as Scallops);
    case "scalloped-rectangle":
      return scallopedArea(shape.width, shape.height, shape.depth, scallopsOf(shape) as Scallops);
    case "frame":
      return idealArea(shape.outer) - idealArea(shape.window);
  }
}

/** What four round or hollow corners take off. */
function cornersOf(shape: Extract<Shape, { readonly shape: "square" | "rectangle" }>): number {
  const shorter = shape.shape === "square" ? shape.side : Math.min(shape.width, shape.height);
  const corners = shape.corners ?? (shape.radius === undefined ? "sharp" : "round");
  const radius = shape.radius ?? Math.min(10160, shorter / 4);
  if (corners === "sharp") return 0;
  return (corners === "round" ? 4 - Math.PI : Math.PI) * radius ** 2;
}

function starDepth(depth: number | undefined, points: number, radius: number): number {
  // The pentagram's notches lie at cos 72 / cos 36 of the radius, the hexagram's at 1 / sqrt 3.
  const inner = points < 6 ? Math.cos((2 * Math.PI) / 5) / Math.cos(Math.PI / 5) : 1 / Math.sqrt(3);
  return depth ?? radius * (1 - inner);
}

/**
 * n circles of radius rho = R sin(pi / n), middles on a circle of radius R: n R^2 sin(2 pi / n) / 2 + n rho^2 (pi + 2 pi / n) / 2.
 * Shallower ones by the polygon of the valleys and n segments.
 */
function lobedArea(diameter: number, depth: number | undefined, count: number): number {
  const turn = (2 * Math.PI) / count;
  const sine = Math.sin(turn / 2);
  const middles = diameter / 2 / (1 + sine);
  const lobe = middles * sine;
  if (depth === undefined || depth >= (diameter / 2) * sine)
    return (count / 2) * (middles ** 2 * Math.sin(turn) + lobe ** 2 * (Math.PI + turn));
  const inRadius = diameter / 2 - depth;
  const pitch = 2 * inRadius * Math.tan(turn / 2);
  return count * ((inRadius * pitch) / 2 + segment(pitch, depth));
}

/**
 * All scallops have the depth of half circles over the narrower of the two pitches, or the one given, and those at the corners
 * the radius of the narrower ones, three quarters of a pitch at most.
 */
function scallopedArea(
  width: number,
  height: number,
  wished: number | undefined,
  { rows }: Scallops,
): number {
  const [across, down] = rows.map(({ count }) => count) as [number, number];
  const depthFor = (pitch: number) => Math.min(wished ?? pitch, pitch / 2);
  const endFor = (pitch: number) => {
    const depth = depthFor(pitch);
    const radius = Math.min((pitch ** 2 / 4 + depth ** 2) / (2 * depth), 0.75 * pitch);
    return { depth, radius, end: radius + Math.sqrt(radius ** 2 - (radius - depth) ** 2) };
  };
  const pitchFor = (length: number, count: number) =>
    zero((pitch) => count * pitch + 2 * endFor(pitch).end - length, 1, length / count);
  const { depth, radius, end } = endFor(Math.min(pitchFor(width, across), pitchFor(height, down)));
  const beyond = Math.acos((radius - depth) / radius);
  const turn = Math.PI / 2 + 2 * beyond;
  return (
    (width - 2 * depth) * (height - 2 * depth) -
    2 * (end - depth) ** 2 +
    2 * across * segment((width - 2 * end) / across, depth) +
    2 * down * segment((height - 2 * end) / down, depth) +
    2 * radius ** 2 * (turn - Math.sin(turn))
  );
}

/**
 * Equal scallops on equal chords of an ellipse, one across each end of the axes, their tops in the box; half
 * circles, if not said otherwise.
 */
function scallopedOvalArea(width: number, height: number, wished: number | undefined, count: number): number {
  let [a, b] = [width / 2, height / 2];
  let area = 0;
  for (let round = 0; round < 9; round += 1) {
    const chordsFrom = (chord: number) => {
      let angle = Math.asin(chord / 2 / a);
      const points = [at(a, b, -angle), at(a, b, angle)];
      for (let number = 1; number < count / 4; number += 1) {
        const from = at(a, b, angle);
        angle = zero((next) => Math.hypot(...less(at(a, b, next), from)) - chord, angle, angle + 1.2);
        points.push(at(a, b, angle));
      }
      return { points, angle };
    };
    const chord = zero(
      (length) => chordsFrom(length).angle + Math.asin(Math.min(1, length / 2 / b)) - Math.PI / 2,
      1,
      Math.min(a, b) * 0.9,
    );
    const { points } = chordsFrom(chord);
    const depth = wished ?? chord / 2;
    // The polygon of the valleys by triangles from the middle: a quarter has one chord of two halves and whole ones.
    const triangles = points
      .slice(1)
      .reduce((sum, point, index) => sum + cross(points[index] as Pair, point) * (index === 0 ? 0.5 : 1), 0);
    const end = points[points.length - 1] as Pair;
    const last = cross(end, [end[0], -end[1]]) * 0.5;
    area = 2 * (triangles + last) + count * segment(chord, depth);
    [a, b] = [
      (width / 2 - depth) / Math.sqrt(1 - (chord / 2 / b) ** 2),
      (height / 2 - depth) / Math.sqrt(1 - (chord / 2 / a) ** 2),
    ];
  }
  return area;
}

type Pair = readonly [x: number, y: number];

/** Of the ellipse, by the angle from its top. */
function at(a: number, b: number, angle: number): Pair {
  return [a * Math.sin(angle), -b * Math.cos(angle)];
}

function less(one: Pair, other: Pair): Pair {
  return [one[0] - other[0], one[1] - other[1]];
}

function cross(one: Pair, other: Pair): number {
  return one[0] * other[1] - one[1] * other[0];
}

/**
 * The lobe of radius 0.52 a at the top and the side of the box; a side that leaves it 0.36 radians, or half the way, before a
 * straight one would, and goes on as a circle with the same tangent to the point. Found here by trying radii; summed up point by
 * point.
 */
function heartArea(width: number, height: number): number {
  const half = width / 2;
  const lobe = 0.52 * half;
  const [x, y] = [half - lobe, lobe];
  // From the point, the tangent to the lobe rises at this angle over the level; its radius stands upright on it.
  const toMiddle = Math.atan2(height - y, x);
  const straight = Math.PI / 2 - (toMiddle - Math.asin(lobe / Math.hypot(x, height - y)));
  const leave = straight - Math.min(0.36, straight / 2);
  const radius = zero(
    (r) => r - Math.hypot(x - (r - lobe) * Math.cos(leave), y - (r - lobe) * Math.sin(leave) - height),
    lobe,
    1e9,
  );
  const side: Pair = [x - (radius - lobe) * Math.cos(leave), y - (radius - lobe) * Math.sin(leave)];
  const arrive = Math.atan2(height - side[1], -side[0]);
  const cleft = Math.atan2(-Math.sqrt(lobe ** 2 - x ** 2), -x);
  const steps = 2_000;
  const points: Pair[] = [[0, height]];
  for (let step = 0; step <= steps; step += 1) {
    const angle = arrive + ((leave - arrive) * step) / steps;
    points.push([side[0] + radius * Math.cos(angle), side[1] + radius * Math.sin(angle)]);
  }
  for (let step = 0; step <= steps; step += 1) {
    const angle = leave + ((cleft - leave) * step) / steps;
    points.push([x + lobe * Math.cos(angle), y + lobe * Math.sin(angle)]);
  }
  let twice = 0;
  for (const [index, point] of points.entries())
    twice += cross(point, points[(index + 1) % points.length] as Pair);
  return Math.abs(twice);
}

/** Where a rising function is nought, by halving. */
function zero(of: (value: number) => number, least: number, most: number): number {
  let [low, high] = [least, most];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (of(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
