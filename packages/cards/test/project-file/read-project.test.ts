import { inches, millimetres } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { type Layer, type Project, readProject } from "../../src/index.js";
import { EVERY_KEY, SMALLEST } from "./sample-projects.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  expect(faults).toEqual([]);
  if (project === null) throw new Error("no project");
  return project;
}

const card = (text: string) => `${SMALLEST}${text}`;
const layers = (front: string, units = "in"): readonly Layer[] =>
  read(card(`    front:\n${front}`).replace("title:", `units: ${units}\ntitle:`)).cards[0]?.surfaces[0]
    ?.layers ?? [];

describe("the smallest project", () => {
  it("comes out with every default filled in", () => {
    expect(read(SMALLEST)).toEqual({
      title: "One card",
      units: "in",
      precision: inches(1 / 16),
      trimmer: {
        cuts: "edge-to-edge",
        kerf: 0,
        longestCut: null,
        narrowestHold: inches(1),
        smallestOffcut: { width: inches(2), height: inches(2) },
      },
      papers: [
        {
          id: "cream",
          name: "cream",
          material: "cardstock",
          sheet: { width: inches(8.5), height: inches(11) },
          sheetName: "US Letter sheet",
          trim: { left: 0, right: 0, top: 0, bottom: 0 },
          grain: "height",
          grainBasis: "assumed",
          weight: null,
          thickness: null,
          designs: [
            {
              id: "cream",
              name: "cream",
              count: null,
              cost: null,
              front: { id: "cream", name: "cream", pattern: "none", colour: "#f4ead0" },
              back: null,
              offcuts: [],
            },
          ],
        },
      ],
      cards: [
        {
          number: 1,
          name: "Plain",
          path: "cards[0]",
          format: "us-a2",
          front: { width: inches(4.25), height: inches(5.5) },
          flats: [
            {
              fold: "side",
              width: inches(8.5),
              height: inches(5.5),
              along: "width",
              panels: [inches(4.25), inches(4.25)],
              scores: [{ along: "width", at: inches(4.25), folds: "mountain" }],
              slits: [],
            },
          ],
          base: { faces: ["cream"], text: "cream" },
          foldGrain: "prefer",
          copies: 1,
          copiesFor: { guests: 1, samples: 0 },
          surfaces: [],
          extras: [],
          envelope: null,
        },
      ],
      silences: [],
    });
  });

  it("has defaults of its own in millimetres", () => {
    const { precision, trimmer } = read(SMALLEST.replace("title:", "units: mm\ntitle:"));
    expect(precision).toBe(millimetres(0.5));
    expect(trimmer.narrowestHold).toBe(millimetres(25));
    expect(trimmer.smallestOffcut).toEqual({ width: millimetres(50), height: millimetres(50) });
  });
});

