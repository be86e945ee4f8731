import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findNamedSize, namedSizes, nearestNames } from "../src/index.js";

describe("suggesting names", () => {
  test.each([
    ["us-leter", ["us-letter"]],
    ["us-lettre", ["us-letter"]],
    ["usletter", ["us-letter"]],
    ["US Ledgr", ["us-ledger"]],
    ["env-us-a77", ["env-us-a7"]],
    ["letter", ["us-letter", "us-half-letter", "de-dl-folded-letter"]],
    ["A2", ["us-a2", "iso-a2", "env-us-a2"]],
    ["12x12", ["craft-12x12", "craft-12x12-strip"]],
    ["", []],
    ["papyrus", []],
    ["a".repeat(1000), []],
  ])("for %j gives %j", (text, names) => {
    expect(nearestNames(text)).toEqual(names);
  });

  test("a right name in the wrong namespace is found first", () => {
    expect(nearestNames("us-a4")[0]).toBe("iso-a4");
    expect(nearestNames("iso-letter")[0]).toBe("us-letter");
  });

  test("kind and limit narrow them", () => {
    expect(nearestNames("a6", { kind: "card" })).toEqual(["us-a6", "iso-a6", "card-iso-a6"]);
    expect(nearestNames("a6", { kind: "envelope" })).toEqual(["env-us-a6"]);
    expect(nearestNames("a2", { limit: 1 })).toEqual(["us-a2"]);
  });

  test("an id comes first for itself, and for itself with one letter lost", () => {
    for (const { id } of namedSizes) expect(nearestNames(id)[0]).toBe(id);
    expect(nearestNames("us-lettr")).toEqual(["us-letter"]);
  });

  test("every suggestion for any text can be found", () => {
    const ids = fc.constantFrom(...namedSizes.map(({ id }) => id));
    const texts = fc.oneof(
      fc.string(),
      fc
        .tuple(ids, fc.nat(20), fc.string({ maxLength: 2 }))
        .map(([id, at, text]) => id.slice(0, at) + text + id.slice(at)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const names = nearestNames(text);
        expect(new Set(names).size).toBe(names.length);
        for (const name of names) expect(findNamedSize(name)).toBeDefined();
      }),
    );
  });
});
