import { describe, expect, test } from "vitest";
import { displayName } from "../../src/wording/display-name.js";

describe("displayName", () => {
  test("prefers the name and falls back to the id", () => {
    expect(displayName({ id: "a", name: "Mat" })).toBe("Mat");
    expect(displayName({ id: "a" })).toBe("a");
    expect(displayName({ id: "a", name: " \t" })).toBe("a");
    expect(displayName({ id: "", name: "" })).toBe("(no name)");
  });

  test("puts a name on one line without what cannot be shown", () => {
    expect(displayName({ id: "a", name: "  star\n pad,\u00a0 comets\u0007 " })).toBe("star pad, comets");
    expect(displayName({ id: "a", name: "\u202eabc\u200f\ud800" })).toBe("abc");
  });
});
