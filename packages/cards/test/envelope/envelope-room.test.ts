import {
  envelopeSizes,
  findNamedSize,
  inches,
  millimetres,
  type Size,
  type Unit,
} from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { type EnvelopeVerdict, envelopeRoom, flatsOf, formatFront } from "../../src/index.js";

const size = (width: number, height: number, unit: Unit): Size =>
  unit === "in"
    ? { width: inches(width), height: inches(height) }
    : { width: millimetres(width), height: millimetres(height) };

const verdict = (card: Size, envelope: Size, unit: Unit, thickness = 0) =>
  envelopeRoom(card, envelope, { thickness, unit }).verdict;

describe("published clearances", () => {
  // Published US envelope size charts, but for the hobby A2 card (common practice, no source).
  it.each<[string, Size, Size, EnvelopeVerdict]>([
    ["a card 1/4 in smaller both ways", size(5, 7, "in"), size(5.25, 7.25, "in"), "easy"],
    ["a square card with the least clearance of 1/4 in", size(6, 6, "in"), size(6.25, 6.25, "in"), "snug"],
    ["a square card with the recommended 1/2 in", size(5.5, 5.5, "in"), size(6, 6, "in"), "easy"],
    ["a 6 x 6 in card in a 6 x 6 in envelope", size(6, 6, "in"), size(6, 6, "in"), "too-small"],
    ["the enclosure that charts give for A2", size(4.125, 5.5, "in"), size(4.375, 5.75, "in"), "easy"],
    ["the hobby A2 card, 1/8 and 1/4 in", size(4.25, 5.5, "in"), size(4.375, 5.75, "in"), "snug"],
  ])("judges %s as the trade does", (_, card, envelope, expected) => {
    expect(verdict(card, envelope, "in")).toBe(expected);
  });

  // Print-trade guidance (DE) for insertion by machine; the others computed from the sizes.
  it.each<[string, Size, Size]>([
    ["8 and 15 mm, for insertion by machine", size(100, 100, "mm"), size(108, 115, "mm")],
    ["9 and 14 mm, A6 in C6", size(105, 148, "mm"), size(114, 162, "mm")],
    ["11 and 10 mm, 99 x 210 in DL", size(99, 210, "mm"), size(110, 220, "mm")],
  ])("finds %s easy", (_, card, envelope) => {
    expect(verdict(card, envelope, "mm")).toBe("easy");
  });

  // Common practice, no source: a raised card needs its thickness more both ways.
  it.each<[number, EnvelopeVerdict]>([
    [1 / 16, "easy"],
    [5 / 64, "snug"],
    [1 / 4, "snug"],
    [17 / 64, "too-small"],
  ])("asks more for a 5 x 7 in card %d in thick in A7", (thickness, expected) => {
    expect(verdict(size(5, 7, "in"), size(5.25, 7.25, "in"), "in", inches(thickness))).toBe(expected);
  });
});

// Published US envelope size charts, some common practice: the largest card usually put in each envelope, in inches. Left
// out are a #6 1/2 booklet whose enclosure is printed as long as the envelope, and No. 5 1/2, which has none.
const ENCLOSURES = [
  ["us-a1", 3.5, 4.75],
  ["us-5bar", 3.875, 5.375],
  ["us-a2", 4.125, 5.5],
  ["us-a6", 4.5, 6.25],
  ["us-a7", 5, 7],
  ["us-a8", 5.25, 7.875],
  ["us-a9", 5.5, 8.5],
  ["us-a10", 5.75, 9.25],
  ["us-a-long", 3.625, 8.625],
  ["us-6.25", 3.25, 5.75],
  ["us-6.75", 3.5, 6.25],
  ["us-7", 3.5, 6.5],
  ["us-7.75", 3.75, 7.25],
  ["us-8.625", 3.5, 8.375],
  ["us-9", 3.75, 8.675],
  ["us-10", 4, 9.25],
  ["us-11", 4.25, 10.125],
  ["us-12", 4.5, 10.75],
  ["us-14", 4.75, 11.25],
  ["us-16", 5.75, 11.75],
  ["us-sq-3.25", 3, 3],
  ["us-sq-4.25", 4, 4],
  ["us-mini-slim", 3, 6],
  ["us-4.25x6.25", 4, 6],
  ["us-sq-5", 4.75, 4.75],
  ["us-sq-5.25", 5, 5],
  ["us-sq-5.5", 5.25, 5.25],
  ["us-sq-5.75", 5.5, 5.5],
  ["us-sq-6", 5.75, 5.75],
  ["us-sq-6.25", 6, 6],
  ["us-sq-6.5", 6.25, 6.25],
] as const;

