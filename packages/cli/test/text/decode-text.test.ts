import { describe, expect, it } from "vitest";
import { decodeText } from "../../src/text/decode-text.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe("the bytes of a text file", () => {
  it("are UTF-8, with or without a byte order mark", () => {
    expect(decodeText(bytes("é🌙"), "a.csv", "Save it.")).toBe("é🌙");
    expect(decodeText(bytes("\ufeffé"), "a.csv", "Save it.")).toBe("é");
    expect(decodeText(bytes(""), "a.csv", "Save it.")).toBe("");
  });

  it.each([
    ["in the third line", [..."é\r\nb\n"].join(""), 3],
    ["in the first line", "abc", 1],
    ["as the first byte", "", 1],
    ["after a byte order mark", "\ufeffab\n", 2],
  ])("are refused with their line where they are not: %s", (_, before, line) => {
    const text = new Uint8Array([...bytes(before), 0xe9, 0x2c, 0x0a]);
    expect(decodeText(text, "a.csv", "Save it.")).toMatchObject({
      code: "not-utf-8",
      place: { file: "a.csv", line },
      message: expect.stringMatching(/found the byte E9 \(hexadecimal\).* Save it\.$/),
    });
  });

  it("are refused where a character is cut off at the end", () => {
    expect(decodeText(bytes("ab\n🌙").subarray(0, -1), "a.csv", "Save it.")).toMatchObject({
      place: { line: 2 },
    });
  });

  it("are refused where they are 16-bit text or hold a zero byte", () => {
    expect(decodeText(new Uint8Array([0xff, 0xfe, 0x61, 0]), "a.csv", "Save it.")).toMatchObject({
      code: "not-utf-8",
    });
    expect(decodeText(new Uint8Array([0x61, 0x0a, 0]), "a.csv", "Save it.")).toMatchObject({
      place: { line: 2 },
    });
  });
});