describe("a project with every key", () => {
  const project = read(EVERY_KEY);
  const [first, second] = project.cards;

  it("keeps what is said of the project and its trimmer", () => {
    expect(project.precision).toBe(inches(1 / 32));
    expect(project.trimmer).toEqual({
      cuts: "strips",
      kerf: inches(1 / 64),
      longestCut: inches(12),
      narrowestHold: inches(2),
      smallestOffcut: { width: inches(1), height: inches(3) },
    });
  });

  it("keeps what is said of a paper", () => {
    expect(project.papers[0]).toEqual({
      id: "night",
      name: "Night blue",
      material: "cardstock",
      sheet: { width: inches(8.5), height: inches(11) },
      sheetName: "US Letter sheet",
      trim: { left: inches(1 / 8), right: inches(1 / 8), top: inches(1 / 8), bottom: inches(1 / 8) },
      grain: "height",
      grainBasis: "given",
      weight: { unit: "lb", pounds: 80, grade: "cover", text: "80 lb cover" },
      thickness: 488,
      pack: { sheets: 25, cost: "8.99" },
      designs: [
        {
          id: "night",
          name: "Night blue",
          count: 20,
          cost: "0.35",
          front: { id: "night", name: "Night blue", pattern: "none", colour: "#22304f" },
          back: { id: "night.back", name: "Ink", pattern: "two-way", colour: "#102040" },
          offcuts: [
            { width: inches(4), height: inches(8.5), count: 1 },
            { width: inches(2), height: inches(11), count: 3 },
          ],
        },
      ],
    });
    expect(project.papers.map(({ sheetName }) => sheetName)).toEqual([
      "US Letter sheet",
      null,
      "ISO A4 sheet",
      null,
    ]);
    expect(project.papers[1]?.trim).toEqual({ left: inches(1 / 8), right: 0, top: inches(1 / 4), bottom: 0 });
    expect(project.papers[2]?.weight).toEqual({ unit: "g/m2", grammage: 300, text: "300 gsm" });
  });

  it("takes what a pad says for each design that does not say otherwise", () => {
    const pad = project.papers[3];
    expect(pad?.designs.map(({ id, name, count, cost }) => ({ id, name, count, cost }))).toEqual([
      { id: "stars.dots", name: "dots", count: 6, cost: null },
      { id: "stars.comets", name: "Comets", count: 6, cost: "0.2" },
      { id: "stars.rays", name: "rays", count: 4, cost: "1" },
      { id: "stars.mist", name: "mist", count: null, cost: null },
    ]);
    expect(pad?.designs.map(({ front }) => front.pattern)).toEqual([
      "two-way",
      "one-way",
      "two-way",
      "two-way",
    ]);
    expect(pad?.designs[1]?.front.colour).toBe("#aabbcc");
    expect(pad?.designs[1]?.back).toMatchObject({
      id: "stars.comets.back",
      name: "Comets, back",
      pattern: "none",
    });
    expect(pad?.designs[1]?.offcuts).toEqual([{ width: inches(3), height: inches(6), count: 1 }]);
  });

  it("turns a card that lies, and offers both flats where the fold is left open", () => {
    expect(first?.front).toEqual({ width: inches(7), height: inches(5) });
    expect(first?.flats.map(({ fold, width, height }) => [fold, width, height])).toEqual([
      ["top", inches(7), inches(10)],
      ["side", inches(14), inches(5)],
    ]);
    expect(first?.foldGrain).toBe("require");
    expect([first?.copies, first?.copiesFor]).toEqual([6, { guests: 6, samples: 0 }]);
    expect([second?.copies, second?.copiesFor]).toEqual([5, { guests: 3, samples: 2 }]);
    expect([second?.format, second?.flats[0]?.fold]).toEqual([null, "side"]);
  });

  it("takes spares beside the copies, of every card or of one, and none as no wish", () => {
    const copiesOf = (copies: string, own: string) => {
      const text = `{ sheetwright: 1, title: One, copies: ${copies}, papers: { cream: { cardstock: us-letter } },
        cards: [{ name: Plain, format: us-a2, base: cream${own} }] }`;
      const [card] = readProject(text).project?.cards ?? [];
      return [card?.copies, card?.copiesFor];
    };
    const wished = { guests: 12, samples: 1, spares: 2 };
    expect(copiesOf("{ guests: 12, samples: 1, spares: 2 }", "")).toEqual([13, wished]);
    expect(copiesOf("3", ", copies: { guests: 12, samples: 1, spares: 2 }")).toEqual([13, wished]);
    expect(copiesOf("{ guests: 3, spares: 0 }", "")).toEqual([3, { guests: 3, samples: 0 }]);
    expect(copiesOf("{ guests: 3, spares: 2 }", ", copies: 4")).toEqual([4, { guests: 4, samples: 0 }]);
  });

  it("reads the layers as they are written", () => {
    expect(first?.surfaces.map(({ name, path }) => [name, path])).toEqual([["front", "cards[0].front"]]);
    expect(first?.surfaces[0]?.layers).toEqual([
      {
        kind: "mat",
        path: "cards[0].front[0]",
        name: null,
        grain: null,
        foam: null,
        paper: { faces: ["copper"], text: "copper" },
        extent: {
          by: "border",
          border: { left: inches(1 / 4), right: inches(1 / 4), top: inches(1 / 16), bottom: inches(1 / 2) },
        },
        layers: [
          {
            kind: "panel",
            path: "cards[0].front[0].layers[0]",
            name: null,
            grain: null,
            foam: inches(1 / 16),
            paper: { faces: ["stars.dots", "stars.comets", "stars.rays", "stars.mist"], text: "stars" },
            extent: {
              by: "border",
              border: {
                left: inches(1 / 8),
                right: inches(1 / 8),
                top: inches(1 / 8),
                bottom: inches(1 / 8),
              },
            },
            layers: [],
          },
        ],
      },
      {
        kind: "bands",
        path: "cards[0].front[1]",
        name: null,
        grain: { along: "height", need: "require" },
        foam: null,
        runs: "upright",
        shares: { by: "ratio", ratios: [1, 3] },
        papers: [
          { faces: ["stars.comets", "stars.dots"], text: "stars.comets or stars.dots" },
          { faces: ["night.back"], text: "night.back" },
        ],
        extent: {
          by: "size",
          size: { width: inches(4), height: inches(3) },
          place: {
            x: { from: "end", distance: inches(1 / 2) },
            y: { from: "start", distance: inches(1 / 4) },
          },
        },
        seam: { cover: { faces: ["night"], text: "night" }, width: inches(1 / 2) },
        layers: [],
      },
      {
        kind: "strip",
        path: "cards[0].front[2]",
        name: "horizon",
        grain: { along: "height", need: "prefer" },
        foam: null,
        runs: "across",
        paper: { faces: ["ember"], text: "ember" },
        width: inches(1 / 2),
        length: inches(3),
        place: { x: { from: "start", distance: inches(1) }, y: { from: "end", distance: inches(3 / 4) } },
        layers: [],
      },
      {
        kind: "sentiment",
        path: "cards[0].front[3]",
        name: null,
        grain: null,
        foam: null,
        paper: { faces: ["night", "ember"], text: "night or ember" },
        size: { width: inches(2), height: inches(1 / 2) },
        place: { x: { from: "third", third: 2 }, y: { from: "third", third: 2 } },
        text: "Good night",
        mats: [
          { paper: { faces: ["copper"], text: "copper" }, border: inches(1 / 16) },
          { paper: { faces: ["night"], text: "night" }, border: inches(1 / 8) },
        ],
        layers: [],
      },
    ]);
    expect(second?.surfaces[0]?.layers[0]).toMatchObject({ kind: "bands", runs: "across", seam: "bare" });
  });
});

