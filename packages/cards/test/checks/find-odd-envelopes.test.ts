import { describe, expect, it, test } from "vitest";
import { checkProject, finishedCards, readProject } from "../../src/index.js";
import { checkProjects } from "../random-expansion.js";

const OURS = [
  "weight-assumed",
  "weight-ambiguous",
  "envelope-too-small",
  "envelope-snug",
  "envelope-loose",
  "thickness-estimated",
  "small-parts",
];

/** What these checks find in a project of one card. */
function found(keys: string, paper = "weight: 80 lb cover, thickness: 0.010 in", units = "in") {
  const { project, faults } = readProject(`sheetwright: 1
title: One card
units: ${units}
papers:
  night: { cardstock: 12 x 12 in, grain: width, ${paper} }
cards:
  - { name: Moth, base: night, ${keys} }
`);
  if (project === null) throw new Error(faults.map(({ path, message }) => `${path}: ${message}`).join("\n"));
  return checkProject(project).filter(({ code }) => OURS.includes(code));
}

const codes = (...of: Parameters<typeof found>) => found(...of).map(({ code, path }) => [code, path]);
const bell = (thickness: string) => `extras: [{ name: bell, thickness: ${thickness} }]`;

describe("an envelope", () => {
  it("is not told of where the card goes in easily, or where the trade puts it snugly", () => {
    expect(codes("format: us-a7")).toEqual([]);
    expect(codes("format: us-a2")).toEqual([]);
    // A layered card: thicker than 1/16 in, and as makers mail it.
    expect(codes(`format: us-a2, ${bell("0.055 in")}`)).toEqual([]);
    expect(codes(`format: us-a2, ${bell("0.08 in")}`)).toEqual([["envelope-snug", "cards[0]"]]);
    expect(codes("format: us-a2, envelope: us-a2")).toEqual([]);
    expect(codes("size: 5 1/2 x 4 1/4")).toEqual([]);
    expect(codes("format: sq-5")).toEqual([]);
    expect(codes("format: card-iso-a6", undefined, "mm")).toEqual([]);
  });

  it("is told to be snug where the maker chose it, or the card is thick", () => {
    expect(codes("format: us-4x6, envelope: 4 1/8 x 6 1/8")).toEqual([
      ["envelope-snug", "cards[0].envelope"],
    ]);
    const [snug] = found(`format: us-a7, ${bell("1/8")}`);
    expect(snug).toMatchObject({ code: "envelope-snug", path: "cards[0]", severity: "note" });
    expect(snug?.message).toBe(
      "Moth, 5 x 7 in, goes in the US A7 envelope (Lee) of 5 1/4 x 7 1/4 in only snugly: it leaves 1/4 in, and ~21/64 in " +
        "would be easy for a card 0.145 in thick. It goes easily in the US A8 envelope of 5 1/2 x 8 1/8 in.",
    );
  });

  it("is told to be too small, by how much, with what would do", () => {
    const message = (keys: string) => {
      const [first] = found(keys);
      expect(first).toMatchObject({ code: "envelope-too-small", severity: "warning" });
      return first?.message;
    };
    expect(message("size: 6 x 6, envelope: 6 x 6, fold: flat")).toBe(
      "Moth, 6 x 6 in and 0.010 in thick where it is thickest, does not go in an envelope of 6 x 6 in: that leaves nothing, " +
        "and 1/4 in is the least that it needs. It goes easily in the US 6 1/2 square envelope of 6 1/2 x 6 1/2 in.",
    );
    expect(message('format: us-a7, envelope: "#10"')).toContain(
      "it is 7/8 in too large for it. It goes easily in",
    );
    expect(message(`format: us-a2, ${bell("1/4")}`)).toContain(
      "that leaves 1/8 in, and the card is thicker.",
    );
    expect(message("size: 11 x 11, fold: flat, envelope: 11 x 12")).toContain("It goes loosely in");
    expect(message(`size: 11 1/2 x 11 1/2, fold: flat, envelope: us-a7, ${bell("2")}`)).toContain(
      "too large for it",
    );
  });

  it("is told to be loose where the card slides about in it, with what is closer", () => {
    const [loose] = found("format: us-a2, envelope: us-booklet-6x9");
    expect(loose).toMatchObject({ code: "envelope-loose", path: "cards[0].envelope", severity: "note" });
    expect(loose?.message).toBe(
      "Moth, 4 1/4 x 5 1/2 in, lies loose in the US 6 x 9 booklet envelope (No. 6 1/2) of 6 x 9 in: it leaves 3 1/2 in one way, " +
        "and over 1 1/2 in a card slides about. It goes easily in the US A6 envelope (6 Bar) of 4 3/4 x 6 1/2 in.",
    );
    const [tag] = found("size: 2 x 4, envelope: us-a1");
    expect(tag?.message).toContain(
      "No named envelope fits it more closely: give the size of one of your own",
    );
    const [nearer] = found("size: 2 x 3 1/2, envelope: us-a2");
    expect(nearer?.message).toContain(
      "Of the named envelopes the US A1 envelope (4 Bar) of 3 5/8 x 5 1/8 in comes nearest, and leaves 1 5/8 in: give",
    );
    // Chosen by nobody, so not told of.
    expect(codes("size: 2 x 4")).toEqual([]);
    expect(codes("size: 2 x 4, envelope: 2 1/4 x 4 1/4")).toEqual([]);
    expect(codes("format: sq-4.25")).toEqual([]);
    expect(found("size: 3 x 3 1/2, envelope: us-a7").map(({ code }) => code)).toEqual(["envelope-loose"]);
  });

  it("is told where a thickness that is only estimated decides", () => {
    // 1/16 in is where thickness begins to count; A7 leaves just 1/4 in.
    const near = `format: us-a7, ${bell("3/64")}`;
    const sure = found(near, "thickness: 0.0075 in");
    expect(sure).toEqual([]);
    const [note] = found(near, "weight: 55 lb cover");
    expect(note).toMatchObject({ code: "thickness-estimated", path: "cards[0]", severity: "note" });
    expect(note?.message).toContain("but that is estimated: at 0.068 in the US A7 envelope (Lee)");
    // With more to spare it does not matter.
    expect(codes(`${near}, envelope: us-a8`, "weight: 55 lb cover")).toEqual([]);
  });
});

