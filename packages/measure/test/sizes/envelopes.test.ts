import { describe, expect, test } from "vitest";
import { envelopeSizes, findNamedSize, formatSize, inches, millimetres, type Size } from "../../src/index.js";

const envelope = (id: string) => {
  const size = findNamedSize(id, "envelope");
  if (size === undefined) throw new Error(`There is no envelope ${id}.`);
  return size;
};

const clearance = (outer: Size, inner: Size) => [outer.width - inner.width, outer.height - inner.height];

describe("envelopes", () => {
  test("a usual enclosure is smaller than its envelope both ways, but for one printed as long", () => {
    for (const { id, width, height, enclosure } of envelopeSizes) {
      if (enclosure === undefined || id === "env-us-booklet-6x9") continue;
      expect(enclosure.width, id).toBeLessThan(width);
      expect(enclosure.height, id).toBeLessThan(height);
    }
    // Published US envelope size charts print an enclosure of 5 3/4 x 9 in for the 6 x 9 in booklet envelope.
    const booklet = envelope("env-us-booklet-6x9");
    expect(clearance(booklet, booklet.enclosure as Size)).toEqual([inches(0.25), 0]);
  });

  test("only the No. 5 1/2 baronial has no enclosure of its own; it is an A2 envelope in another cut", () => {
    const without = envelopeSizes.filter(({ enclosure }) => enclosure === undefined);
    expect(without.map(({ id }) => id)).toEqual(["env-us-5.5-baronial"]);
    expect(clearance(envelope("env-us-a2"), envelope("env-us-5.5-baronial"))).toEqual([0, 0]);
  });
});

describe("US envelopes", () => {
  // Published US envelope size charts; those marked so are common practice.
  test.each([
    ["env-us-a1", "3 5/8 x 5 1/8 in", "3 1/2 x 4 3/4 in"],
    ["env-us-a2", "4 3/8 x 5 3/4 in", "4 1/8 x 5 1/2 in"],
    ["env-us-a6", "4 3/4 x 6 1/2 in", "4 1/2 x 6 1/4 in"],
    ["env-us-a7", "5 1/4 x 7 1/4 in", "5 x 7 in"],
    ["env-us-a8", "5 1/2 x 8 1/8 in", "5 1/4 x 7 7/8 in"],
    ["env-us-a9", "5 3/4 x 8 3/4 in", "5 1/2 x 8 1/2 in"],
    ["env-us-a10", "6 x 9 1/2 in", "5 3/4 x 9 1/4 in"],
    ["env-us-a-long", "3 7/8 x 8 7/8 in", "3 5/8 x 8 5/8 in"],
    ["env-us-6.75", "3 5/8 x 6 1/2 in", "3 1/2 x 6 1/4 in"],
    ["env-us-7.75", "3 7/8 x 7 1/2 in", "3 3/4 x 7 1/4 in"],
    ["env-us-9", "3 7/8 x 8 7/8 in", "3 3/4 x ~8 43/64 in"],
    ["env-us-10", "4 1/8 x 9 1/2 in", "4 x 9 1/4 in"],
    ["env-us-14", "5 x 11 1/2 in", "4 3/4 x 11 1/4 in"],
    ["env-us-sq-5.25", "5 1/4 x 5 1/4 in", "5 x 5 in"], // common practice
    ["env-us-mini-slim", "3 1/4 x 6 1/4 in", "3 x 6 in"], // common practice
  ])("%s is %s for %s", (id, size, enclosure) => {
    const found = envelope(id);
    expect(formatSize(found.width, found.height, { unit: "in" })).toBe(size);
    const inner = found.enclosure as Size;
    expect(formatSize(inner.width, inner.height, { unit: "in" })).toBe(enclosure);
  });

  // Published US envelope size charts: an enclosure is 1/4 in smaller than its envelope both ways.
  test("the A series from A2 and the square ones take what is 1/4 in smaller both ways", () => {
    const quarter = [
      "env-us-a2",
      "env-us-a6",
      "env-us-a7",
      "env-us-a8",
      "env-us-a9",
      "env-us-a10",
      "env-us-a-long",
    ];
    const square = envelopeSizes.filter(({ style }) => style === "square").map(({ id }) => id);
    expect(square).toHaveLength(9);
    for (const id of [...quarter, ...square]) {
      const found = envelope(id);
      expect(clearance(found, found.enclosure as Size), id).toEqual([inches(0.25), inches(0.25)]);
    }
  });
});

describe("ISO 269 envelopes", () => {
  // ISO 269: the C n envelope is made for a sheet of A n, and has the size C n.
  test.each([3, 4, 5, 6])("C%i is the C size and takes the A sheet of the same number", (n) => {
    const found = envelope(`env-iso-c${n}`);
    expect(clearance(found, findNamedSize(`iso-c${n}`, "sheet") as Size)).toEqual([0, 0]);
    expect(clearance(found.enclosure as Size, findNamedSize(`iso-a${n}`, "sheet") as Size)).toEqual([0, 0]);
  });

  // ISO 269: the B n envelope takes the C n envelope.
  test.each([4, 5, 6])("B%i is the B size and takes the C envelope of the same number", (n) => {
    const found = envelope(`env-iso-b${n}`);
    expect(clearance(found, findNamedSize(`iso-b${n}`, "sheet") as Size)).toEqual([0, 0]);
    expect(clearance(found.enclosure as Size, envelope(`env-iso-c${n}`))).toEqual([0, 0]);
  });

  // ISO 269: DL is 110 x 220 mm, for a third of A4.
  test("DL, C6/C5 and C7/C6 take a third of A4, A4 and A5", () => {
    expect(envelope("env-iso-dl")).toMatchObject({ width: millimetres(110), height: millimetres(220) });
    for (const [id, sheet] of [
      ["env-iso-dl", "iso-a4"],
      ["env-iso-c6-c5", "iso-a4"],
      ["env-iso-c7-c6", "iso-a5"],
    ] as const) {
      const { width, height } = envelope(id).enclosure as Size;
      const whole = findNamedSize(sheet);
      // A5 is 210 mm long, its third 70 mm; A4 is 297 mm long, its third 99 mm.
      expect({ width: 3 * width, height }, id).toEqual({ width: whole.height, height: whole.width });
    }
  });

  test("E4 is 280 x 400 mm, for a B4 envelope", () => {
    const found = envelope("env-iso-e4");
    expect(formatSize(found.width, found.height, { unit: "mm" })).toBe("280 x 400 mm");
    expect(clearance(found.enclosure as Size, envelope("env-iso-b4"))).toEqual([0, 0]);
  });
});