describe("defaults of layers", () => {
  // The classic border of 1/8 in (3 mm): common practice, no source.
  it("gives a layer without border and size the classic border", () => {
    const border = (width: number) => ({ left: width, right: width, top: width, bottom: width });
    expect(layers("      - mat: cream\n      - panel: cream\n")).toMatchObject([
      { extent: { by: "border", border: border(inches(1 / 8)) } },
      { extent: { by: "border", border: border(inches(1 / 8)) } },
    ]);
    expect(layers("      - mat: cream\n      - panel: cream\n", "mm")).toMatchObject([
      { extent: { by: "border", border: border(millimetres(3)) } },
      { extent: { by: "border", border: border(millimetres(3)) } },
    ]);
  });

  it("lays what has a size in the middle, and says nothing of a seam that the file says nothing of", () => {
    const [panel, bands, strip] = layers(
      "      - { panel: cream, size: 2 x 3 }\n      - { bands: [1, 2], papers: [cream, cream] }\n      - { strip: cream, width: 1 }\n",
    );
    const middle = { x: { from: "middle" }, y: { from: "middle" } };
    expect(panel).toMatchObject({ extent: { by: "size", place: middle } });
    expect(bands).toMatchObject({ runs: "across", seam: null });
    expect(strip).toMatchObject({ runs: "across", length: null, place: middle });
  });

  it("takes a border of 0 on the sides that are not named, and halves a total", () => {
    const [named, total] = layers(
      "      - { panel: cream, border: { left: 1/4 } }\n      - { panel: cream, border: { total: 3/8 } }\n",
    );
    expect(named).toMatchObject({ extent: { border: { left: inches(1 / 4), right: 0, top: 0, bottom: 0 } } });
    expect(total).toMatchObject({ extent: { border: { left: inches(3 / 16), right: inches(3 / 16) } } });
  });
});

