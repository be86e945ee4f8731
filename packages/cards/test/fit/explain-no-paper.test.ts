import { inches, millimetres, type Size } from "@sheetwright/measure";
import { describe, expect, test } from "vitest";
import { indexFaces } from "../../src/expand/face-index.js";
import { workOutProject } from "../../src/expand/work-out-project.js";
import { findHelp, type Help, widenOnSurfaces } from "../../src/fit/find-help.js";
import { withJoin } from "../../src/fit/help-by-join.js";
import { nearestWay, waysToCut } from "../../src/fit/ways-to-cut.js";
import {
  type Design,
  expandProject,
  explainNoPaper,
  flatsOf,
  type NoPaper,
  type Paper,
  type Piece,
  type Project,
  type SurfaceName,
} from "../../src/index.js";
import { checkProjects } from "../random-expansion.js";
import {
  byBorder,
  bySize,
  card,
  choice,
  evenly,
  face,
  mat,
  panel,
  paper,
  paperDesign,
  project,
} from "../small-project.js";

const night = paper("night", inches(8.5), inches(11), { grain: "height" });

function explained(whole: Project, id: string): NoPaper | null {
  const piece = expandProject(whole).pieces.find((candidate) => candidate.id === id);
  if (piece === undefined) throw new Error(`No piece is called ${id}.`);
  return explainNoPaper(whole, piece);
}

function patterned(id: string, pattern: "two-way" | "one-way", size: Size, more: Partial<Paper> = {}): Paper {
  const designs = [paperDesign(id, { front: face(id, { pattern }) })];
  return paper(id, size.width, size.height, { designs, ...more });
}

describe("a piece that some paper can give", () => {
  test("from the sheet, upright or turned", () => {
    const design = card(inches(5), inches(7), [panel(byBorder(0), { paper: choice("night") })]);
    expect(explained(project([design], { papers: [night] }), "1a")).toBeNull();
    expect(explained(project([design], { papers: [night] }), "1b")).toBeNull();
  });

  test("from an offcut only, from one of several papers, in one of two forms", () => {
    const offcuts = [{ width: inches(5), height: inches(7), count: 1 }];
    const pad = paper("pad", inches(4), inches(4), { designs: [paperDesign("pad", { offcuts })] });
    const design = card(inches(5), inches(7), [
      panel(byBorder(0), { paper: choice("pad") }),
      panel(bySize(inches(4.5), inches(6)), { paper: choice("small", "night") }),
    ]);
    const small = paper("small", inches(3), inches(3));
    const whole = project([design], { papers: [night, pad, small] });
    expect(explained(whole, "1b")).toBeNull();
    expect(explained(whole, "1c")).toBeNull();

    const front = { width: inches(4.25), height: inches(5.5) };
    const either = card(front.width, front.height, [], {
      flats: flatsOf({ front, fold: "either" }),
      base: choice("strip"),
    });
    const strip = paper("strip", inches(4.25), inches(11));
    expect(explained(project([either], { papers: [strip] }), "1a")).toBeNull();
  });

  test("even where no sheet of it is left: that is a matter of stock", () => {
    const none = paper("night", inches(8.5), inches(11), { designs: [paperDesign("night", { count: 0 })] });
    expect(explained(project([card(inches(5), inches(7), [])], { papers: [none] }), "1a")).toBeNull();
  });
});

