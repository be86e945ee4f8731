import type { Point } from "../outline/point.js";
import { angleOf, cosineAndSine, TURN } from "../outline/sines.js";
import { cosineAndSineOfDegrees } from "./matrix.js";
import type { PathCommand } from "./path-data.js";

/**
 * An arc of path data as a curve over 0 to 1, and how far it turns, in radians; `null` where it is a straight line.
 *
 * Source: SVG 2, appendix B.2.4 and B.2.5 (conversion from end points to centre, radii that are too small scaled up).
 *
 * @internal
 */
export function ellipticArc(
  from: Point,
  { radiusX, radiusY, turned, isLarge, isSweeping, to }: Extract<PathCommand, { kind: "arc" }>,
): { readonly curve: (part: number) => Point; readonly turn: number } | null {
  if (radiusX === 0 || radiusY === 0) return null;
  const [c, s] = cosineAndSineOfDegrees(turned);
  // Half the chord in the ellipse's own axes, and in those of the unit circle that it is stretched from.
  const halfX = (from.x - to.x) / 2;
  const halfY = (from.y - to.y) / 2;
  const x = c * halfX + s * halfY;
  const y = -s * halfX + c * halfY;
  const reach = Math.sqrt((x / radiusX) * (x / radiusX) + (y / radiusY) * (y / radiusY));
  const grown = Math.max(1, reach);
  const rx = radiusX * grown;
  const ry = radiusY * grown;
  const u = x / rx;
  const v = y / ry;
  const square = u * u + v * v;
  // How far the unit circle's centre lies from the middle of the chord, in half chords.
  const off = (isLarge === isSweeping ? -1 : 1) * Math.sqrt(Math.max(0, 1 / square - 1));
  const centreU = off * v;
  const centreV = -off * u;
  const start = angleOf(u - centreU, v - centreV);
  let turn = angleOf(-u - centreU, -v - centreV) - start;
  if (isSweeping && turn < 0) turn += TURN;
  if (!isSweeping && turn > 0) turn -= TURN;
  const middleX = (from.x + to.x) / 2;
  const middleY = (from.y + to.y) / 2;
  const curve = (part: number): Point => {
    // The ends are exact, that neighbours meet.
    if (part === 0) return from;
    if (part === 1) return to;
    const [cosine, sine] = cosineAndSine(start + turn * part);
    const alongX = rx * (cosine + centreU);
    const alongY = ry * (sine + centreV);
    return { x: middleX + c * alongX - s * alongY, y: middleY + s * alongX + c * alongY };
  };
  return { curve, turn };
}