describe("how values may be written", () => {
  it.each([
    ["8", 8],
    ["2.5", 2.5],
    ["012", 12],
    ["1e1", 10],
    ['"3 1/2"', 3.5],
    ["1/8", 1 / 8],
    ["3-1/2 in", 3.5],
    ["3½", 3.5],
  ])("reads %s as a length", (written, expected) => {
    expect(
      read(SMALLEST.replace("title:", `trimmer: { longest-cut: ${written} }\ntitle:`)).trimmer.longestCut,
    ).toBe(inches(expected));
  });

  it("reads millimetres in a project in inches, and inches in one in millimetres", () => {
    const kerf = (units: string, written: string) =>
      read(SMALLEST.replace("title:", `units: ${units}\ntrimmer: { kerf: ${written} }\ntitle:`)).trimmer.kerf;
    expect(kerf("in", "1 mm")).toBe(millimetres(1));
    expect(kerf("mm", "1")).toBe(millimetres(1));
    expect(kerf("mm", '1/32"')).toBe(inches(1 / 32));
  });

  it("takes numbers and bare words as they stand where a text is wanted", () => {
    const text = card(
      "    front:\n      - { sentiment: cream, size: 2 x 1, text: 007 }\n      - { panel: cream, name: yes }\n",
    )
      .replace("One card", "2030")
      .replace("Plain", "true");
    const { title, cards } = read(text);
    expect([
      title,
      cards[0]?.name,
      cards[0]?.surfaces[0]?.layers[0],
      cards[0]?.surfaces[0]?.layers[1]?.name,
    ]).toMatchObject(["2030", "true", { text: "007" }, "yes"]);
  });

  it("joins the lines of a text", () => {
    expect(read(SMALLEST.replace("One card", ">\n  One\n\n    card  \n")).title).toBe("One card");
  });

  it.each([
    ["0.35", "0.35"],
    ["0.350", "0.35"],
    ['"0.3500"', "0.35"],
    [".5", "0.5"],
    ["12", "12"],
    ['"007.10"', "7.1"],
    ["0", "0"],
  ])("reads a cost of %s", (written, cost) => {
    const text = SMALLEST.replace("us-letter", `us-letter, cost: ${written}`);
    expect(read(text).papers[0]?.designs[0]?.cost).toBe(cost);
  });

  it.each([
    ["80 lb cover", { unit: "lb", pounds: 80, grade: "cover" }],
    ["80lb Cover", { unit: "lb", pounds: 80, grade: "cover" }],
    ["24 lb bond", { unit: "lb", pounds: 24, grade: "bond" }],
    ["65 lb", { unit: "lb", pounds: 65, grade: null }],
    // Other words on labels for the same grades: paper-weight tables in printer manuals.
    ["90 lb offset", { unit: "lb", pounds: 90, grade: "text" }],
    ["60 lb Book", { unit: "lb", pounds: 60, grade: "text" }],
    ["24 lb writing paper", { unit: "lb", pounds: 24, grade: "bond" }],
    ["80 lb cover stock", { unit: "lb", pounds: 80, grade: "cover" }],
    ["110 lb cardstock", { unit: "lb", pounds: 110, grade: null }],
    ["80 lb card stock", { unit: "lb", pounds: 80, grade: null }],
    ["216 g/m2", { unit: "g/m2", grammage: 216 }],
    ["216 g/m²", { unit: "g/m2", grammage: 216 }],
    ["216gsm", { unit: "g/m2", grammage: 216 }],
    ["175.8 gsm", { unit: "g/m2", grammage: 175.8 }],
  ])("reads a weight of %s", (written, weight) => {
    const text = SMALLEST.replace("us-letter", `us-letter, weight: ${written}`);
    expect(read(text).papers[0]?.weight).toEqual({ ...weight, text: written });
  });

  it("reads the long and the short side of the sheet as it lies", () => {
    const grain = (sheet: string, word: string) =>
      read(SMALLEST.replace("us-letter", `${sheet}, grain: ${word}`)).papers[0]?.grain;
    expect(grain("us-letter", "long")).toBe("height");
    expect(grain("us-letter", "short")).toBe("width");
    expect(grain("11 x 8 1/2", "long")).toBe("width");
    expect(grain("11 x 8 1/2", "short")).toBe("height");
    expect(grain("12 x 12", "width")).toBe("width");
    expect(grain("12 x 12", "none")).toBe("none");
  });

  it("finds a format by any way that its name is written, and by its alias", () => {
    const format = (written: string) => read(SMALLEST.replace("us-a2", written)).cards[0]?.format;
    expect([format("US A2"), format("us_a7"), format("iso-a6")]).toEqual(["us-a2", "us-a7", "card-iso-a6"]);
  });

  it("reads JSON, a byte order mark, comments and Windows line ends", () => {
    const json = `${JSON.stringify(JSON.parse(toJson()), null, "\t")}`;
    const project = read(SMALLEST);
    expect(read(json)).toEqual(project);
    expect(read(`\ufeff${SMALLEST}`)).toEqual(project);
    expect(read(`# A note\n${SMALLEST}`)).toEqual(project);
    expect(read(SMALLEST.replaceAll("\n", "\r\n"))).toEqual(project);
    expect(read(`---\n${SMALLEST}...\n`)).toEqual(project);
  });
});

function toJson(): string {
  return JSON.stringify({
    sheetwright: 1,
    title: "One card",
    papers: { cream: { cardstock: "us-letter" } },
    cards: [{ name: "Plain", format: "us-a2", base: "cream" }],
  });
}

describe("the place of a value", () => {
  const { placeOf } = readProject(EVERY_KEY);

  it.each([
    ["title", "Lantern Night workshop"],
    ["copies.guests", "12, samples"],
    ["papers.night", "night:\n"],
    ["papers.night.back.name", "Ink }"],
    ["cards[0]", "name: Rooftops"],
    ["cards[0].front", "front:\n"],
    ["cards[0].front[0].border.left", "1/4, right"],
    ["cards[0].front[1].papers[0][1]", "stars.dots], night.back"],
  ])("of %s is where it begins", (path, begins) => {
    const before = EVERY_KEY.slice(0, EVERY_KEY.indexOf(begins)).split("\n");
    expect(placeOf(path)).toEqual({ line: before.length, column: (before.at(-1)?.length ?? 0) + 1 });
  });

  it("is that of the nearest value above where there is none", () => {
    expect(placeOf("cards[0].front[0].grain.along")).toEqual(placeOf("cards[0].front[0]"));
    expect(placeOf("cards[7].name")).toEqual(placeOf("cards"));
    expect(placeOf("nothing")).toEqual({ line: 1, column: 1 });
    expect(readProject("").placeOf("title")).toBeNull();
  });
});
