import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planCosts } from "../../src/totals/plan-costs.js";

const copies = (complete: number, made = 0) => [
  { card: 1, wanted: 20, complete, spares: { wished: 9, made } },
];
const rates = { currency: "$", hour: "18.5", minutesPerCard: "12" };

describe("what a plan costs", () => {
  test("is the work on complete copies and spares, and that with the sheets", () => {
    // 13 cards of 12 minutes are 156 minutes, at 18.50 an hour 48.10.
    expect(planCosts(rates, copies(12, 1), "3.35")).toEqual({
      currency: "$",
      copies: 13,
      minutes: "156",
      work: "48.10",
      total: "51.45",
    });
    expect(planCosts(rates, copies(0), "0.00")).toMatchObject({ minutes: "0", work: "0.00", total: "0.00" });
  });

  test("is rounded up to hundredths, and the sheets are not rounded", () => {
    // A minute at 1 an hour is 0.0166...
    const one = { currency: null, hour: "1", minutesPerCard: "1" };
    expect(planCosts(one, copies(1), "0.3333")).toMatchObject({ work: "0.02", total: "0.3533" });
    expect(planCosts({ ...one, minutesPerCard: "0.6" }, copies(1), null)).toMatchObject({
      minutes: "0.6",
      work: "0.01",
      total: null,
    });
  });

  test("says nothing of what is not known", () => {
    const none = { minutes: null, work: null, total: null };
    expect(planCosts({ ...rates, minutesPerCard: null }, copies(5), "1.00")).toMatchObject(none);
    const unpaid = { ...rates, hour: null };
    expect(planCosts(unpaid, copies(5), "1.00")).toMatchObject({ minutes: "60", work: null, total: null });
  });

  test("never falls short of the exact cost, by less than a hundredth", () => {
    const amount = fc.integer({ min: 0, max: 9_999_999 });
    const text = (value: number) =>
      `${Math.floor(value / 10_000)}.${String(value % 10_000).padStart(4, "0")}`;
    fc.assert(
      fc.property(amount, amount, fc.integer({ min: 0, max: 100_000 }), (hour, minutes, count) => {
        const given = { currency: null, hour: text(hour), minutesPerCard: text(minutes) };
        const { work } = planCosts(given, copies(count), null);
        const exact = BigInt(hour) * BigInt(minutes) * BigInt(count);
        const over = BigInt((work ?? "").replace(".", "")) * 60_000_000n - exact;
        expect(over >= 0n && over < 60_000_000n).toBe(true);
      }),
    );
  });
});
