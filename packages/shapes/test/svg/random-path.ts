import fc from "fast-check";

const anyNumber = fc.oneof(
  fc.integer({ min: -90, max: 90 }),
  fc.integer({ min: -9000, max: 9000 }).map((n) => n / 100),
);
const numbers = (count: number) => fc.array(anyNumber, { minLength: count, maxLength: count });
// Radii that are too small grow with their ratio; up to here they stay within 10 m.
const anyRadius = fc.integer({ min: 5, max: 90 });
/** A command of any kind but a move and a close, its numbers up to 90 either way. */
export const anyCommand = fc.oneof(
  ...(["l2", "h1", "v1", "c6", "s4", "q4", "t2"] as const).map((kind) =>
    fc
      .tuple(fc.boolean(), numbers(Number(kind.charAt(1))))
      .map(
        ([isRelative, list]) =>
          `${isRelative ? kind.charAt(0) : kind.charAt(0).toUpperCase()}${list.join(" ")}`,
      ),
  ),
  fc
    .tuple(
      fc.boolean(),
      fc.tuple(anyRadius, anyRadius, anyNumber),
      fc.constantFrom("00", "01", "10", "11"),
      numbers(2),
    )
    .map(
      ([isRelative, radii, flags, to]) =>
        `${isRelative ? "a" : "A"}${radii.join(" ")} ${flags}${to.join(" ")}`,
    ),
);
