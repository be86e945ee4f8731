import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { TICKS_PER_MM } from "@sheetwright/measure";
import { cutOrder } from "@sheetwright/packing";
import fc from "fast-check";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { drawLayout } from "../../src/drawing/draw-layout.js";
import { layOut } from "../../src/layout/lay-out.js";
import { SEVEN_POINTS } from "../drawing/expect-well-set.js";
import { excessOf, overlapOf, overlappingPairs } from "../drawing/text-boxes.js";
import type { Plan } from "../plans/build.js";
import { type Example, examples } from "../plans/examples.js";
import { plainCutOrder } from "../plans/plain-cut-order.js";
import { randomMarkedPlan } from "../plans/random-marks.js";
import { randomPlan } from "../plans/random-plan.js";
import { attributeOf, byId, numberOf, readStrictly } from "../read-svg.js";
import { openChromium } from "./open-chromium.js";
import { readPdfPage } from "./pdf-lines.js";

const require = createRequire(import.meta.url);

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

let browser: Browser | undefined;
let page: Page;
beforeAll(async () => {
  browser = await openChromium();
  // One page for all: in a single process, closing a page may end the browser.
  page = await browser.newPage();
});
afterAll(async () => {
  await browser?.close();
});

function firstLayout({ problem, packing }: Plan) {
  const [layout] = packing.layouts;
  const sheet = problem.sheets.find(({ id }) => id === layout?.sheet);
  if (layout === undefined || sheet === undefined) throw new Error("A plan has a layout and its sheet.");
  return { layout, sheet, kerf: problem.kerf ?? 0 };
}

function drawExample(example: Example): string {
  const { sheet, layout, kerf } = firstLayout(example);
  const cuts = example.problem.mode === "stopped" ? {} : { cuts: cutOrder(sheet, layout, { kerf }) };
  const marks = example.marks === undefined ? {} : { marks: example.marks };
  return drawLayout(example.problem, example.packing, 0, { unit: example.unit, ...cuts, ...marks });
}

describe("svg.js", () => {
  test("reads the pieces of every example within 0.01 mm of the plan", async () => {
    await page.setContent("<body></body>");
    await page.addScriptTag({ path: join(dirname(require.resolve("@svgdotjs/svg.js")), "svg.min.js") });
    for (const example of examples) {
      const { sheet, layout, kerf } = firstLayout(example);
      const found = (await page.evaluate(
        `(() => {
          document.body.innerHTML = ${JSON.stringify(drawExample(example))};
          const root = SVG(document.querySelector("svg"));
          const boxOf = (shape) => { const { x, y, width, height } = shape.bbox(); return { x, y, width, height }; };
          const origin = boxOf(root.findOne('[data-role="sheet"]'));
          return [...root.find('[data-role="piece"]')].map(boxOf)
            .map((box) => ({ ...box, x: box.x - origin.x, y: box.y - origin.y }));
        })()`,
      )) as readonly Box[];
      const planned = [...layOut(sheet, layout, kerf).pieces].sort((a, b) => a.level - b.level);
      expect(found).toHaveLength(planned.length);
      planned.forEach(({ x, y, width, height }, i) => {
        const box = found[i] as Box;
        const off = [
          box.x - x / TICKS_PER_MM,
          box.y - y / TICKS_PER_MM,
          box.width - width / TICKS_PER_MM,
          box.height - height / TICKS_PER_MM,
        ];
        expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.01);
      });
    }
  });
});

/** A text as the browser lays it out: its box in millimetres of the page, and what it labels. */
interface LaidText extends Box {
  readonly text: string;
  readonly size: number;
  readonly of: string | null;
}

interface LaidDrawing {
  readonly page: Box;
  readonly texts: readonly LaidText[];
  readonly homes: Readonly<Record<string, Box>>;
  readonly badges: readonly Box[];
}

const LAY_OUT = `(svgs) => svgs.map((svg) => {
  document.body.innerHTML = svg;
  const root = document.querySelector("svg");
  const plain = ({ x, y, width, height }) => ({ x, y, width, height });
  // A quarter turn maps a box to a box, so its two corners are enough.
  const onPage = (shape) => {
    const box = shape.getBBox();
    const matrix = root.getCTM().inverse().multiply(shape.getCTM());
    const a = new DOMPoint(box.x, box.y).matrixTransform(matrix);
    const b = new DOMPoint(box.x + box.width, box.y + box.height).matrixTransform(matrix);
    return { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y) };
  };
  const homes = {};
  for (const shape of root.querySelectorAll("rect[data-role]")) homes[shape.id] = plain(shape.getBBox());
  return {
    page: plain(root.querySelector("#page").getBBox()),
    texts: [...root.querySelectorAll("text")].map((text) => ({
      ...onPage(text),
      text: text.textContent,
      size: Math.min(...(text.children.length === 0 ? [text] : [...text.children])
        .map((line) => Number.parseFloat(getComputedStyle(line).fontSize))),
      of: text.closest("[data-of]")?.dataset.of ?? null,
    })),
    homes,
    badges: [...root.querySelectorAll("[id^=cut-number-] rect")].map((badge) => plain(badge.getBBox())),
  };
})`;

