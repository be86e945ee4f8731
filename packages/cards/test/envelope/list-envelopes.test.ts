import { envelopeSizes, inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { envelopeMass, listEnvelopes, usualEnvelopes } from "../../src/index.js";

describe("the list of envelopes", () => {
  it("has US and ISO envelopes together, best first", () => {
    const card = { width: inches(5), height: inches(7) };
    const list = listEnvelopes(card, { thickness: inches(0.05), unit: "in" });
    expect(list.slice(0, 3).map(({ id, verdict }) => [id, verdict])).toEqual([
      ["env-us-a7", "easy"],
      ["env-us-a8", "easy"],
      ["env-us-a9", "easy"],
    ]);
    const snug = list.filter(({ verdict }) => verdict === "snug").map(({ id }) => id);
    expect(snug).toEqual([]);
    expect(list.filter(({ id }) => id.startsWith("env-iso-")).length).toBe(11);
  });

  // Common practice, no source: the 3 1/2 x 8 1/2 in card fits No. 9 and No. 10.
  it("finds No. 9 and No. 10 easy for the slimline card", () => {
    const list = listEnvelopes({ width: inches(3.5), height: inches(8.5) }, { thickness: 0, unit: "in" });
    const easy = list.filter(({ verdict }) => verdict === "easy").map(({ id }) => id);
    expect(easy.slice(0, 3)).toEqual(["env-us-a-long", "env-us-9", "env-us-10"]);
  });

  it("goes by millimetres in a metric project", () => {
    const card = { width: millimetres(108), height: millimetres(150) };
    const verdictIn = (unit: "in" | "mm") =>
      listEnvelopes(card, { thickness: 0, unit }).find(({ id }) => id === "env-iso-c6")?.verdict;
    // 6 mm to spare: just enough where the trade asks for 6 mm, a hair less than 1/4 in.
    expect(verdictIn("mm")).toBe("easy");
    expect(verdictIn("in")).toBe("snug");
  });

  it("prefers the trade of the project among equally good ones", () => {
    // 4 3/4 x 6 1/2 in: B6 and A7 leave 1/4 in and more in their own units.
    const card = { width: inches(4.6), height: inches(6.6) };
    const best = (unit: "in" | "mm") => listEnvelopes(card, { thickness: 0, unit })[0]?.id;
    expect([best("in"), best("mm")]).toEqual(["env-us-a7", "env-iso-b6"]);
  });

  it("puts those in which a card lies loose behind those that are snug", () => {
    const card = { width: inches(2), height: inches(4) };
    const list = listEnvelopes(card, { thickness: 0, unit: "in" });
    const [first] = list;
    expect(first).toMatchObject({ id: "env-us-a1", verdict: "easy", isLoose: true });
    const square = listEnvelopes({ width: inches(5), height: inches(5) }, { thickness: 0, unit: "in" });
    const place = (id: string) => square.findIndex((one) => one.id === id);
    expect(place("env-us-sq-5.25")).toBeLessThan(place("env-us-a8"));
    expect(square[place("env-us-a8")]).toMatchObject({ verdict: "easy", isLoose: true });
    // A thick card takes up more of what there is to spare: A7 leaves an A2 card 1 3/4 in.
    const a7 = (thickness: number) =>
      listEnvelopes({ width: inches(4.25), height: inches(5.5) }, { thickness, unit: "in" }).find(
        ({ id }) => id === "env-us-a7",
      )?.isLoose;
    expect([a7(0), a7(inches(3 / 8))]).toEqual([true, false]);
  });

  it("lists every envelope once, in the order of its verdicts, the same for the same card", () => {
    const side = fc.integer({ min: inches(1), max: inches(14) });
    fc.assert(
      fc.property(side, side, fc.integer({ min: 0, max: inches(1) }), (width, height, thickness) => {
        const list = listEnvelopes({ width, height }, { thickness, unit: "in" });
        expect(new Set(list.map(({ id }) => id)).size).toBe(envelopeSizes.length);
        const groups = list
          .filter(({ verdict }) => verdict !== "too-small")
          .map(({ id, verdict, isLoose }) =>
            [
              isLoose ? "3 loose" : verdict === "easy" ? "1 easy" : "2 snug",
              id.startsWith("env-us-") ? "US" : "else",
            ].join(" "),
          );
        expect(list.slice(0, groups.length).every(({ verdict }) => verdict !== "too-small")).toBe(true);
        expect(groups).toEqual([...groups].sort());
        for (const group of new Set(groups)) {
          const sizes = list
            .filter((_, at) => groups[at] === group)
            .map((one) =>
              one.isLoose ? Math.max(one.clearance.short, one.clearance.long) : one.width * one.height,
            );
          expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
        }
        expect(listEnvelopes({ width: height, height: width }, { thickness, unit: "in" })).toEqual(list);
      }),
    );
  });
});

describe("usual envelopes", () => {
  it("are those of the format, whatever the size, else those of the size", () => {
    const square = { width: inches(4.25), height: inches(4.25) };
    expect(usualEnvelopes("us-slimline", square).map(({ id }) => id)).toEqual([
      "env-us-a-long",
      "env-us-9",
      "env-us-10",
    ]);
    expect(usualEnvelopes(null, square).map(({ id }) => id)).toEqual(["env-us-a2"]);
    expect(usualEnvelopes("sq-145mm", square)).toEqual([]);
  });
});

describe("what an envelope weighs", () => {
  const a7 = { width: inches(5.25), height: inches(7.25) };

  it("is two faces and a quarter more", () => {
    const grams = (5.25 * 7.25 * 0.00064516 * 100 * 5) / 2;
    const found = envelopeMass(a7, { unit: "g/m2", grammage: 100, text: "100 gsm" });
    expect(found.grams).toBeCloseTo(grams, 9);
    expect(found.basis).toBe("estimated");
  });

  it("reads pounds without a grade as bond up to 40 lb, else as text, and says that it assumed so", () => {
    const of = (pounds: number, grade: "bond" | "text" | null) =>
      envelopeMass(a7, { unit: "lb", pounds, grade, text: `${pounds} lb` });
    expect(of(24, null).grams).toBe(of(24, "bond").grams);
    expect(of(70, null).grams).toBe(of(70, "text").grams);
    expect([of(24, null).basis, of(24, "bond").basis]).toEqual(["assumed", "estimated"]);
    expect(envelopeMass(a7, null)).toEqual({ grams: of(24, "bond").grams, basis: "assumed" });
  });
});
