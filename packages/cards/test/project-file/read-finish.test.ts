import { GRAMS_PER_OUNCE, inches, millimetres } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { readProject } from "../../src/index.js";

const TEXT = `sheetwright: 1
title: One card
papers:
  cream: { cardstock: us-letter }
cards:
  - name: Plain
    format: us-a2
    base: cream
`;

/** The only card of a file with these lines added to it, and what is wrong with them. */
function read(lines: string) {
  const { project, faults } = readProject(`${TEXT}    ${lines}\n`);
  return { card: project?.cards[0], faults };
}

const envelopeOf = (written: string) => read(`envelope: ${written}`).card?.envelope;
const faultsOf = (lines: string) =>
  read(lines).faults.map(({ path, code, message }) => ({ path, code, message }));

describe("the envelope of a card", () => {
  const a7 = { width: inches(5.25), height: inches(7.25) };

  it.each([
    ["us-a7", "env-us-a7"],
    ["env-us-a7", "env-us-a7"],
    ["US A7", "env-us-a7"],
    ["iso-c6", "env-iso-c6"],
    ['"#10"', "env-us-10"],
    ["No. 10", "env-us-10"],
    ["no 6 3/4", "env-us-6.75"],
    ['"#6-3/4"', "env-us-6.75"],
    ["us-monarch", "env-us-7.75"],
  ])("may be named %s", (written, id) => {
    expect(envelopeOf(written)?.id).toBe(id);
    expect(envelopeOf(`{ name: ${written} }`)?.id).toBe(id);
  });

  it("may be a size, or keys with the weight of its paper", () => {
    expect(envelopeOf("5 1/4 x 7 1/4")).toEqual({ id: null, size: a7, weight: null });
    expect(envelopeOf("{ size: 5 1/4 x 7 1/4 }")).toEqual({ id: null, size: a7, weight: null });
    expect(envelopeOf("{ name: us-a7, weight: 24 lb bond }")).toEqual({
      id: "env-us-a7",
      size: a7,
      weight: { unit: "lb", pounds: 24, grade: "bond", text: "24 lb bond" },
    });
    expect(envelopeOf("{ weight: 90 gsm }")).toMatchObject({ id: null, size: null });
    expect(read("").card?.envelope).toBeNull();
  });

  it.each([
    [
      "envelope: a7",
      "not-a-size",
      '"a7" is not the name of an envelope. Did you mean env-us-a7 (5 1/4 x 7 1/4 in)',
    ],
    ["envelope: us-a77", "not-a-size", '"us-a77" is not the name of an envelope. Did you mean'],
    [
      "envelope: us-letter",
      "not-a-size",
      "us-letter is a sheet (8 1/2 x 11 in), and an envelope is needed here.",
    ],
    ["envelope: 5 x", "not-a-size", '"5 x" is not a size'],
    ["envelope: []", "not-a-size", "Found an empty list, expected an envelope: a name such as us-a7"],
    ["envelope: 7", "not-a-size", "Found 7, expected an envelope"],
    ["envelope: {}", "missing", "Nothing is said of the envelope."],
    ["envelope: { name: 5 x 7 }", "not-a-size", '"5 x 7" is a size. Write size: 5 x 7.'],
    ["envelope: { name: us-a7, size: 5 x 7 }", "contradiction", "The envelope has a name and a size"],
    ["envelope: { name: us-a7, weight: heavy }", "wrong-type", '"heavy" is not a weight.'],
    ["envelope: { nme: us-a7 }", "unknown-key", '"nme" is not a key of an envelope. Did you mean name?'],
  ])("is refused as %s", (lines, code, message) => {
    const [fault] = faultsOf(lines);
    expect(fault?.code).toBe(code);
    expect(fault?.message.slice(0, message.length)).toBe(message);
    expect(fault?.path.startsWith("cards[0].envelope")).toBe(true);
  });
});