describe("what charts put in US envelopes", () => {
  it.each(ENCLOSURES)("goes in %s", (id, short, long) => {
    const envelope = findNamedSize(`env-${id}`, "envelope");
    if (envelope === undefined) throw new Error(`There is no envelope ${id}.`);
    expect(verdict(size(short, long, "in"), envelope, "in")).not.toBe("too-small");
  });

  it("is known for every US envelope but two", () => {
    const ids = envelopeSizes.map(({ id }) => id).filter((id) => id.startsWith("env-us-"));
    const listed = new Set(ENCLOSURES.map(([id]) => `env-${id}`));
    expect(ids.filter((id) => !listed.has(id))).toEqual(["env-us-5.5-baronial", "env-us-booklet-6x9"]);
  });
});

// ISO 269 and DIN 678 (as copied in an encyclopaedia): what each envelope is for, in millimetres.
describe("what ISO envelopes are for", () => {
  it.each([
    ["dl", 99, 210],
    ["c7-c6", 70, 148],
    ["c6", 105, 148],
    ["c6-c5", 99, 210],
    ["c5", 148, 210],
    ["c4", 210, 297],
    ["c3", 297, 420],
    ["b6", 114, 162],
    ["b5", 162, 229],
    ["b4", 229, 324],
    ["e4", 250, 353],
  ])("goes in %s easily", (id, short, long) => {
    const envelope = findNamedSize(`env-iso-${id}`, "envelope");
    if (envelope === undefined) throw new Error(`There is no envelope ${id}.`);
    expect(verdict(size(short, long, "mm"), envelope, "mm")).toBe("easy");
  });
});

// Common practice, no source, some published US envelope size charts: every format of card with its usual envelopes.
describe("every format in its usual envelope", () => {
  it.each<[string, Size, string | Size, EnvelopeVerdict]>([
    ["us-a1", size(3.5, 4.875, "in"), "env-us-a1", "snug"],
    ["us-a2", size(4.25, 5.5, "in"), "env-us-a2", "snug"],
    ["us-a6", size(4.5, 6.25, "in"), "env-us-a6", "easy"],
    ["us-a7", size(5, 7, "in"), "env-us-a7", "easy"],
    ["us-a8", size(5.25, 7.875, "in"), "env-us-a8", "easy"],
    ["us-a9", size(5.5, 8.5, "in"), "env-us-a9", "easy"],
    ["us-a10", size(5.75, 9.25, "in"), "env-us-a10", "easy"],
    ["us-10", size(3.875, 9.25, "in"), "env-us-10", "easy"],
    ["us-slimline", size(3.5, 8.5, "in"), "env-us-a-long", "easy"],
    ["us-slimline", size(3.5, 8.5, "in"), "env-us-9", "easy"],
    ["us-slimline", size(3.5, 8.5, "in"), "env-us-10", "easy"],
    ["mini-slim-3x6", size(3, 6, "in"), "env-us-mini-slim", "easy"],
    ["mini-slim-3.5x6", size(3.5, 6, "in"), "env-us-6.75", "snug"],
    ["us-4x6", size(4, 6, "in"), "env-us-4.25x6.25", "easy"],
    ["us-4x6", size(4, 6, "in"), "env-us-a6", "easy"],
    ["us-4x5.5", size(4, 5.5, "in"), "env-us-a2", "easy"],
    ["sq-3", size(3, 3, "in"), "env-us-sq-3.25", "snug"],
    ["sq-4", size(4, 4, "in"), "env-us-sq-4.25", "snug"],
    ["sq-4.25", size(4.25, 4.25, "in"), "env-us-a2", "snug"],
    ["sq-5", size(5, 5, "in"), "env-us-sq-5.25", "snug"],
    ["sq-5.5", size(5.5, 5.5, "in"), "env-us-sq-5.75", "snug"],
    ["sq-6", size(6, 6, "in"), "env-us-sq-6.25", "snug"],
    ["card-iso-a6", size(105, 148, "mm"), "env-iso-c6", "easy"],
    ["card-a4-quarter", size(105, 148.5, "mm"), "env-iso-c6", "easy"],
    ["card-iso-a5", size(148.5, 210, "mm"), "env-iso-c5", "easy"],
    ["card-iso-dl", size(99, 210, "mm"), "env-iso-dl", "easy"],
    ["sq-145mm", size(145, 145, "mm"), size(155, 155, "mm"), "snug"],
    ["sq-135mm", size(135, 135, "mm"), size(145, 145, "mm"), "snug"],
  ])("%s: never too small", (id, card, into, expected) => {
    const format = findNamedSize(id, "card");
    if (format === undefined) throw new Error(`There is no card ${id}.`);
    const { front, fold } = formatFront(format, "upright");
    expect(front).toEqual(card);
    expect(flatsOf({ front, fold })).toHaveLength(1);
    const envelope = typeof into === "string" ? findNamedSize(into, "envelope") : into;
    if (envelope === undefined) throw new Error("There is no such envelope.");
    if (typeof into === "string") expect(format.envelopes).toContain(into);
    expect(verdict(card, envelope, format.unit)).toBe(expected);
    expect(envelopeRoom(card, envelope, { thickness: 0, unit: format.unit }).isLoose).toBe(false);
    // Not in the other trade's unit either, where the steps are a little finer.
    expect(verdict(card, envelope, format.unit === "in" ? "mm" : "in")).not.toBe("too-small");
  });
});