describe("a label in pounds", () => {
  it("is told of where it has no grade", () => {
    expect(codes("format: us-a7", "weight: 80 lb cover, thickness: 0.01 in")).toEqual([]);
    expect(codes("format: us-a7", "weight: 216 gsm, thickness: 0.01 in")).toEqual([]);
    const [note] = found("format: us-a7", "weight: 80 lb, thickness: 0.01 in");
    expect(note).toMatchObject({ code: "weight-assumed", path: "papers.night.weight", severity: "note" });
    expect(note?.message).toBe(
      "The weight of night, 80 lb, has no grade behind it and is read as cover weight, 216 g/m2. Write 80 lb cover, or the " +
        "grade that the label says.",
    );
    expect(codes("format: us-a7, envelope: { weight: 24 lb }")).toEqual([
      ["weight-assumed", "cards[0].envelope.weight"],
    ]);
  });

  it("of 110 lb is asked about", () => {
    const [asked] = found("format: us-a7", "weight: 110 lb, thickness: 0.01 in");
    expect(asked).toMatchObject({
      code: "weight-ambiguous",
      path: "papers.night.weight",
      severity: "warning",
    });
    expect(asked?.message).toBe(
      "Is the weight of night, 110 lb, cover (297 g/m2) or index (199 g/m2)? Both are sold. Until the grade is known it is " +
        "reckoned as cover, the heavier one. Write 110 lb cover or 110 lb index.",
    );
    expect(codes("format: us-a7", "weight: 110 lb index, thickness: 0.01 in")).toEqual([]);
  });
});

// US consumer-safety guidance on small parts; 16 CFR 1501.
test("small parts are told of, one by one", () => {
  const extras =
    "extras: [{ name: button, count: 2, thickness: 1/32, small-part: true }, { name: knot, thickness: 1/32 }]";
  const parts = found(`format: us-a7, ${extras}`);
  expect(parts.map(({ code, path }) => [code, path])).toEqual([["small-parts", "cards[0].extras[0]"]]);
  expect(parts[0]?.message).toContain("Moth carries a small part: 2 x button.");
  expect(parts[0]?.message).toContain("1 1/4 in (31.7 mm)");
});

test("in projects made at random every envelope that is too small is told of, and no other", () => {
  checkProjects(({ project }) => {
    const told = checkProject(project).filter(({ code }) => code === "envelope-too-small");
    const cards = finishedCards(project).filter(({ envelope }) => envelope.verdict === "too-small");
    expect(told.map(({ path }) => path.split(".")[0])).toEqual(
      cards.map(({ number }) => `cards[${number - 1}]`),
    );
  });
});