describe("the extras of a card", () => {
  it("have a thickness, and all else by default", () => {
    expect(read("extras: [{ name: knot, thickness: 1/8 }]").card?.extras).toEqual([
      {
        path: "cards[0].extras[0]",
        name: "knot",
        count: 1,
        surface: "front",
        thickness: inches(1 / 8),
        grams: null,
        isSmallPart: false,
      },
    ]);
    expect(read("").card?.extras).toEqual([]);
  });

  it("weigh grams or ounces", () => {
    const grams = (mass: string) =>
      read(`extras: [{ name: bell, thickness: 2 mm, mass: ${mass} }]`).card?.extras[0]?.grams;
    expect(grams("1.2 g")).toBe(1.2);
    expect(grams("1.2g")).toBe(1.2);
    expect(grams(".5 grams")).toBe(0.5);
    expect(grams("0.05 oz")).toBe(0.05 * GRAMS_PER_OUNCE);
    expect(grams("2 ounces")).toBe(2 * GRAMS_PER_OUNCE);
  });

  it.each([
    ["[{ thickness: 1/8 }]", "[0].name", "missing", 'The key "name" is missing. Write the name of the extra'],
    ["[{ name: knot }]", "[0].thickness", "missing", 'The key "thickness" is missing. Write a length'],
    ["[{ name: knot, thickness: 0 }]", "[0].thickness", "not-a-length", '"0" is not a usable length'],
    ["[{ name: knot, thickness: 3 }]", "[0].thickness", "not-a-length", '"3"'],
    [
      "[{ name: knot, thickness: 1/8, count: 0 }]",
      "[0].count",
      "not-a-count",
      "Found 0, expected at least 1",
    ],
    [
      "[{ name: knot, thickness: 1/8, mass: 1.2 }]",
      "[0].mass",
      "wrong-type",
      "Found 1.2, expected a weight with its unit",
    ],
    [
      "[{ name: knot, thickness: 1/8, mass: 12 }]",
      "[0].mass",
      "wrong-type",
      "Found 12, expected a weight with its unit",
    ],
    [
      '[{ name: knot, thickness: 1/8, mass: "12" }]',
      "[0].mass",
      "wrong-type",
      '"12" is not what a part of a card weighs.',
    ],
    [
      "[{ name: knot, thickness: 1/8, mass: 0 g }]",
      "[0].mass",
      "wrong-type",
      '"0 g" is not what a part of a card weighs.',
    ],
    [
      "[{ name: knot, thickness: 1/8, mass: 2000 g }]",
      "[0].mass",
      "wrong-type",
      '"2000 g" is not what a part of a card weighs. More than 1,000 g',
    ],
    [
      "[{ name: knot, thickness: 1/8, small-part: yes }]",
      "[0].small-part",
      "not-a-word",
      'Found "yes", expected true or false. Did you mean true?',
    ],
    [
      "[{ name: knot, thickness: 1/8, surface: flap }]",
      "[0].surface",
      "contradiction",
      "The fold of this card gives no flap. Its surfaces are front, inside, inside-front and back.",
    ],
    [
      "[{ name: knot, thickness: 1/8, surface: top }]",
      "[0].surface",
      "not-a-word",
      'Found "top", expected a surface of the card',
    ],
    [
      "[{ name: knot, thickness: 1/8, weight: 1 g }]",
      "[0].weight",
      "unknown-key",
      '"weight" is not a key of an extra.',
    ],
    [
      "{ name: knot, thickness: 1/8 }",
      "",
      "wrong-type",
      "Found the keys name and thickness, expected a list of extras",
    ],
  ])("are refused as %s", (written, path, code, message) => {
    const [fault] = faultsOf(`extras: ${written}`);
    expect(fault?.path).toBe(`cards[0].extras${path}`);
    expect(fault?.code).toBe(code);
    expect(fault?.message.slice(0, message.length)).toBe(message);
  });
});

describe("foam", () => {
  it("is a length under a layer of any kind", () => {
    const front =
      "front: [{ mat: cream, foam: 1/16 }, { panel: cream, border: 1/4 }, { strip: cream, width: 1, foam: 2 mm }]";
    const layers = read(front).card?.surfaces[0]?.layers;
    expect(layers?.map(({ foam }) => foam)).toEqual([inches(1 / 16), null, millimetres(2)]);
  });

  it.each([
    ["thick", "not-a-length"],
    ["0", "not-a-length"],
    ["3", "not-a-length"],
    ["{ thickness: 1/8 }", "not-a-length"],
  ])("is refused as %s", (written, code) => {
    const [fault] = faultsOf(`front: [{ mat: cream, foam: ${written} }, { panel: cream }]`);
    expect([fault?.path, fault?.code]).toEqual(["cards[0].front[0].foam", code]);
  });
});

describe("what things cost", () => {
  it("is told of extras and envelopes, ribbons, and what is used up", () => {
    const { card } = read(
      "extras: [{ name: button, thickness: 1/8, cost: 0.150 }]\n    envelope: { name: us-a2, cost: .2 }",
    );
    expect([card?.extras[0]?.cost, card?.envelope?.cost]).toEqual(["0.15", "0.2"]);
    const { project } = readProject(
      `${TEXT}rates: { ribbons: { copper ribbon: 1.20 }, consumables: { adhesive: 0.1, ink: 0.02 }, price-factor: 2.5 }\n`,
    );
    expect(project?.rates).toEqual({
      currency: null,
      hour: null,
      minutesPerCard: null,
      ribbons: [{ name: "copper ribbon", cost: "1.2" }],
      consumables: [
        { name: "adhesive", cost: "0.1" },
        { name: "ink", cost: "0.02" },
      ],
      priceFactor: "2.5",
    });
  });

  it.each([
    [
      "envelope: { name: us-a2, cost: -1 }",
      "cards[0].envelope.cost",
      "the cost of one envelope, such as 0.20",
    ],
    [
      "extras: [{ name: a, thickness: 1/8, cost: $1 }]",
      "cards[0].extras[0].cost",
      "the cost of one, such as",
    ],
  ])("refuses %s", (lines, path, expected) => {
    const [fault] = faultsOf(lines);
    expect(fault).toMatchObject({ path, code: "not-a-count" });
    expect(fault?.message).toContain(expected);
  });
});
