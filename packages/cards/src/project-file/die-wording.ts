import type { Wording } from "./wording.js";

/** The shapes by their names in the catalogue. A frame is a shape with a window. */
export const SHAPES = [
  "circle",
  "oval",
  "square",
  "rectangle",
  "scalloped-circle",
  "scalloped-oval",
  "scalloped-square",
  "scalloped-rectangle",
  "polygon",
  "star",
  "heart",
  "arch",
  "half-circle",
  "leaf",
  "drop",
  "tag",
  "banner",
] as const;
const SHAPES_MEANT = {
  round: "circle",
  disc: "circle",
  disk: "circle",
  ellipse: "oval",
  triangle: "polygon",
  pentagon: "polygon",
  hexagon: "polygon",
  octagon: "polygon",
  scallop: "scalloped-circle",
  scallops: "scalloped-circle",
  flower: "scalloped-circle",
  semicircle: "half-circle",
  teardrop: "drop",
  label: "tag",
  door: "arch",
} as const;

/** What is said of dies, shapes and what is cut to them. */
export const DIE_WORDINGS = {
  dies: { code: "wrong-type", expected: "dies by name, such as star: 3 x 3", noun: "the dies" },
  die: {
    code: "not-a-size",
    expected: "the size of what the die cuts, such as 3 x 3, or { shape: circle, size: 3 }",
  },
  dieKeys: { code: "wrong-type", expected: "{ shape: circle, size: 3 }", noun: "a die" },
  sizes: {
    code: "not-a-size",
    expected: "a list of sizes, such as [2, 2 1/4, 2 1/2], or { from: 1, to: 4, step: 1/4 }",
  },
  sizeRange: { code: "wrong-type", expected: "{ from: 1, to: 4, step: 1/4 }", noun: "the sizes of a die" },
  dieMachine: {
    code: "wrong-type",
    expected: "the keys of the die machine, such as { platform: large }",
    noun: "the die machine",
  },
  platform: {
    code: "not-a-size",
    expected: "small, large or the size of the plates, such as 6 x 9",
    words: ["small", "large"],
  },
  dieStrips: { code: "not-a-word", expected: "true or false", meant: { yes: "true", no: "false" } },
  shape: {
    code: "not-a-word",
    expected: "the name of a shape, such as circle, star or heart, or { kind: star, points: 6 }",
    words: SHAPES,
    meant: SHAPES_MEANT,
  },
  shapeKind: {
    code: "not-a-word",
    expected: `a shape: ${SHAPES.slice(0, -1).join(", ")} or ${SHAPES.at(-1)}`,
    words: SHAPES,
    meant: SHAPES_MEANT,
  },
  shapeKeys: { code: "wrong-type", expected: "{ kind: star, points: 6 }", noun: "a shape" },
  shapeParts: { code: "not-a-count", expected: "a whole number, such as 6" },
  shapeUp: { code: "not-a-word", expected: "point or flat", meant: { corner: "point", side: "flat" } },
  shapeCorners: {
    code: "not-a-word",
    expected: "sharp, round or ticket",
    meant: { rounded: "round", square: "sharp", hollow: "ticket" },
  },
  shapeTail: { code: "not-a-word", expected: "right, left, both or down", meant: { bottom: "down" } },
  shapeSize: {
    code: "not-a-size",
    expected:
      "a size: one length for what is round or as wide as high, such as 3, else width x height, such as 3 x 4",
  },
  shapeWindow: { code: "wrong-type", expected: "{ shape: circle, size: 2 }", noun: "a window" },
  stitched: {
    code: "not-a-length",
    expected: "true, how far from the edge, such as 1/8, or { inset: 1/8, marks: holes }",
  },
  stitchedKeys: {
    code: "wrong-type",
    expected: "{ inset: 1/8, marks: holes }",
    noun: "a line of stitches",
  },
  stitchMarks: {
    code: "not-a-word",
    expected: "dashes or holes",
    meant: { sewn: "dashes", pricked: "holes", dash: "dashes", hole: "holes" },
  },
  perInch: { code: "not-a-count", expected: "a number of stitches to the inch above 0, such as 8" },
  cutOff: {
    code: "wrong-type",
    expected: "sides, such as { bottom: half } or { bottom: 1/2 }",
    noun: "what is cut straight off",
  },
  cutOffSide: { code: "not-a-length", expected: "half, or a length, such as 1/2", words: ["half"] },
  shadow: {
    code: "wrong-type",
    expected: "{ paper: copper, border: 1/8 }",
    noun: "a shadow",
  },
  dieName: { code: "not-a-word", expected: "the name of a die, such as star" },
} as const satisfies Readonly<Record<string, Wording>>;
