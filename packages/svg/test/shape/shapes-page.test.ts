import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as measure from "@sheetwright/measure";
import { formatLength, inches, type Ticks } from "@sheetwright/measure";
import * as shapes from "@sheetwright/shapes";
import {
  type Border,
  borderOf,
  catalogue,
  type Die,
  dieSet,
  nextUp,
  outlineOf,
  outlineOfDie,
  resized,
  type Shape,
  sizeOf,
} from "@sheetwright/shapes";
import { describe, expect, test } from "vitest";
import { markdownExamples, runDocExample } from "../../../measure/test/check-doc-examples.js";
import { drawCard } from "../../src/card/draw-card.js";
import * as svg from "../../src/index.js";
import { cardExamples } from "../card/examples.js";

const root = new URL("../../../../", import.meta.url);
const page = readFileSync(new URL("docs/shapes.md", root), "utf8");

const SIZES: readonly string[] = ["diameter", "side", "width", "height"];

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |\n`;
  return `${line(head)}|${head.map(() => "---|").join("")}\n${rows.map(line).join("")}`;
}

const say = (length: Ticks) => formatLength(length, { unit: "in", approximate: false });
const borderInWords = ({ least, most }: Border) =>
  least < 0
    ? "the upper one sticks out"
    : say(least) === say(most)
      ? say(least)
      : `${say(least).replace(/ in$/, "")} to ${say(most)}`;

/** Two inches across, or as wide. */
const two: readonly Shape[] = [
  { shape: "circle", diameter: inches(2) },
  { shape: "oval", width: inches(2), height: inches(1.5) },
  { shape: "square", side: inches(2) },
  { shape: "rectangle", width: inches(2), height: inches(3), corners: "round" },
  { shape: "scalloped-circle", diameter: inches(2) },
  { shape: "scalloped-square", side: inches(2) },
  { shape: "polygon", sides: 6, diameter: inches(2) },
  { shape: "star", diameter: inches(2) },
  { shape: "heart", width: inches(2), height: inches(2) },
  { shape: "arch", width: inches(2), height: inches(3) },
  { shape: "tag", width: inches(2), height: inches(3) },
];

const nameOf = (shape: Shape) => (shape.shape === "polygon" ? "hexagon" : shape.shape.replaceAll("-", " "));

/** What the next sizes of its own set show round a shape. */
function stepTable(): string {
  const rows = two.map((shape) => {
    const upper = outlineOf(shape);
    const ups = [1, 2, 3].map((steps) => {
      const by = steps * inches(1 / 4);
      const size = sizeOf(shape);
      const next = resized(
        shape,
        "diameter" in size ? size.diameter + by : { width: size.width + by, height: size.height + by },
      );
      return borderInWords(borderOf(upper, outlineOf(next)));
    });
    return [nameOf(shape), ...ups];
  });
  return table(["shape, 2 in", "1/4 in larger", "1/2 in larger", "3/4 in larger"], rows);
}

const PAIRS: readonly (readonly [upper: Shape, under: Shape])[] = [
  [
    { shape: "circle", diameter: inches(2) },
    { shape: "circle", diameter: inches(2) },
  ],
  [
    { shape: "circle", diameter: inches(2) },
    { shape: "scalloped-circle", diameter: inches(2) },
  ],
  [
    { shape: "circle", diameter: inches(2) },
    { shape: "square", side: inches(2) },
  ],
  [
    { shape: "scalloped-circle", diameter: inches(2) },
    { shape: "circle", diameter: inches(2) },
  ],
  [
    { shape: "square", side: inches(2) },
    { shape: "scalloped-square", side: inches(2) },
  ],
  [
    { shape: "square", side: inches(2) },
    { shape: "circle", diameter: inches(2) },
  ],
  [
    { shape: "heart", width: inches(2), height: inches(2) },
    { shape: "heart", width: inches(2), height: inches(2) },
  ],
  [
    { shape: "star", diameter: inches(2) },
    { shape: "star", diameter: inches(2) },
  ],
  [
    { shape: "star", diameter: inches(2) },
    { shape: "circle", diameter: inches(2) },
  ],
];

/** The smallest die of a set from 1 to 6 in by 1/4 in that shows 1/8 in all round. */
function nextUpTable(): string {
  const rows = PAIRS.map(([upper, under]) => {
    const dies: readonly Die[] = dieSet(under, { from: inches(1), to: inches(6) });
    const { next } = nextUp(outlineOf(upper), inches(1 / 8), dies);
    if (next === null) throw new Error(`No ${under.shape} shows the border.`);
    expect(borderOf(outlineOf(upper), outlineOfDie(next.die))).toEqual(next.border);
    return [
      `${nameOf(upper)}, 2 in`,
      nameOf(under),
      next.die.name.replaceAll("-", " "),
      borderInWords(next.border),
    ];
  });
  return table(["on top", "set below", "smallest die that shows 1/8 in", "what it shows"], rows);
}

function catalogueTable(): string {
  return table(
    ["shape", "what it is", "size", "what else can be set"],
    catalogue.map(({ id, about, parameters }) => {
      const has = (key: string) => parameters.some((one) => one.key === key);
      const size = has("diameter")
        ? "across"
        : has("side")
          ? "one side"
          : has("width")
            ? "width x height"
            : "of the outer shape";
      const free = parameters.filter(({ key }) => !SIZES.includes(key)).map(({ key }) => `\`${key}\``);
      return [`\`${id}\``, about.replace(/\.$/, ""), size, free.join(", ")];
    }),
  );
}

describe("the page on shapes", () => {
  test.each([
    ["the catalogue", catalogueTable],
    ["what the next sizes show", stepTable],
    ["the next die up", nextUpTable],
  ])("has the table of %s as the code gives it", (_, made) => {
    expect(page).toContain(`\n\n${made()}\n`);
  });

  test.each(markdownExamples("docs/shapes.md", page))(
    "has an example that gives what it says, at line $line",
    (example) => runDocExample(example, { ...measure, ...shapes, ...svg }),
  );

  test("shows a card with shapes", async () => {
    const example = cardExamples.find(({ name }) => name === "harvest-moon");
    if (example === undefined) throw new Error("There is no such example.");
    await expect(drawCard(example.source, example.number)).toMatchFileSnapshot(
      fileURLToPath(new URL("docs/images/harvest-moon.svg", root)),
    );
  });
});
