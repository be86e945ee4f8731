import { inches } from "@sheetwright/measure";
import { type BuiltCard, buildCard, type LayerNote } from "./build.js";

const inch = inches;
const at = (x: number, y: number, width: number, height: number) =>
  [inch(x), inch(y), inch(width), inch(height)] as const;
const gate = buildCard({
  number: 11,
  name: "Garden gate",
  format: "us-a2",
  front: [inch(4.25), inch(5.5)],
  fold: "gate",
  base: "night",
  guests: 12,
  samples: 1,
  layers: [
    { purpose: "panel", paper: "stars.dots", at: at(0.125, 0.125, 1.875, 5.25), surface: "left-door" },
    { purpose: "panel", paper: "stars.dots", at: at(0.125, 0.125, 1.875, 5.25), surface: "right-door" },
    { purpose: "medallion mat", paper: "copper", at: at(0.875, 1.5, 2.5, 2.5) },
    { purpose: "medallion", paper: "cream", at: at(1, 1.625, 2.25, 2.25), on: 2, text: "Open slowly" },
    { purpose: "mat", paper: "cream", at: at(0.25, 0.25, 3.75, 5), surface: "inside" },
    {
      purpose: "sentiment",
      paper: "ember",
      at: at(0.75, 2.25, 2.75, 1),
      on: 4,
      text: "The lanterns are lit",
      surface: "inside",
    },
    { purpose: "label", paper: "cream", at: at(1.125, 4.5, 2, 0.5), surface: "back" },
  ],
});

const zFold = buildCard({
  number: 12,
  name: "Night and day",
  format: "us-a2",
  front: [inch(4.25), inch(5.5)],
  fold: "z",
  base: "cream",
  guests: 12,
  layers: [
    { purpose: "strip", paper: "stars.comets", at: at(0.125, 0.125, 1.875, 5.25), surface: "flap" },
    { purpose: "mat", paper: "copper", at: at(0.625, 1.25, 3, 3) },
    { purpose: "panel", paper: "night", at: at(0.75, 1.375, 2.75, 2.75), on: 1 },
    { purpose: "sentiment", paper: "cream", at: at(1, 2.5, 2.25, 0.625), on: 2, text: "Day breaks" },
    { purpose: "panel", paper: "stars.plain-sky", at: at(2.25, 0.125, 1.875, 5.25), surface: "inside" },
  ],
});

const tri = buildCard({
  number: 13,
  name: "Three walks",
  format: "us-a2",
  front: [inch(4.25), inch(5.5)],
  fold: {
    fold: "tri",
    along: "width",
    panels: [inch(4.125), inch(4.25), inch(4.25)],
    folds: ["mountain", "mountain"],
  },
  base: "night",
  guests: 12,
  layers: [
    { purpose: "mat", paper: "copper", at: at(0.125, 0.125, 4, 5.25) },
    { purpose: "panel", paper: "stars.comets", at: at(0.25, 0.25, 3.75, 5), on: 0 },
    { purpose: "panel", paper: "cream", at: at(0.25, 0.25, 3.75, 5), surface: "inside" },
    { purpose: "panel", paper: "cream", at: at(0.25, 0.25, 3.75, 5), surface: "inside-front" },
    { purpose: "panel", paper: "cream", at: at(0.25, 0.25, 3.625, 5), surface: "inside-flap" },
    {
      purpose: "sentiment",
      paper: "ember",
      at: at(0.5, 2.375, 3, 0.75),
      text: "Walk with us",
      surface: "flap",
    },
  ],
});

const accordion = buildCard({
  number: 14,
  name: "Lantern row",
  format: "sq-3",
  front: [inch(3), inch(3)],
  fold: {
    fold: "accordion",
    along: "width",
    panels: [inch(3), inch(3), inch(3), inch(3), inch(3)],
    folds: ["valley", "mountain", "valley", "mountain"],
  },
  base: "cream",
  guests: 24,
  layers: [
    { purpose: "panel", paper: "night", at: at(0.25, 0.25, 2.5, 2.5) },
    ...([1, 2, 3, 4, 5] as const).map(
      (page): LayerNote => ({
        purpose: "lantern",
        paper: page % 2 === 0 ? "copper" : "ember",
        at: at(1, 0.5, 1, 1 + page / 4),
        surface: `page-${page}`,
      }),
    ),
  ],
});

const easel = buildCard({
  number: 15,
  name: "Standing moon",
  format: "us-a2",
  front: [inch(4.25), inch(5.5)],
  fold: "easel",
  base: "night",
  guests: 12,
  layers: [
    { purpose: "mat", paper: "cream", at: at(0, 0, 4.25, 5.5) },
    { purpose: "panel", paper: "stars.dots", at: at(0.125, 0.125, 4, 5.25), on: 0 },
    { purpose: "moon", paper: "copper", at: at(1.125, 0.75, 2, 2), on: 1 },
    { purpose: "mat", paper: "cream", at: at(0.125, 0.125, 4, 5.25), surface: "inside" },
    {
      purpose: "sentiment",
      paper: "ember",
      at: at(0.5, 4, 3.25, 0.75),
      on: 3,
      text: "Good night",
      surface: "inside",
    },
  ],
});

const shutter = buildCard({
  number: 16,
  name: "Window shutters",
  front: [inch(3.5), inch(5.5)],
  fold: "shutter",
  base: "ember",
  guests: 12,
  layers: [
    { purpose: "strip", paper: "cream", at: at(0.125, 0.25, 1.5, 1) },
    { purpose: "panel", paper: "stars.plain-sky", at: at(0.25, 1.75, 3, 2), surface: "page-3" },
    {
      purpose: "sentiment",
      paper: "cream",
      at: at(0.5, 2.375, 2.5, 0.75),
      on: 1,
      text: "Look in",
      surface: "page-3",
    },
  ],
});

const insides = buildCard({
  number: 17,
  name: "Letter inside",
  format: "us-a7",
  front: [inch(5), inch(7)],
  fold: "side",
  base: "night",
  guests: 12,
  samples: 1,
  layers: [
    { purpose: "mat", paper: "copper", at: at(0.25, 0.25, 4.5, 6.5) },
    { purpose: "panel", paper: "stars.comets", at: at(0.375, 0.375, 4.25, 6.25), on: 0 },
    { purpose: "insert", paper: "cream", at: at(0.25, 0.25, 4.5, 6.5), surface: "inside" },
    { purpose: "band", paper: "stars.dots", at: at(0.5, 0.5, 4, 1), on: 2, block: "head", surface: "inside" },
    { purpose: "band", paper: "ember", at: at(0.5, 1.5, 4, 0.5), on: 2, block: "head", surface: "inside" },
    { purpose: "pocket", paper: "stars.plain-sky", at: at(0.25, 3.75, 4.5, 3), surface: "inside-front" },
    {
      purpose: "label",
      paper: "cream",
      at: at(1.25, 5.75, 2.5, 0.75),
      text: "made by hand",
      surface: "back",
    },
  ],
});

/** Cards of many folds, with layers on all of their surfaces. */
export const foldedExamples: readonly BuiltCard[] = [gate, zFold, tri, accordion, easel, shutter, insides];
