import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dropForbidden } from "../../src/writer/escape-xml.js";
import { element, writeDocument } from "../../src/writer/svg-element.js";
import { readStrictly, readWithSvgson, textOf } from "../read-svg.js";

/** Any JavaScript string: lone surrogates, control characters and all. */
const anyString = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.string({ unit: fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code)) }),
  fc.string({
    unit: fc.constantFrom("&", "<", ">", '"', "'", "]", "]]>", "&amp;", "\t", "\n", "\r", " ", "é", "灯"),
  }),
);

function documentWith(text: string): string {
  return writeDocument(element("svg", {}, [element("text", { "data-x": text, x: 1 }, [text])]));
}

describe("writeDocument", () => {
  test("writes elements a line each, numbers with three decimals, text on one line", () => {
    const root = element("svg", { width: "10mm", viewBox: "0 0 10 5" }, [
      element("g", { id: "a" }, [element("rect", { x: 1 / 3, y: -0, width: undefined })]),
      element("text", { x: 2 }, ['5 < 7 & "so"']),
      element("text", {}, [element("tspan", { x: 1 }, ["a"]), element("tspan", { x: 1 }, ["b"])]),
    ]);
    expect(writeDocument(root)).toBe(
      [
        '<svg width="10mm" viewBox="0 0 10 5">',
        '  <g id="a">',
        '    <rect x="0.333" y="0"/>',
        "  </g>",
        '  <text x="2">5 &lt; 7 &amp; &quot;so&quot;</text>',
        '  <text><tspan x="1">a</tspan><tspan x="1">b</tspan></text>',
        "</svg>",
        "",
      ].join("\n"),
    );
  });

  test("refuses names that XML would not read back", () => {
    expect(() => element("a b")).toThrow(TypeError);
    expect(() => element("g", { "1st": "x" })).toThrow(TypeError);
  });

  test("gives any string back from text and attribute, without the characters that XML forbids", () => {
    fc.assert(
      fc.property(anyString, (text) => {
        const written = documentWith(text);
        const read = readStrictly(written);
        expect(read.children[0]?.text).toBe(dropForbidden(text));
        expect(read.children[0]?.attributes["data-x"]).toBe(dropForbidden(text));
      }),
    );
  });

  test("is read alike by svgson", () => {
    fc.assert(
      fc.property(anyString, (text) => {
        const [node] = readWithSvgson(documentWith(text)).children;
        expect(node === undefined ? "" : textOf(node)).toBe(dropForbidden(text));
        expect(node?.attributes["data-x"]).toBe(dropForbidden(text));
      }),
    );
  });

  test("drops exactly what XML 1.0 forbids (production 2 of the Recommendation, Fifth Edition)", () => {
    const kept = [
      "\t",
      "\n",
      "\r",
      " ",
      "\u007f",
      "\u0085",
      "\ud7ff",
      "\ue000",
      "\ufffd",
      "\u{10000}",
      "\u{10ffff}",
    ];
    const dropped = [
      "\u0000",
      "\u0008",
      "\u000b",
      "\u000c",
      "\u001f",
      "\ud800",
      "\udfff",
      "\ufffe",
      "\uffff",
    ];
    for (const character of kept) expect(dropForbidden(`a${character}b`)).toBe(`a${character}b`);
    for (const character of dropped) expect(dropForbidden(`a${character}b`)).toBe("ab");
  });
});
