import { inches, millimetres } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { readProject } from "../../src/index.js";

/** A project whose two cards have a ribbon and pearls, with such items, and `more` beside the title. */
function read(items: string, more = "copies: 10") {
  return readProject(`{ sheetwright: 1, title: Ribbons, ${more},
papers: { night: { cardstock: us-letter } },
items: ${items},
cards: [
  { name: Lantern, format: us-a2, base: night,
    front: [{ bands: [1, 1], papers: [night, night], seam: { ribbon: copper ribbon, width: 1/4 } }] },
  { name: Moth, format: us-a2, base: night, extras: [{ name: pearl, count: 3, thickness: 1/16 }] }] }`);
}

const itemsOf = (items: string, more?: string) => {
  const { project, faults } = read(items, more);
  expect(faults).toEqual([]);
  return project?.items?.map(({ path: _, ...item }) => item);
};

const told = (items: string, more?: string) =>
  read(items, more).faults.map(({ code, path, message }) => `${code} ${path}: ${message}`);

describe("items on hand", () => {
  it("are absent where nothing is said, and as needed where nothing more is", () => {
    const { project } = readProject(
      "{ sheetwright: 1, title: x, papers: { night: { cardstock: us-letter } }, cards: [{ name: A, format: us-a2, base: night }] }",
    );
    expect(project).not.toHaveProperty("items");
    expect(itemsOf("{ pearl: {}, knot: as needed }")).toEqual([
      { name: "pearl", count: null },
      { name: "knot", count: null },
    ]);
  });

  it("have a count, a cost and a pack, in short or in full", () => {
    expect(
      itemsOf(
        "{ pearl: 40, knot: { count: 3, cost: 0.50, pack: 12 }, gem: { pack: { items: 6, cost: 1.10 } } }",
      ),
    ).toEqual([
      { name: "pearl", count: 40 },
      { name: "knot", count: 3, cost: "0.5", pack: { items: 12, cost: null } },
      { name: "gem", count: null, pack: { items: 6, cost: "1.1" } },
    ]);
  });

  // A yard is 36 in (international yard and pound agreement, 1959), a metre 1000 mm.
  it.each([
    ["108", inches(108)],
    ["108 in", inches(108)],
    ["3 yd", inches(108)],
    ["2 1/2 yards", inches(90)],
    ["27 yd", 27 * inches(36)],
    ["2.5 m", millimetres(2500)],
    ["250 cm", millimetres(2500)],
    ["100 metres", 10 * millimetres(10_000)],
    ["2500 mm", millimetres(2500)],
  ])("take %s as the length of a roll", (written, length) => {
    expect(itemsOf(`{ copper ribbon: { length: ${written}, count: 2 } }`)).toEqual([
      { name: "copper ribbon", length, count: 2 },
    ]);
  });

  it.each(["101 m", "110 yd", "0 yd", "three yd", "3 yd 2", "3 ft"])("refuse %s", (written) => {
    const faults = told(`{ copper ribbon: { length: ${written} } }`);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/^not-a-length items\["copper ribbon"\]\.length: /);
  });

  it("tell the length of a roll in the unit that it stands in", () => {
    expect(told("{ copper ribbon: { length: 101 m } }")).toEqual([
      'not-a-length items["copper ribbon"].length: "101 m" is not the length of a roll. Expected how long a roll is, at most 100 m (about 109 yd), such as 3 yd or 2.5 m.',
    ]);
    expect(told("{ copper ribbon: { length: 3 ft } }")).toEqual([
      expect.stringMatching(/ 1 ft is 12 in\. The length of a roll may be told in yd and m as well\.$/),
    ]);
    // A misspelt length is not told to be missing besides.
    expect(told("{ copper ribbon: { lenght: 3 yd } }")).toHaveLength(1);
  });

  it("go into bags whole unless they are cut before, and count for a bag or for all", () => {
    const kits = "share: kits, copies: 10";
    const ribbon = (keys: string) => itemsOf(`{ copper ribbon: { length: 3 yd, count: 20, ${keys} } }`, kits);
    const length = inches(108);
    const name = "copper ribbon";
    expect(ribbon("")).toEqual([{ name, length, count: 200, bags: 10 }]);
    expect(ribbon("count-for: all")).toEqual([{ name, length, count: 20, bags: 10 }]);
    expect(ribbon("hand-out: cut")).toEqual([{ name, length, count: 20 }]);
    expect(ribbon("hand-out: cut, count-for: bag")).toEqual([{ name, length, count: 200 }]);
    // What is counted singly is dealt out; by itself its count is that of a bag.
    expect(itemsOf("{ pearl: 4 }", kits)).toEqual([{ name: "pearl", count: 40 }]);
    expect(itemsOf("{ pearl: { count: 45, count-for: all } }", kits)).toEqual([{ name: "pearl", count: 45 }]);
  });

  it("are found wrong where they contradict the cards or themselves", () => {
    expect(told("{ copper ribbon: 2 }")).toEqual([
      'contradiction items["copper ribbon"]: copper ribbon is a ribbon (cards[0].front[0].seam), so what is on hand are rolls. Write how long one is, such as length: 3 yd.',
    ]);
    expect(told("{ pearl: { length: 3 yd } }")).toEqual([
      "contradiction items.pearl.length: pearl is an extra that is counted (cards[1].extras[0]), so it has no rolls. Leave length out, or give the ribbon and the extra two names.",
    ]);
    // 4 in show within the usual border of 1/8 in, and 1/2 in more at both ends is taped behind.
    expect(told("{ Copper Ribbon: { length: 3 } }")).toEqual([
      'contradiction items["Copper Ribbon"].length: The 1d ribbon takes 5 in in one length (cards[0].front[0].seam), and a roll has 3 in. Lengths are never joined: write longer rolls, or use another ribbon there.',
    ]);
    expect(told("{ pearl: 4, Pearl: 5 }")).toEqual([
      'twice items.Pearl: "Pearl" and "pearl" are one name, whatever their capitals. Put what is on hand under one of them.',
    ]);
  });

  it("say nothing of bags in a class, and are not cut where they are counted singly", () => {
    expect(told("{ copper ribbon: { length: 3 yd, hand-out: cut, count-for: all } }")).toEqual([
      expect.stringMatching(/^contradiction .*\.hand-out: In a class all items lie in one pile, /),
      expect.stringMatching(/^contradiction .*\.count-for: In a class all items lie in one pile, /),
    ]);
    expect(told("{ pearl: { hand-out: cut } }", "share: kits, copies: 10")).toEqual([
      expect.stringMatching(
        /^contradiction items\.pearl\.hand-out: What is counted singly goes into the bags/,
      ),
    ]);
  });

  it.each([
    ["{ pearl: { count: 1.5 } }", "items.pearl.count"],
    ["{ pearl: many }", "items.pearl"],
    ["{ pearl: { cost: -1 } }", "items.pearl.cost"],
    ["{ pearl: { pack: 0 } }", "items.pearl.pack"],
    ["{ pearl: { pack: { cost: 2 } } }", "items.pearl.pack.items"],
    ["{ pearl: { number: 5 } }", "items.pearl.number"],
    ["[pearl]", "items"],
  ])("tell what is wrong with %s", (items, path) => {
    const { faults } = read(items);
    expect(faults.map((fault) => fault.path)).toEqual([path]);
    expect(faults[0]?.message).not.toMatch(/undefined|invalid/i);
  });

  it("refuse one ribbon in two widths", () => {
    const { faults } = readProject(`{ sheetwright: 1, title: Ribbons,
papers: { night: { cardstock: us-letter } }, items: { copper: { length: 3 yd } },
cards: [{ name: A, format: us-a2, base: night, front: [
  { bands: [1, 1], papers: [night, night], seam: { ribbon: copper, width: 1/4 } }] },
  { name: B, format: us-a2, base: night, front: [
  { bands: [1, 1], papers: [night, night], seam: { ribbon: copper, width: 3/8 } }] }] }`);
    expect(faults.map(({ message }) => message)).toEqual([
      "copper is a ribbon 1/4 in wide (cards[0].front[0].seam) and a ribbon 3/8 in wide (cards[1].front[0].seam), and a roll is one of the two. Give them two names.",
    ]);
  });
});
