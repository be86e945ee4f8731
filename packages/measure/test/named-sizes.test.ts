import { describe, expect, test } from "vitest";
import {
  cardSizes,
  envelopeSizes,
  findNamedSize,
  formatSize,
  inches,
  namedSizes,
  type Size,
  sheetSizes,
} from "../src/index.js";

const sizeOf = (id: string): Size => {
  const size = findNamedSize(id);
  if (size === undefined) throw new Error(`There is no size ${id}.`);
  return { width: size.width, height: size.height };
};

describe("the table of named sizes", () => {
  test("has every id once, in lower case without spaces, and only envelopes start with env-", () => {
    const ids = namedSizes.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, kind } of namedSizes) {
      expect(id).toMatch(/^[a-z0-9]+([.-][a-z0-9]+)*$/);
      expect(id.startsWith("env-")).toBe(kind === "envelope");
    }
    expect(namedSizes).toEqual([...sheetSizes, ...cardSizes, ...envelopeSizes]);
  });

  test("has every name once", () => {
    const names = namedSizes.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test("has no alias twice; one that is an id too is so for the same size of another kind", () => {
    const aliases = namedSizes.flatMap((size) => size.aliases.map((alias) => ({ alias, size })));
    expect(new Set(aliases.map(({ alias }) => alias)).size).toBe(aliases.length);
    for (const { alias, size } of aliases) {
      const other = namedSizes.find(({ id }) => id === alias);
      if (other === undefined) continue;
      expect(other.kind).not.toBe(size.kind);
      expect(sizeOf(alias)).toEqual({ width: size.width, height: size.height });
    }
  });

  test("has every size upright, with a source", () => {
    for (const { width, height, source } of namedSizes) {
      expect(width).toBeGreaterThan(0);
      expect(height).toBeGreaterThanOrEqual(width);
      expect(source).not.toBe("");
    }
  });

  test("has every size on the grid of its unit, but for one that tables round to hundredths of an inch", () => {
    const offGrid = namedSizes.filter((size) => formatSize(size.width, size.height, size).includes("~"));
    expect(offGrid.map(({ id }) => id)).toEqual(["craft-a4-board"]);
  });

  test("is plain data that goes through JSON", () => {
    expect(JSON.parse(JSON.stringify(namedSizes))).toEqual(namedSizes);
  });
});

describe("finding a named size", () => {
  test("US A2 the card, US A2 the envelope and ISO A2 the sheet are three sizes", () => {
    expect(sizeOf("us-a2")).toEqual({ width: inches(4.25), height: inches(5.5) });
    expect(findNamedSize("us-a2").kind).toBe("card");
    expect(findNamedSize("env-us-a2").kind).toBe("envelope");
    expect(findNamedSize("iso-a2").kind).toBe("sheet");
    expect(findNamedSize("a2")).toBeUndefined();
  });

  test("case, spaces and underscores do not matter, an alias does as well", () => {
    for (const text of ["us-letter", "US-Letter", " us letter ", "us_letter"]) {
      expect(findNamedSize(text)?.id).toBe("us-letter");
    }
    expect(findNamedSize("us-ledger")?.id).toBe("us-tabloid");
    expect(findNamedSize("env-iso-C6/C5")?.id).toBe("env-iso-c6-c5");
    expect(findNamedSize("env-us-7-3/4")?.id).toBe("env-us-7.75");
  });

  test("an id goes before an alias, a kind before both", () => {
    expect(findNamedSize("iso-a6")?.kind).toBe("sheet");
    expect(findNamedSize("iso-a6", "card")?.id).toBe("card-iso-a6");
    expect(findNamedSize("iso-a6", "envelope")).toBeUndefined();
    expect(findNamedSize("us-letter", "card")).toBeUndefined();
  });

  test("what is not there is undefined, whatever the text", () => {
    for (const text of ["", "-", "toString", "__proto__", "us-leter"]) {
      expect(findNamedSize(text)).toBeUndefined();
    }
  });
});

describe("the usual sheets of the trade", () => {
  test.each([
    ["us-letter", "8 1/2 x 11 in"], // PWG 5101.1, na_letter
    ["us-legal", "8 1/2 x 14 in"], // PWG 5101.1, na_legal
    ["us-tabloid", "11 x 17 in"], // PWG 5101.1, na_ledger
    ["us-half-letter", "5 1/2 x 8 1/2 in"], // PWG 5101.1, na_invoice
    ["us-index-4x6", "4 x 6 in"], // PWG 5101.1, na_index-4x6
    ["us-5x7", "5 x 7 in"], // PWG 5101.1, na_5x7
    ["us-poster", "22 x 28 in"], // common practice
    ["craft-12x12", "12 x 12 in"], // common practice
    ["craft-6x6", "6 x 6 in"], // common practice
    ["craft-6x8", "6 x 8 in"], // common practice
    ["craft-12x12-strip", "12 x 12 1/4 in"], // from memory
  ])("%s is %s", (id, size) => {
    const { width, height } = sizeOf(id);
    expect(formatSize(width, height, { unit: "in" })).toBe(size);
  });

  test("the A4 board of craft tables is A4 to 0.2 mm", () => {
    const [board, a4] = [sizeOf("craft-a4-board"), sizeOf("iso-a4")];
    expect(Math.abs(board.width - a4.width)).toBeLessThan(0.2 * 1600);
    expect(Math.abs(board.height - a4.height)).toBeLessThan(0.2 * 1600);
    expect(board.width).toBe(inches(8.27));
  });
});
