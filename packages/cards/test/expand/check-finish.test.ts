import { inches } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { type EnvelopeWish, type Extra, findProjectFaults, type Paper } from "../../src/index.js";
import { byBorder, card, mat, panel, paper, project } from "../small-project.js";

const KNOT: Extra = {
  path: "cards[0].extras[0]",
  name: "knot",
  count: 1,
  surface: "front",
  thickness: inches(1 / 8),
  grams: null,
  isSmallPart: false,
};

const faultsWith = (more: { extras?: readonly Extra[]; envelope?: EnvelopeWish }) =>
  findProjectFaults(project([card(inches(5), inches(7), [], more)])).map(({ path, code }) => [path, code]);

describe("a project made in code", () => {
  it("may have extras and an envelope", () => {
    const envelope = { id: null, size: { width: inches(6), height: inches(8) }, weight: null };
    expect(faultsWith({ extras: [KNOT, { ...KNOT, grams: 0.4, surface: "inside" }], envelope })).toEqual([]);
  });

  it.each<[Partial<Extra>, string, string]>([
    [{ count: 0 }, "count", "not-a-count"],
    [{ count: 1.5 }, "count", "not-a-count"],
    [{ thickness: 0 }, "thickness", "not-a-length"],
    [{ thickness: 0.5 }, "thickness", "not-a-length"],
    [{ grams: 0 }, "mass", "not-a-count"],
    [{ grams: Number.NaN }, "mass", "not-a-count"],
    [{ surface: "flap" }, "surface", "contradiction"],
  ])("has no extra with %j", (more, key, code) => {
    expect(faultsWith({ extras: [{ ...KNOT, ...more }] })).toEqual([[`cards[0].extras[0].${key}`, code]]);
  });

  it("may name an envelope by its id and size", () => {
    const a7 = { width: inches(5.25), height: inches(7.25) };
    expect(faultsWith({ envelope: { id: "env-us-a7", size: a7, weight: null } })).toEqual([]);
  });

  it.each<[Partial<EnvelopeWish>, string, string]>([
    [{ id: "us-a7", size: { width: inches(5), height: inches(7) } }, "name", "contradiction"],
    [{ id: "env-us-a7", size: { width: inches(5), height: inches(7) } }, "name", "contradiction"],
    [{ id: "env-us-a7", size: null }, "name", "contradiction"],
    [{ size: { width: 0, height: 5 } }, "size", "not-a-length"],
    [{ weight: { unit: "lb", pounds: 0, grade: null, text: "0 lb" } }, "weight", "not-a-count"],
    [{ weight: { unit: "g/m2", grammage: Number.POSITIVE_INFINITY, text: "" } }, "weight", "not-a-count"],
  ])("has no envelope with %j", (more, key, code) => {
    const envelope = { id: null, size: null, weight: null, ...more };
    expect(faultsWith({ envelope })).toEqual([[`cards[0].envelope.${key}`, code]]);
  });

  it.each([0, -1, 0.5])("has no foam of %d ticks", (foam) => {
    const layers = [mat(byBorder(inches(1 / 8)), { foam }), panel(byBorder(inches(1 / 8)))];
    expect(findProjectFaults(project([card(inches(5), inches(7), layers)])).map(({ path }) => path)).toEqual([
      "cards[0].front[0].foam",
    ]);
  });

  it.each<NonNullable<Paper["weight"]>>([
    { unit: "lb", pounds: -1, grade: "cover", text: "-1 lb cover" },
    { unit: "g/m2", grammage: 0, text: "0 gsm" },
  ])("has no paper that weighs $text", (weight) => {
    const papers = [paper("night", inches(8.5), inches(11), { weight })];
    const faults = findProjectFaults(project([card(inches(4), inches(5), [])], { papers }));
    expect(faults.map(({ path, code }) => [path, code])).toEqual([["papers.night.weight", "not-a-count"]]);
  });
});
