// Trimmers, dies and rates made at random, in the shape of a project file.

import type { Draw, FileObject, FileValue } from "./random-draw.js";
import type { RandomPapers } from "./random-papers.js";

/** What a cutting tool can do. */
export function randomTrimmer(draw: Draw): FileValue {
  const inch = draw.unit === "in" ? 16 : 50;
  return {
    ...(draw.sometimes(60) ? { cuts: draw.one(["edge-to-edge", "strips"]) } : {}),
    ...(draw.sometimes(20) ? { kerf: draw.length(1) } : {}),
    // As long as the longest sheet: what cannot be cut for its length is a matter of its own.
    ...(draw.sometimes(30) ? { "longest-cut": draw.unit === "in" ? 12 : "305 mm" } : {}),
    ...(draw.sometimes(30) ? { "narrowest-hold": draw.length(draw.whole(inch, 2 * inch)) } : {}),
    ...(draw.sometimes(30) ? { "smallest-offcut": draw.size(2 * inch, draw.whole(inch, 3 * inch)) } : {}),
  };
}

/** What presses dies. */
export function randomDieMachine(draw: Draw): FileValue {
  return {
    ...(draw.sometimes(60) ? { platform: draw.one(["small", "large", "6 x 9", "220 x 300 mm"]) } : {}),
    ...(draw.sometimes(40) ? { margin: draw.length(draw.whole(0, 6)) } : {}),
    ...(draw.sometimes(30) ? { "narrowest-bridge": draw.length(1) } : {}),
    ...(draw.sometimes(30) ? { strips: draw.sometimes(50) } : {}),
  };
}

/** A layer as large as what a new die cuts. */
export function randomDieCut(
  {
    draw,
    papers,
    dies,
  }: { readonly draw: Draw; readonly papers: RandomPapers; readonly dies: Map<string, FileValue> },
  { size = "", ...place }: FileObject,
): FileObject {
  const name = `${draw.one(["star", "moon no.", "tag"])} ${dies.size + 1}`;
  dies.set(name, draw.sometimes(40) ? size : { size, margin: draw.length(draw.whole(0, 4)) });
  return { die: name, paper: papers.choice(), ...place };
}

/** What work costs. */
export function randomRates(draw: Draw): FileValue {
  return {
    ...(draw.sometimes(60) ? { currency: draw.one(["$", "kr."]) } : {}),
    ...(draw.sometimes(80) ? { hour: draw.one([18.5, 12, "20.05"]) } : {}),
    ...(draw.sometimes(80) ? { "minutes-per-card": draw.one([12, 7.5]) } : {}),
    ...(draw.sometimes(30) ? { ribbons: { "copper ribbon": draw.one([1.2, "0.85"]) } } : {}),
    ...(draw.sometimes(30) ? { consumables: { adhesive: draw.one([0.1, "0.055"]), ink: 0.02 } } : {}),
    ...(draw.sometimes(30) ? { "price-factor": draw.one([2, 2.5]) } : {}),
  };
}
