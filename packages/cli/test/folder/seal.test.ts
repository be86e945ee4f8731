import { describe, expect, it } from "vitest";
import { isSealed, seal, sha256 } from "../../src/folder/seal.js";

describe("the seal of a plan", () => {
  const text = '{\n  "sheetwright": "plan",\n  "seal": "",\n  "name": "mat"\n}\n';

  it("tells a text that nobody changed", () => {
    expect(isSealed(seal(text))).toBe(true);
    expect(seal(seal(text))).toBe(seal(text));
  });

  it("tells a text that was changed anywhere", () => {
    const sealed = seal(text);
    expect(isSealed(text)).toBe(false);
    for (let at = 0; at < sealed.length; at++) {
      const other = sealed[at] === "x" ? "y" : "x";
      expect(isSealed(sealed.slice(0, at) + other + sealed.slice(at + 1))).toBe(false);
    }
    expect(isSealed(`${sealed} `)).toBe(false);
  });

  it("is not taken in by a seal in a piece's name", () => {
    const sealed = seal(text.replace("mat", `\\"seal\\": \\"${"0".repeat(64)}\\"`));
    expect(isSealed(sealed)).toBe(true);
    expect(isSealed(sealed.replace("0000", "0001"))).toBe(false);
  });

  it("refuses a text that has no place for one", () => {
    expect(() => seal("{}")).toThrow(RangeError);
    expect(isSealed("{}")).toBe(false);
  });

  it("is SHA-256 (FIPS 180-4, example 'abc' of the NIST example values)", () => {
    expect(sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  });
});
