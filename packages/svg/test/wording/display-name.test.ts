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

  test("composes letters and keeps one mark more, so that no stack of marks reaches into other lines", () => {
    expect(displayName({ id: "a", name: "e\u0302\u0301" })).toBe("\u1ebf");
    expect(displayName({ id: "a", name: "o\u0323\u0301" })).toBe("\u1ecd\u0301");
    expect(displayName({ id: "a", name: "a\u0301\u0301\u0301\u0301b" })).toBe("\u00e1\u0301b");
  });
});