describe("a piece that no paper can give", () => {
  test("is not sent to paper that is used up, but to another face of its own", () => {
    const back = face("comets.back", { name: "Comets back" });
    const comets = paper("comets", inches(6), inches(4), {
      designs: [paperDesign("comets", { front: face("comets", { pattern: "one-way" }), back })],
    });
    const empty = paper("empty", inches(8.5), inches(11), { designs: [paperDesign("empty", { count: 0 })] });
    const design = card(
      inches(5),
      inches(7),
      [panel(bySize(inches(4), inches(6)), { paper: choice("comets") })],
      {
        base: choice("empty"),
      },
    );
    expect(explained(project([design], { papers: [comets, empty] }), "1b")?.help).toEqual([
      "Turned a quarter it fits comets, if the pattern of comets (one-way) may lie on its side.",
      "Cut from Comets back it fits.",
      "Made up of 2 parts it fits: write join: { parts: 2, cover: comets, width: 1/2 }.",
      "A sheet of at least 4 x 6 in would do.",
    ]);
  });

  test("says which paper comes nearest, by how much, and what would help", () => {
    const design = card(inches(5), inches(7), [
      mat(byBorder(inches(0.125)), { paper: choice("dots", "tiles") }),
    ]);
    const dots = paper("dots", inches(6), inches(6));
    const tiles = paper("tiles", inches(4), inches(4));
    expect(explained(project([design], { papers: [night, tiles, dots] }), "1b")).toEqual({
      piece: "1b",
      label: "1b mat",
      path: "cards[0].front[0]",
      width: inches(4.75),
      height: inches(6.75),
      design: "dots",
      usable: { width: inches(6), height: inches(6) },
      over: { width: 0, height: inches(0.75) },
      turned: false,
      help: [
        "With a border of 1/2 in instead of 1/8 in it fits.",
        "Cut from night it fits.",
        "Made up of 2 parts it fits: write join: { parts: 2, cover: night, width: 1/2 }.",
        "Made up with ends of another paper it fits: write join: { ends: night, cover: night, width: 1/2 }.",
        "A sheet of at least 4 3/4 x 6 3/4 in would do.",
      ],
      message:
        "The 1b mat is 4 3/4 x 6 3/4 in, and none of its papers is large enough. Nearest comes dots, which gives 6 x 6 in: " +
        "it is 3/4 in too high. With a border of 1/2 in instead of 1/8 in it fits. Cut from night it fits. " +
        "Made up of 2 parts it fits: write join: { parts: 2, cover: night, width: 1/2 }. " +
        "Made up with ends of another paper it fits: write join: { ends: night, cover: night, width: 1/2 }. " +
        "A sheet of at least 4 3/4 x 6 3/4 in would do.",
    });
  });

  test("that would fit turned, but for the pattern", () => {
    const comets = patterned("comets", "one-way", { width: inches(6), height: inches(4) });
    const design = card(inches(5), inches(7), [
      panel(bySize(inches(4), inches(6)), { paper: choice("comets") }),
    ]);
    expect(explained(project([design], { papers: [night, comets] }), "1b")?.help).toEqual([
      "Turned a quarter it fits comets, if the pattern of comets (one-way) may lie on its side.",
      "Cut from night it fits.",
      "Made up of 2 parts it fits: write join: { parts: 2, cover: night, width: 1/2 }.",
      "Made up with ends of another paper it fits: write join: { ends: night, cover: night, width: 1/2 }.",
      "A sheet of at least 4 x 6 in would do.",
    ]);
  });

  test("that would fit turned, but for the grain that is required", () => {
    const grain = { along: "width", need: "require" } as const;
    const design = card(inches(9), inches(9), [
      panel(bySize(inches(8), inches(9)), { paper: choice("night"), grain }),
    ]);
    const found = explained(project([design], { papers: [night] }), "1b");
    expect(found).toMatchObject({ turned: true, over: { width: inches(0.5), height: 0 } });
    expect(found?.message).toBe(
      "The 1b panel is 8 x 9 in, and none of its papers is large enough. Nearest comes night, which gives 8 1/2 x 11 in: " +
        "turned a quarter, as 9 x 8 in, it is 1/2 in too wide. Turned a quarter it fits night, if the grain is preferred " +
        "and not required to run along one side. Made up of 2 parts it fits: write join: { parts: 2, cover: night, width: 1/2 }. " +
        "A sheet of at least 9 x 8 in with its grain along the side of " +
        "8 in would do.",
    );
  });

  test("that would fit with the other fold", () => {
    const front = { width: inches(4.25), height: inches(5.5) };
    const long = paper("night", inches(4.25), inches(11));
    const whole = (base: Partial<Design>) =>
      project([card(front.width, front.height, [], base)], { papers: [long] });
    expect(explained(whole({}), "1a")?.help).toEqual([
      "Folded at the top instead, from 4 1/4 x 11 in, it fits night.",
      "A sheet of at least 5 1/2 x 8 1/2 in would do.",
    ]);
  });

  test("that would fit with fewer panels of an accordion, unless something lies on those", () => {
    const front = { width: inches(3), height: inches(4) };
    const flats = flatsOf({ front, fold: { kind: "accordion", panels: 5 } });
    const accordion = (page: SurfaceName | null) => {
      const design = card(front.width, front.height, [], { flats });
      const layers = [panel(byBorder(inches(1)), { paper: choice("night") })];
      const surfaces = page === null ? [] : [{ name: page, path: "cards[0].elsewhere", layers }];
      return project([{ ...design, surfaces }], { papers: [night] });
    };
    const three = "With 3 panels, from 9 x 4 in, it fits night.";
    const sheet = "A sheet of at least 4 x 15 in would do.";
    expect(explained(accordion(null), "1a")?.help).toEqual([three, sheet]);
    expect(explained(accordion("page-3"), "1a")?.help).toEqual([three, sheet]);
    expect(explained(accordion("page-4"), "1a")?.help).toEqual([sheet]);
  });

  test("that would fit without the trim", () => {
    const trimmed = paper("night", inches(10), inches(7), { trim: evenly(inches(1 / 8)) });
    const found = explained(project([card(inches(5), inches(7), [])], { papers: [trimmed] }), "1a");
    expect(found).toMatchObject({
      usable: { width: inches(9.75), height: inches(6.75) },
      over: { width: inches(0.25), height: inches(0.25) },
      help: ["Without the trim, night is large enough.", "A sheet of at least 10 1/4 x 7 1/4 in would do."],
    });
  });

  test("in millimetres, with borders that are not all alike", () => {
    const small = paper("small", millimetres(90), millimetres(120));
    const border = { ...evenly(millimetres(2)), left: millimetres(4) };
    const design = card(millimetres(105), millimetres(148), [
      panel(byBorder(border), { paper: choice("small") }),
    ]);
    const whole = project([design], { papers: [night, small], units: "mm" });
    expect(explained(whole, "1b")?.message).toBe(
      "The 1b panel is 99 x 144 mm, and none of its papers is large enough. Nearest comes small, which gives 90 x 120 mm: " +
        "it is 9 mm too wide and 24 mm too high. With borders 12 mm wider on each side it fits. Cut from night it fits. " +
        "Made up of 2 parts it fits: write join: { parts: 2, cover: night, width: 12 }. " +
        "Made up with ends of another paper it fits: write join: { ends: night, cover: night, width: 12 }. " +
        "A sheet of at least 99 x 144 mm would do.",
    );
  });

  test("a wider border is not proposed where something else would vanish", () => {
    const small = paper("small", inches(2), inches(2));
    const above = panel(byBorder(inches(1.5)));
    const layers = [mat(byBorder(inches(0.125)), { paper: choice("small") }), above];
    const whole = project([card(inches(5), inches(7), layers)], {
      papers: [night, paper("cream", 9e5, 9e5), small],
    });
    expect(explained(whole, "1b")?.help.some((help) => help.includes("border"))).toBe(false);
  });

  test("a piece of papers that are not in the project is a mistake of the caller", () => {
    const whole = project([card(inches(5), inches(7), [])]);
    const [base] = expandProject(whole).pieces;
    if (base === undefined) throw new Error("No base.");
    expect(() => explainNoPaper(whole, { ...base, faces: ["ember"] })).toThrow(RangeError);
  });
});

