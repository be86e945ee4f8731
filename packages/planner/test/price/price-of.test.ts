import { type Project, readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { costUnits } from "../../src/group/cost-units.js";
import { plan } from "../../src/plan.js";
import type { Price } from "../../src/price/price.js";
import { priceOf } from "../../src/price/price-of.js";
import { shareOut } from "../../src/price/share-out.js";

function read(text: string): Project {
  const { project, faults } = readProject(text);
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

const priced = (text: string): Price => {
  const project = read(text);
  return priceOf(project, plan(project, { effort: "quick" }));
};

describe("what cards cost", () => {
  it("is shared by the area of their pieces, and all else by its number, to the last unit", () => {
    const { parts, cards, total, guest, unknown } = priced(`
      sheetwright: 1
      title: Two cards
      copies: { guests: 3, samples: 1 }
      papers:
        night: { cardstock: us-letter, grain: long, pack: { sheets: 3, cost: 1 } }
        cream: { cardstock: us-letter, cost: 0.3333 }
      rates:
        { currency: $, hour: 18, minutes-per-card: 7.5, consumables: { adhesive: 0.055 }, ribbons: { Red Ribbon: 1.20 }, price-factor: 2.5 }
      cards:
        - name: Harbour
          format: us-a2
          base: night
          front:
            - { mat: cream, border: 1/8 }
            - { bands: [1, 1], border: 1/4, papers: [cream, cream], seam: { ribbon: red ribbon, width: 1/2 } }
          extras: [{ name: button, count: 2, thickness: 1/8, cost: 0.15 }]
          envelope: { name: us-a2, cost: 0.20 }
        - { name: Plain, format: us-a2, base: night, extras: [{ name: bell, thickness: 1/8 }] }
    `);
    const table = parts.map(({ kind, name, quantity, each, per, cost }) => [
      kind,
      name,
      quantity,
      each,
      per,
      cost,
    ]);
    // Eight bases are four letter sheets of a pack of three for 1: 4/3, which is 1.34. The mats, 4 x 5 1/4 in, and the bands on
    // them, 3 1/2 x 2 3/8 in, have 150.5 square inches and a sheet 93.5, so there are two. The ribbons are 4 1/2 in long with
    // what is tucked behind: four are half a yard.
    expect(table).toEqual([
      ["paper", "night", 4, "1", 3, "1.34"],
      ["paper", "cream", 2, "0.3333", 1, "0.67"],
      ["envelopes", "envelope of Harbour", 4, "0.2", 1, "0.80"],
      ["extras", "button", 8, "0.15", 1, "1.20"],
      ["ribbons", "red ribbon", 4 * 4.5 * 40_640, "1.2", 36 * 40_640, "0.60"],
      ["consumables", "adhesive", 8, "0.055", 1, "0.44"],
      ["work", "work", 8 * 75_000, "18", 600_000, "18.00"],
    ]);
    const [harbour, plain] = cards;
    expect([harbour?.costs.work, plain?.costs.work]).toEqual(["9.00", "9.00"]);
    expect([harbour?.costs.paper, plain?.costs.paper]).toEqual(["1.34", "0.67"]);
    // 0.67 of paper, 9.00 of work and 0.22 of adhesive for four: 9.89 / 4 = 2.4725, and times 2.5 6.18125.
    expect(plain).toMatchObject({ copies: 4, total: "9.89", copy: "2.48", price: "6.19" });
    expect(costUnits(harbour?.total ?? "") + costUnits(plain?.total ?? "")).toBe(costUnits(total));
    expect(guest?.guests).toBe(3);
    expect(unknown).toEqual(["bell"]);
  });

  it("is rounded up to hundredths where one copy or one guest is asked for", () => {
    const { cards, total, guest, factor } = priced(`
      sheetwright: 1
      title: One card
      copies: 3
      papers: { night: { cardstock: us-letter, grain: long, cost: 0.50 } }
      cards: [{ name: Plain, format: us-a2, base: night }]
    `);
    expect([total, factor]).toEqual(["1.00", null]);
    expect(cards[0]).toMatchObject({ copy: "0.34", price: null });
    expect(guest).toEqual({ guests: 3, cost: "0.34", price: null });
  });

  it("names papers whose cost nobody knows, and leaves them out of the sum", () => {
    const { parts, total, unknown, guest } = priced(`
      sheetwright: 1
      title: One card
      copies: { samples: 2 }
      papers: { night: { cardstock: us-letter }, stars: { pad: 6 x 6, designs: { dots: { count: 4, cost: 0.4 } } } }
      rates: { minutes-per-card: 5 }
      cards: [{ name: Plain, format: us-a2, base: night, front: [{ mat: stars, border: 1/8 }] }]
    `);
    expect(parts.map(({ name }) => name)).toEqual(["stars: dots"]);
    expect([total, unknown, guest]).toEqual(["0.80", ["night", "work"], null]);
  });

  it("counts spares that are made among the copies", () => {
    const { cards, total } = priced(`
      sheetwright: 1
      title: Spares
      copies: { guests: 2, spares: 2 }
      papers: { night: { cardstock: us-letter, grain: long, count: 2, cost: 0.50 } }
      rates: { consumables: { glue: 0.25 } }
      cards: [{ name: Plain, format: us-a2, base: night }]
    `);
    expect(cards[0]).toMatchObject({ copies: 4, total: "2.00", copy: "0.50" });
    expect(total).toBe("2.00");
  });

  it("costs nothing for offcuts, and shares the sheets over the pieces from offcuts too", () => {
    const { parts, cards } = priced(`
      sheetwright: 1
      title: Offcuts
      papers: { night: { cardstock: us-letter, grain: long, cost: 0.60, offcuts: [8 1/2 x 5 1/2] } }
      cards:
        - { name: One, format: us-a2, base: night, copies: 1 }
        - { name: Two, format: us-a2, base: night, copies: 2 }
    `);
    expect(parts).toMatchObject([{ quantity: 1, cost: "0.60" }]);
    expect(cards.map(({ costs }) => costs.paper)).toEqual(["0.20", "0.40"]);
  });

  it("is not reckoned for a plan that lacks a piece", () => {
    const project = read(`
      sheetwright: 1
      title: Short
      copies: 4
      papers: { night: { cardstock: us-letter, count: 1 } }
      cards: [{ name: Plain, format: us-a2, base: night }]
    `);
    expect(() => priceOf(project, plan(project, { effort: "quick" }))).toThrow(RangeError);
  });

  it("is by what is used of items on hand, where nothing else says what an extra or a ribbon costs", () => {
    const { parts, unknown } = priced(`
      sheetwright: 1
      title: Tied cards
      copies: 4
      papers: { night: { cardstock: us-letter } }
      items:
        Plum ribbon: { length: 1 yd, pack: { items: 2, cost: 3.60 } }
        Pearl: { pack: { items: 12, cost: 1.10 } }
        knot: { cost: 0.15 }
        bell: { cost: 5 }
        gem: { count: 9 }
      cards:
        - name: Tied
          format: us-a2
          base: night
          front: [{ bands: [1, 1], papers: [night, night], seam: { ribbon: plum ribbon, width: 1/4 } }]
          extras:
            - { name: pearl, count: 3, thickness: 1/16 }
            - { name: knot, thickness: 1/8 }
            - { name: bell, thickness: 1/8, cost: 0.50 }
            - { name: gem, thickness: 1/8 }
    `);
    // Twelve pearls are a pack; four knots; four bells at what the card says; 20 in of two rolls of 36 in that cost 3.60.
    expect(parts.map(({ name, quantity, each, per, cost }) => [name, quantity, each, per, cost])).toEqual([
      ["pearl", 12, "1.1", 12, "1.10"],
      ["knot", 4, "0.15", 1, "0.60"],
      ["bell", 4, "0.5", 1, "2.00"],
      ["plum ribbon", inches(20), "3.6", 2 * inches(36), "1.00"],
    ]);
    expect(unknown).toEqual(["night", "gem"]);
  });
});

describe("an amount shared out", () => {
  it("goes to the last unit to those that lost most by rounding down", () => {
    expect(shareOut(100n, [1n, 1n, 1n])).toEqual([34n, 33n, 33n]);
    expect(shareOut(10n, [2n, 3n, 1n])).toEqual([3n, 5n, 2n]);
    expect(shareOut(3n, [0n, 0n])).toEqual([2n, 1n]);
    expect(shareOut(7n, [])).toEqual([]);
  });

  it("adds up to it exactly, with no share a unit off its exact one", () => {
    const weight = fc.bigInt(0n, 10n ** 14n);
    fc.assert(
      fc.property(
        fc.bigInt(0n, 10n ** 12n),
        fc.array(weight, { minLength: 1, maxLength: 9 }),
        (amount, weights) => {
          const shares = shareOut(amount, weights);
          expect(shares.reduce((sum, one) => sum + one, 0n)).toBe(amount);
          const sum = weights.reduce((all, one) => all + one, 0n);
          if (sum === 0n) return;
          for (const [index, share] of shares.entries()) {
            const off = share * sum - amount * (weights[index] ?? 0n);
            expect(off > -sum && off < sum).toBe(true);
          }
        },
      ),
    );
  });
});
