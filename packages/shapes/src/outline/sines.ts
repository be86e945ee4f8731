/**
 * Sines, cosines and angles from + - * / and square roots alone, so that every engine gives the same bits.
 *
 * Source: Taylor's series about 0 after the angle is brought into an eighth of a turn, and for the arc tangent Euler's
 * halving, atan t = 2 atan(t / (1 + sqrt(1 + t^2))), twice before its series. Error: below 1e-15 for angles of a few
 * turns, far below a tick at the 10 m of the longest length.
 */

/** Radians in a full turn. */
export const TURN = 2 * Math.PI;

/** The cosine and the sine of an angle in radians. */
export function cosineAndSine(angle: number): readonly [cosine: number, sine: number] {
  const quarter = Math.round(angle / (Math.PI / 2));
  const rest = angle - quarter * (Math.PI / 2);
  const [c, s] = nearZero(rest);
  switch (((quarter % 4) + 4) % 4) {
    case 0:
      return [c, s];
    case 1:
      return [0 - s, c];
    case 2:
      return [0 - c, 0 - s];
    default:
      return [s, 0 - c];
  }
}

/** The sine of an angle in radians. */
export function sine(angle: number): number {
  return cosineAndSine(angle)[1];
}

/** The cosine of an angle in radians. */
export function cosine(angle: number): number {
  return cosineAndSine(angle)[0];
}

function nearZero(angle: number): readonly [cosine: number, sine: number] {
  const square = angle * angle;
  let s = 1;
  let c = 1;
  for (let n = 18; n > 0; n -= 2) {
    c = 1 - (square / (n * (n - 1))) * c;
    s = 1 - (square / (n * (n + 1))) * s;
  }
  return [c, angle * s];
}

/** The angle of the direction (x, y) in radians, more than minus and at most plus half a turn; 0 for no direction. */
export function angleOf(x: number, y: number): number {
  if (y === 0) return x < 0 ? Math.PI : 0;
  if (Math.abs(y) > Math.abs(x)) return (y > 0 ? Math.PI / 2 : -Math.PI / 2) - arcTangent(x / y);
  const angle = arcTangent(y / x);
  if (x > 0) return angle;
  return y > 0 ? angle + Math.PI : angle - Math.PI;
}

/** Of a number from -1 to 1. */
function arcTangent(tangent: number): number {
  let t = tangent;
  for (let halvings = 0; halvings < 2; halvings += 1) t = t / (1 + Math.sqrt(1 + t * t));
  const square = t * t;
  let sum = 0;
  for (let n = 27; n > 0; n -= 2) sum = 1 / n - square * sum;
  return 4 * t * sum;
}