describe("a piece that no cut of the trimmer frees", () => {
  const base = [card(inches(4.25), inches(5.5), [])];
  const papers = [paper("night", inches(18), inches(24))];

  test("is told with the longest cut, and what would help", () => {
    const whole = project(base, { papers });
    const short = { ...whole, trimmer: { ...whole.trimmer, longestCut: inches(12) } };
    const found = explained(short, "1a");
    expect(found?.message).toBe(
      "The 1a base, 8 1/2 x 5 1/2 in, cannot be cut from night, which gives 18 x 24 in: that takes a longer cut than " +
        "12 in, the longest of the trimmer (longest-cut). A tool that cuts 18 in would do. A sheet of " +
        "8 1/2 x 5 1/2 in would do.",
    );
    const longer = { ...whole, trimmer: { ...whole.trimmer, longestCut: inches(18) } };
    expect(explained(longer, "1a")).toBeNull();
  });
});

describe("projects made at random", () => {
  // Tries every sheet and offcut, form and turn anew, without the code under test.
  function canBeCut(whole: Project, piece: Pick<Piece, "forms" | "faces" | "grainNeed">): boolean {
    const limit = whole.trimmer.longestCut ?? Number.MAX_SAFE_INTEGER;
    return whole.papers.some(({ designs, sheet, trim, grain }) =>
      designs.some(({ front, back, offcuts }) =>
        [front, back].some((side) => {
          if (side === null || !piece.faces.includes(side.id)) return false;
          const trimmed = {
            width: sheet.width - trim.left - trim.right,
            height: sheet.height - trim.top - trim.bottom,
          };
          const canTrim =
            (trim.left + trim.right === 0 || sheet.height <= limit) &&
            (trim.top + trim.bottom === 0 || trimmed.width <= limit);
          return [...(canTrim ? [trimmed] : []), ...offcuts].some((stock) =>
            piece.forms.some((form) => {
              const required = piece.grainNeed === "require" && form.grainAlong !== null && grain !== "none";
              const upright = !required || grain === form.grainAlong;
              const turned =
                side.pattern === "none" && (!required || (grain !== "unknown" && grain !== form.grainAlong));
              return (
                (upright && canBeFreed(form.width, form.height, stock, limit)) ||
                (turned && canBeFreed(form.height, form.width, stock, limit))
              );
            }),
          );
        }),
      ),
    );
  }

  /** Cuts a part down one cut after the other, in every order. */
  function canBeFreed(width: number, height: number, part: Size, limit: number): boolean {
    if (width > part.width || height > part.height) return false;
    if (width === part.width && height === part.height) return true;
    const across = height < part.height && part.width <= limit;
    const upright = width < part.width && part.height <= limit;
    return (
      (across && canBeFreed(width, height, { width: part.width, height }, limit)) ||
      (upright && canBeFreed(width, height, { width, height: part.height }, limit))
    );
  }

  /** Every third project as it is, the others with a tool that makes short cuts only. */
  function withShortCuts(whole: Project, pieces: readonly Piece[]): Project {
    const limits = [whole.trimmer.longestCut, inches(5), inches(8.5)];
    return { ...whole, trimmer: { ...whole.trimmer, longestCut: limits[pieces.length % 3] ?? null } };
  }

  test("a piece is explained just where trying all ways finds none", () => {
    checkProjects(({ project: asWritten, expansion }) => {
      const whole = withShortCuts(asWritten, expansion.pieces);
      for (const piece of expansion.pieces) {
        const found = explainNoPaper(whole, piece);
        expect(found === null).toBe(canBeCut(whole, piece));
        if (found === null) continue;
        const fitsBySize = Math.max(found.over.width, found.over.height) === 0;
        if (fitsBySize) expect(whole.trimmer.longestCut).not.toBeNull();
        expect(found.message.includes("longest-cut")).toBe(fitsBySize);
        expect(JSON.parse(JSON.stringify(found))).toEqual(found);
        expect(found.message.endsWith(found.help.join(" "))).toBe(true);
      }
    });
  });

  test("everything that is said to help does", () => {
    checkProjects(({ project: asWritten, expansion }) => {
      const whole = withShortCuts(asWritten, expansion.pieces);
      const index = indexFaces(whole);
      for (const piece of expansion.pieces) {
        if (canBeCut(whole, piece)) continue;
        const faces = piece.faces.flatMap((id) => index.get(id) ?? []);
        const nearest = nearestWay(waysToCut(piece, faces, whole.trimmer.longestCut));
        if (nearest === null) throw new Error("Nothing comes nearest.");
        for (const help of findHelp(whole, piece, nearest)) {
          const helped = withHelp(whole, piece, help, nearest.from.paper);
          // Other layers may be the worse for it: a sheet just large enough for this piece may be too small for them.
          const { pieces } = workOutProject(helped).expansion;
          const isOther =
            help.kind === "fold" || help.kind === "panels" || help.kind === "border" || help.kind === "join";
          const changed = isOther
            ? pieces.filter(({ path, faces: own }) => path === piece.path && `${own}` === `${piece.faces}`)
            : [help.kind === "papers" ? { ...piece, faces: help.faces } : piece];
          if (changed.length === 0) throw new Error(`${piece.id} is lost.`);
          expect(changed.every((each) => canBeCut(helped, each))).toBe(true);
          if (help.kind !== "join") continue;
          const made = pieces.filter(({ path }) => path.startsWith(`${help.path}.join`));
          expect(made.every((part) => canBeCut(helped, part))).toBe(true);
        }
      }
    });
  });

  /** The project after doing what would help. */
  function withHelp(whole: Project, piece: Piece, help: Help, nearest: Paper): Project {
    const papers = (change: (each: Paper) => Paper) => ({ ...whole, papers: whole.papers.map(change) });
    const own = (change: (each: Design) => Design) => ({
      ...whole,
      cards: whole.cards.map((each) => (each.number === piece.card ? change(each) : each)),
    });
    const free = (each: Paper): Paper => ({
      ...each,
      designs: each.designs.map((design) => ({
        ...design,
        front: { ...design.front, pattern: "none" },
        back: design.back === null ? null : { ...design.back, pattern: "none" },
      })),
    });
    switch (help.kind) {
      case "turn": {
        const { against } = help;
        const loose = against === "grain" ? whole : papers(free);
        // Paper without a grain meets any requirement.
        return against === "pattern"
          ? loose
          : {
              ...loose,
              papers: loose.papers.map((each) => ({ ...each, grain: "none", grainBasis: "given" })),
            };
      }
      case "fold":
      case "panels":
        return own((design) => ({ ...design, flats: [help.flat] }));
      case "border":
        return own((design) => ({
          ...design,
          surfaces: widenOnSurfaces(design.surfaces, help.path, help.by),
        }));
      case "join":
        return own((design) => ({
          ...design,
          surfaces: design.surfaces.map((one) => ({
            ...one,
            layers: withJoin(one.layers, help.path, help.join),
          })),
        }));
      case "tool":
        return { ...whole, trimmer: { ...whole.trimmer, longestCut: help.longestCut } };
      case "untrimmed":
        return papers((each) => ({ ...each, trim: evenly(0) }));
      case "sheet":
        return papers((each) => (each.id === nearest.id ? { ...each, sheet: help.size } : each));
      default:
        return whole;
    }
  }
});