async function layOutInPage(svgs: readonly string[]): Promise<readonly LaidDrawing[]> {
  return (await page.evaluate(`(${LAY_OUT})(${JSON.stringify(svgs)})`)) as readonly LaidDrawing[];
}

/** What is wrong with a drawing as the browser sets it. getBBox gives single precision, hence the hundredth. */
function faultsOf({ page, texts, homes, badges }: LaidDrawing): readonly string[] {
  const faults: string[] = [];
  for (const text of texts) {
    if (text.size < SEVEN_POINTS) faults.push(`"${text.text}" is smaller than 7 pt`);
    if (excessOf(text, page) > 0) faults.push(`"${text.text}" leaves the page`);
    if (text.of === null) continue;
    const home = homes[text.of];
    if (home === undefined || excessOf(text, home) > 0.01) faults.push(`"${text.text}" leaves its piece`);
    if (badges.some((badge) => overlapOf(badge, text) > 0.01))
      faults.push(`a cut number covers "${text.text}"`);
  }
  for (const [a, b] of overlappingPairs(texts, 0.01)) faults.push(`"${a.text}" overlaps "${b.text}"`);
  return faults;
}

describe("text in a real browser", () => {
  // Laying text out takes a browser long, so a quarter of the usual number of cases goes through it.
  const numRuns = Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 4);
  const bare = fc
    .sample(randomPlan({ windows: true }), { numRuns, seed: 20_260_101 })
    .map((plan) => drawLayout(plan.problem, plan.packing, 0, { cuts: plainCutOrder(plan, 0) }));
  const marked = fc
    .sample(randomMarkedPlan({ windows: true }), { numRuns, seed: 20_260_102 })
    .map(({ problem, packing, marks }) => {
      const cuts = plainCutOrder({ problem, packing }, 0);
      return drawLayout(problem, packing, 0, { cuts, marks, title: "Lantern Night workshop" });
    });
  const svgs = [...examples.map(drawExample), ...bare, ...marked];

  // Liberation Sans has the widths of Helvetica and Arial; it comes with pdfjs-dist.
  const fontFace = (file: string, weight: string) => {
    const font = readFileSync(require.resolve(`pdfjs-dist/standard_fonts/${file}`)).toString("base64");
    return `@font-face { font-family: Helvetica; font-weight: ${weight}; src: url(data:font/ttf;base64,${font}); }`;
  };
  const helvetica = `${fontFace("LiberationSans-Regular.ttf", "normal")} ${fontFace("LiberationSans-Bold.ttf", "bold")}`;

  test.each([
    ["in the widths of Helvetica", helvetica],
    ["in a wider and taller font, where Helvetica is missing (Open Sans)", ""],
  ])("stays inside its piece, apart from other text, and legible: %s", async (_, style) => {
    await page.setContent(`<style>${style}</style><body></body>`);
    await page.evaluate(
      "Promise.all([document.fonts.load('10px Helvetica'), document.fonts.load('bold 10px Helvetica')])",
    );
    expect(await page.evaluate("document.fonts.size")).toBe(style === "" ? 0 : 2);
    const laid = await layOutInPage(svgs);
    expect(laid.flatMap((drawing, i) => faultsOf(drawing).map((fault) => `${i}: ${fault}`))).toEqual([]);
    expect(
      laid.reduce((sum, { texts }) => sum + texts.filter(({ of }) => of !== null).length, 0),
    ).toBeGreaterThan(1000);
  });
});

describe("a sheet printed to PDF", () => {
  test.each(examples.filter(({ name }) => /card-bases|sixty|tiny|long-names/.test(name)))(
    "$name: has the page's size, and its 100 mm ruler measures 100 mm",
    async (example) => {
      const svg = drawExample(example);
      const root = readStrictly(svg);
      const [width, height] = [attributeOf(root, "width"), attributeOf(root, "height")];
      await page.setContent(
        `<style>@page { size: ${width} ${height}; margin: 0 } html, body { margin: 0 } svg { display: block }</style>${svg}`,
      );
      const pdf = await readPdfPage(await page.pdf({ preferCSSPageSize: true, printBackground: true }));

      expect(Math.abs(pdf.width - Number.parseFloat(width))).toBeLessThan(0.1);
      expect(Math.abs(pdf.height - Number.parseFloat(height))).toBeLessThan(0.1);
      for (const [id, length] of [
        ["ruler-100-mm", 100],
        ["ruler-4-in", 101.6],
      ] as const) {
        const drawn = byId(root, id);
        const ends = ["x1", "y1", "x2", "y2"].map((name) => numberOf(drawn, name));
        const distance = ({ x1, y1, x2, y2 }: (typeof pdf.lines)[number]) =>
          Math.max(...[x1, y1, x2, y2].map((value, i) => Math.abs(value - (ends[i] as number))));
        const printed = pdf.lines.reduce((best, line) => (distance(line) < distance(best) ? line : best));
        expect(distance(printed)).toBeLessThan(0.1);
        expect(printed.y1).toBeCloseTo(printed.y2, 6);
        expect(Math.abs(printed.x2 - printed.x1 - length)).toBeLessThan(0.1);
      }
    },
  );
});
