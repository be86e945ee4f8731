// Files made to take all memory or time. That each is refused by a count, before the work is done, is what is tested; how long
// it takes is not.
import { describe, expect, test } from "vitest";
import { OutlineReadError, outlinesOfPath, readOutlines } from "../../src/svg/index.js";

const file = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">${body}</svg>`;
const SQUARE = '<path id="square" d="M10 10h40v40h-40z"/>';
/** Long enough that work that grows with its square would not end. */
const LONG = 300_000;

function codeOf(read: () => unknown): string {
  try {
    read();
  } catch (error) {
    if (error instanceof OutlineReadError) return error.code;
    throw error;
  }
  return "read";
}

describe("hostile files", () => {
  test.each<[string, () => string]>([
    ["a path of 100 MB", () => file(`<path d="M0 0${"L1 1L0 1".repeat(12_500_000)}z"/>`)],
    ["a million elements", () => file(SQUARE.repeat(1_000_000))],
    ["as many elements as the characters allow", () => file("<g/>".repeat(LONG / 4))],
    ["groups a hundred thousand deep", () => file("<g>".repeat(100_000))],
    [
      "drawings in drawings that use each other",
      () => {
        const levels = Array.from(
          { length: 30 },
          (_, i) => `<g id="a${i}">${`<use href="#a${i + 1}"/>`.repeat(10)}</g>`,
        );
        return file(`<defs>${levels.join("")}<g id="a30">${SQUARE}</g></defs><use href="#a0"/>`);
      },
    ],
    [
      "a long path used again and again",
      () =>
        file(
          `<defs><path id="p" d="M0 0${" ".repeat(200_000)}h1v1z"/></defs>${'<use href="#p"/>'.repeat(3000)}`,
        ),
    ],
    [
      "half a million attributes",
      () => file(`<g ${Array.from({ length: 100_000 }, (_, i) => `a${i}=""`).join(" ")}/>`),
    ],
    ["more path commands than fit", () => file(`<path d="M0 0${"h1v1".repeat(60_000)}z"/>`)],
    ["more points than fit", () => file(`<polygon points="${"1 1 2 2 ".repeat(60_000)}"/>`)],
    [
      "a comb of nine thousand teeth",
      () => {
        const teeth = Array.from(
          { length: 9000 },
          (_, i) => `L${i / 450} ${i % 2 === 0 ? 29 + i / 9000 : 0}`,
        );
        return file(`<path d="M0 0${teeth.join("")}V-1z"/>`);
      },
    ],
    [
      "a grid of a million crossings",
      () => {
        const bars = Array.from(
          { length: 1000 },
          (_, i) => `M${i / 20} 0v50h.01v-50zM0 ${i / 20}h50v.01h-50z`,
        );
        return file(`<path d="${bars.join("")}"/>`);
      },
    ],
    [
      "more style rules than fit",
      () =>
        file(
          `<style>${Array.from({ length: 5000 }, (_, i) => `.a${i}{fill:red}`).join("")}</style>${SQUARE}`,
        ),
    ],
  ])("%s is over a limit", (_, write) => {
    const text = write();
    // Fewer elements than by default, which is the same count sooner.
    expect(codeOf(() => readOutlines(text, { limits: { elements: 5000 } }))).toBe("over-limit");
  });

  test("path data are over a limit too", () => {
    expect(codeOf(() => outlinesOfPath("M0 0".repeat(25_000_000)))).toBe("over-limit");
    expect(codeOf(() => outlinesOfPath(`M0 0${"z".repeat(LONG)}`))).toBe("over-limit");
    const loops = "C3000 0 0 3000 3000 3000C0 3000 3000 0 0 0".repeat(4000);
    expect(codeOf(() => outlinesOfPath(`M0 0${loops}`, { limits: { corners: 9000 } }))).toBe("over-limit");
  });

  test.each<[string, string, string]>([
    ["zeros", `<path opacity="${"0".repeat(LONG)}x" d="M1 1h9v9z"/>`, "no-outline"],
    ["spaces in a style", `<path style="fill:red${" ".repeat(LONG)}!x" d="M1 1h9v9z"/>`, "read"],
    ["spaces after a unit", `<rect width="1mm${" ".repeat(LONG)}x"/>`, "malformed-value"],
    ["digits", `<path d="M${"1".repeat(LONG)} 0h1v1z"/>`, "too-far"],
    ["open comments of a style", `<style>${"/*".repeat(LONG / 2)}</style>${SQUARE}`, "read"],
    ["open blocks of a style", `<style>${"a{".repeat(LONG / 2)}</style>${SQUARE}`, "read"],
    ["transforms", `<g transform="${"scale(1)".repeat(LONG / 8)}">${SQUARE}</g>`, "malformed-value"],
    ["lines that are not closed", `<path d="${"M0 0h1".repeat(40_000)}"/>`, "open-path"],
    [
      "an element that uses the file",
      '<use href="#a"/><g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>',
      "circular-reference",
    ],
  ])("endless %s end", (_, body, code) => expect(codeOf(() => readOutlines(file(body)))).toBe(code));

  test("limits can be set", () => {
    const read = (limits: object) => codeOf(() => readOutlines(file(`<g>${SQUARE}</g>`), { limits }));
    expect(read({})).toBe("read");
    for (const limits of [
      { characters: 100 },
      { elements: 2 },
      { depth: 2 },
      { commands: 4 },
      { corners: 3 },
    ]) {
      expect(read(limits)).toBe("over-limit");
    }
  });
});