describe("a card that slides about", () => {
  // Common practice, no source: the 4 1/4 in square in A2 has the most to spare of all usual envelopes.
  it.each<[string, Size, Size, Unit, boolean]>([
    ["the square card in A2", size(4.25, 4.25, "in"), size(4.375, 5.75, "in"), "in", false],
    ["a hair more to spare", size(4.24, 4.24, "in"), size(4.375, 5.75, "in"), "in", true],
    ["a small tag in A1", size(2, 4, "in"), size(3.625, 5.125, "in"), "in", true],
    ["A5 in C4", size(148, 210, "mm"), size(229, 324, "mm"), "mm", true],
    ["A4 in C4", size(210, 297, "mm"), size(229, 324, "mm"), "mm", false],
    ["a card that does not go in", size(5, 2, "in"), size(4, 9, "in"), "in", true],
    ["a card too long for the other side", size(5, 5, "in"), size(4, 9, "in"), "in", false],
  ])("is loose or not: %s", (_, card, envelope, unit, expected) => {
    expect(envelopeRoom(card, envelope, { thickness: 0, unit }).isLoose).toBe(expected);
  });
});

const STEPS: readonly EnvelopeVerdict[] = ["easy", "snug", "too-small"];
const length = fc.integer({ min: 16, max: 16 * 12 }).map((steps) => steps * inches(1 / 16));
const extent = fc.record({ width: length, height: length });
const thickness = fc.integer({ min: 0, max: inches(1 / 2) });
const unit = fc.constantFrom<Unit>("in", "mm");

test("a larger envelope of the same shape, square or not, never gives a worse verdict", () => {
  fc.assert(
    fc.property(
      extent,
      extent,
      length,
      length,
      thickness,
      unit,
      (card, envelope, wider, higher, thick, of) => {
        const isSquare = envelope.width === envelope.height;
        const larger = {
          width: envelope.width + wider,
          height: envelope.height + (isSquare ? wider : higher),
        };
        fc.pre(isSquare || larger.width !== larger.height);
        const setting = { thickness: thick, unit: of };
        const [small, large] = [envelope, larger].map((one) => envelopeRoom(card, one, setting).verdict);
        expect(STEPS.indexOf(large ?? "too-small")).toBeLessThanOrEqual(STEPS.indexOf(small ?? "easy"));
      },
    ),
  );
});

test("a thicker or larger card never gets a better verdict, and how either stands is of no matter", () => {
  fc.assert(
    fc.property(extent, extent, thickness, thickness, unit, (card, envelope, thick, more, of) => {
      const judge = (one: Size, into: Size, much: number) =>
        STEPS.indexOf(envelopeRoom(one, into, { thickness: much, unit: of }).verdict);
      const turned = ({ width, height }: Size) => ({ width: height, height: width });
      const base = judge(card, envelope, thick);
      expect(judge(card, envelope, thick + more)).toBeGreaterThanOrEqual(base);
      expect(judge({ ...card, width: card.width + more }, envelope, thick)).toBeGreaterThanOrEqual(base);
      expect(judge(turned(card), envelope, thick)).toBe(base);
      expect(judge(card, turned(envelope), thick)).toBe(base);
    }),
  );
});
