// The papers of a project made at random: a few of each material, some with patterns, backs, offcuts and trims.

import type { Draw, FileObject, FileValue } from "./random-draw.js";

/** Papers as the file has them, and choices among them. */
export interface RandomPapers {
  readonly file: FileObject;
  /** A paper without a pattern whose grain is known, or that has none, for what requires its grain; `null` if none is. */
  readonly steady: string | null;
  /** A choice for a layer. */
  readonly choice: () => FileValue;
  /** A choice for a base, mostly of the large cardstocks. */
  readonly base: () => FileValue;
}

const SHEETS = {
  in: ["us-letter", "us-letter", "8 1/2 x 11", "12 x 12"],
  mm: ["iso-a4", "iso-a4", "210 x 297", "305 x 305"],
};
const PADS = { in: ["6 x 6", "12 x 12", "8 x 8"], mm: ["152 x 152", "300 x 300", "200 x 200"] };

/** Two cardstocks, the second with a back now and then, and up to two more papers. */
export function randomPapers(draw: Draw): RandomPapers {
  const file: Record<string, FileValue> = {};
  const faces: string[] = [];
  const nightGrain = draw.one(["long", "short", "width", "height", "none", "unknown", null]);
  // A square sheet has no longer side.
  const squares = nightGrain === "long" || nightGrain === "short" ? 0 : 1;
  file.night = {
    ...sheet(draw, "cardstock", squares),
    ...(nightGrain === null ? {} : { grain: nightGrain }),
    ...stock(draw, 4),
  };
  faces.push("night");
  const creamBack = draw.sometimes(30);
  const pattern = draw.one(["none", "none", "two-way", "one-way"]);
  file.cream = {
    ...sheet(draw, draw.one(["cardstock", "paper"])),
    ...(draw.sometimes(50) ? { grain: draw.one(["width", "height", "none"]) } : {}),
    ...(pattern === "none" ? {} : { pattern }),
    ...stock(draw, 4),
    ...(creamBack ? { back: back(draw) } : {}),
  };
  faces.push("cream", ...(creamBack ? ["cream.back"] : []));
  if (draw.sometimes(50)) {
    file.copper = { ...sheet(draw, "glitter"), ...stock(draw, 2) };
    faces.push("copper");
  }
  const pads: string[] = [];
  if (draw.sometimes(60)) {
    const designs: Record<string, FileValue> = {};
    for (const key of ["dots", "comets", "moons"].slice(0, draw.whole(1, 3))) {
      const hasBack = draw.sometimes(30);
      designs[key] = draw.sometimes(40)
        ? draw.whole(1, 8)
        : {
            count: draw.whole(0, 8),
            pattern: draw.one(["none", "two-way", "one-way"]),
            ...(hasBack ? { back: back(draw) } : {}),
            ...(draw.sometimes(20) ? { cost: draw.one([0.2, "0.1250"]) } : {}),
          };
      faces.push(`stars.${key}`);
      if (typeof designs[key] !== "number" && hasBack) faces.push(`stars.${key}.back`);
    }
    file.stars = { pad: draw.one(PADS[draw.unit]), designs };
    pads.push("stars");
  }

  const single = () => draw.one([...faces, ...pads]);
  const isWeighed = "weight" in file.night;
  const any = () =>
    draw.one([
      "any cardstock",
      "any plain cardstock",
      "any paper",
      isWeighed ? "any cardstock of at least 65 lb cover" : "any plain paper",
    ]);
  const choice = () => {
    if (draw.sometimes(10)) return any();
    if (!draw.sometimes(20)) return single();
    return [...new Set([draw.one(faces), draw.one(faces), draw.one(faces)])];
  };
  const steady = nightGrain === "unknown" || nightGrain === null ? null : "night";
  const base = (): FileValue => {
    if (steady !== null && draw.sometimes(20)) return { paper: steady, grain: "require" };
    const paper = draw.sometimes(85) ? draw.one(["night", "cream"]) : choice();
    return draw.sometimes(20) ? { paper, grain: draw.one(["prefer", "ignore"]) } : paper;
  };
  return { file, steady, choice, base };
}

function sheet(draw: Draw, material: string, squares = 1): FileObject {
  const trim = () => draw.length(draw.whole(1, 4));
  return {
    [material]: draw.one(SHEETS[draw.unit].slice(0, 3 + squares)),
    ...(draw.sometimes(20) ? { trim: draw.sometimes(50) ? trim() : { left: trim(), top: trim() } } : {}),
    ...(draw.sometimes(15)
      ? { pack: draw.sometimes(50) ? draw.whole(1, 50) : { sheets: draw.whole(1, 50), cost: 8.99 } }
      : {}),
    ...(draw.sometimes(10) ? { weight: draw.one(["80 lb cover", "216 gsm"]), thickness: "0.3 mm" } : {}),
  };
}

function stock(draw: Draw, offcuts: number): FileObject {
  const inch = draw.unit === "in" ? 16 : 50;
  const offcut = () => draw.size(draw.whole(inch, 6 * inch), draw.whole(inch, 6 * inch));
  return {
    ...(draw.sometimes(60) ? { count: draw.sometimes(20) ? "as needed" : draw.whole(0, 30) } : {}),
    ...(draw.sometimes(40) ? { cost: draw.one([0.35, "0.5", 2]) } : {}),
    ...(draw.sometimes(20)
      ? {
          offcuts: Array.from({ length: draw.whole(1, offcuts) }, () =>
            draw.sometimes(50) ? offcut() : { size: offcut(), count: draw.whole(1, 3) },
          ),
        }
      : {}),
  };
}

function back(draw: Draw): FileObject {
  return { pattern: draw.one(["none", "two-way", "one-way"]) };
}
