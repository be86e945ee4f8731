import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Packing, Problem } from "../../src/model.js";
import { verify } from "../../src/verify/verify.js";
import type { Draw } from "../cut-sheet.js";
import { drawFrom, validPlans } from "../valid-plan.js";
import { isRight } from "./brute-check.js";
import { copyOf } from "./damage.js";
import { examplePlan, stoppedPlan, windowPlan } from "./example-plan.js";

interface Slot {
  readonly holder: Record<string, unknown> | unknown[];
  readonly key: string;
}

/** Every value inside a value, by what holds it. */
function slotsOf(value: unknown): readonly Slot[] {
  const slots: Slot[] = [];
  const visit = (holder: unknown): void => {
    if (typeof holder !== "object" || holder === null) return;
    for (const key of Object.keys(holder)) {
      slots.push({ holder: holder as Slot["holder"], key });
      visit((holder as Record<string, unknown>)[key]);
    }
  };
  visit(value);
  return slots;
}

const read = ({ holder, key }: Slot): unknown => (holder as Record<string, unknown>)[key];
const write = ({ holder, key }: Slot, value: unknown): void => {
  (holder as Record<string, unknown>)[key] = value;
};
const copy = <T>(value: T): T => (value === undefined ? value : (JSON.parse(JSON.stringify(value)) as T));

const words = [
  ...[
    "piece",
    "offcut",
    "waste",
    "split",
    "stopped",
    "x",
    "y",
    "clockwise",
    "anticlockwise",
    "weights",
    "no-fit",
  ],
  ...["identity", "threshold", "rounding", "step", "complete", "short", "not-found", "all", "fill", "shelf"],
  ...[
    "guillotine",
    "night",
    "ember",
    "piece 1",
    "piece 2",
    "knife",
    "cutting machine",
    "0",
    "1",
    "01",
    "-1",
    "",
  ],
];
const oddities = [
  null,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  -1,
  -0,
  0.5,
  2 ** 53,
  1e300,
  "",
  "1",
  true,
  [],
  {},
  [[]],
];

/** Does something to a packing that a faulty or a hostile tool might do. */
function mutate(packing: unknown, draw: Draw): void {
  const slots = slotsOf(packing);
  const slot = slots[draw(slots.length)];
  if (slot === undefined) return;
  const value = read(slot);
  const kind = draw(10);
  if (kind <= 3) {
    if (typeof value === "number") write(slot, value + ([-1, 1, -2, 2, 10][draw(5)] ?? 1));
    else if (typeof value === "boolean") write(slot, !value);
    else if (typeof value === "string") write(slot, words[draw(words.length)]);
    else if (Array.isArray(value)) mutateList(value, draw);
    else write(slot, copy(read(slots[draw(slots.length)] as Slot)));
  } else if (kind === 4) {
    if (Array.isArray(slot.holder)) slot.holder.splice(Number(slot.key), 1);
    else delete slot.holder[slot.key];
  } else if (kind <= 6) {
    const alike = slots.filter((other) => other.key === slot.key && typeof read(other) === typeof value);
    const other = alike[draw(alike.length)] as Slot;
    const found = read(other);
    write(slot, copy(found));
    if (kind === 6) write(other, value);
  } else if (kind === 7) {
    write(slot, oddities[draw(oddities.length)]);
  } else {
    const lists = slots.map(read).filter((list): list is unknown[] => Array.isArray(list) && list.length > 1);
    const list = lists[draw(lists.length)];
    if (list !== undefined) mutateList(list, draw);
  }
}

function mutateList(list: unknown[], draw: Draw): void {
  const one = draw(list.length);
  const two = draw(list.length);
  const kind = draw(4);
  if (kind === 0) list.push(copy(list[one]));
  else if (kind === 1) list.splice(one, 1);
  else if (kind === 2) list.reverse();
  else [list[one], list[two]] = [list[two], list[one]];
}

describe("verify against a second, painting verifier", () => {
  it("agrees that plans by construction are right", () => {
    fc.assert(
      fc.property(validPlans({ small: true }), (plan) => {
        expect(isRight(plan)).toBe(true);
      }),
    );
    for (const plan of [examplePlan, stoppedPlan, windowPlan]) expect(isRight(plan)).toBe(true);
  });

  it("agrees on every mutilated plan whether anything is wrong", () => {
    let [right, all] = [0, 0];
    fc.assert(
      fc.property(validPlans({ small: true }), fc.nat({ max: 0x7fffffff }), (valid, seed) => {
        const plan = copyOf(valid);
        const draw = drawFrom(seed, 100);
        for (let times = 1 + draw(2); times > 0; times -= 1) mutate(plan.packing, draw);
        const mutilated = { problem: plan.problem as Problem, packing: plan.packing as Packing };
        const found = verify(mutilated.problem, mutilated.packing);
        const isStillRight = isRight(mutilated);
        all += 1;
        if (isStillRight) right += 1;
        expect({ isRight: found.length === 0, found }).toEqual({ isRight: isStillRight, found });
      }),
    );
    // Swapped parts, other seeds and the like: enough of them that a verifier that refuses all would fail.
    expect(right / all).toBeGreaterThan(0.02);
  });

  it("agrees on plans whose problem was changed under them", () => {
    let [right, all] = [0, 0];
    fc.assert(
      fc.property(validPlans({ small: true }), fc.nat({ max: 0x7fffffff }), (valid, seed) => {
        const plan = copyOf(valid);
        const draw = drawFrom(seed, 100);
        const slots = slotsOf(plan.problem).filter((slot) => typeof read(slot) === "number");
        const slot = slots[draw(slots.length)];
        fc.pre(slot !== undefined);
        if (slot !== undefined) write(slot, Math.max(0, (read(slot) as number) + ([-1, 1, 2][draw(3)] ?? 1)));
        const mutilated = { problem: plan.problem as Problem, packing: plan.packing as Packing };
        const found = verify(mutilated.problem, mutilated.packing);
        fc.pre(found.every(({ code }) => code !== "bad-problem"));
        const isStillRight = isRight(mutilated);
        all += 1;
        if (isStillRight) right += 1;
        expect({ isRight: found.length === 0, found }).toEqual({ isRight: isStillRight, found });
      }),
    );
    expect(right / all).toBeGreaterThan(0.02);
  });
});

describe("verify with values of any kind", () => {
  const anything = fc.anything({ withBigInt: true, withDate: true, withMap: true, withSparseArray: true });
  const [problem, packing] = [examplePlan.problem, examplePlan.packing];

  it("finds something in any other value in place of the packing, and does not throw", () => {
    fc.assert(
      fc.property(anything, (value) => {
        expect(verify(problem, value as Packing).length).toBeGreaterThan(0);
      }),
    );
  });

  it("finds something in any other value in place of the problem, and does not throw", () => {
    fc.assert(
      fc.property(anything, (value) => {
        const found = verify(value as Problem, packing);
        expect(found.length).toBeGreaterThan(0);
        expect(found.every(({ code, path }) => code === "bad-problem" && path.startsWith("problem"))).toBe(
          true,
        );
      }),
    );
  });

  it("survives any value in any place of both", () => {
    fc.assert(
      fc.property(validPlans(), fc.nat({ max: 0x7fffffff }), anything, (valid, which, value) => {
        const plan = copyOf(valid);
        const slots = slotsOf(plan);
        write(slots[which % slots.length] as Slot, value);
        expect(Array.isArray(verify(plan.problem as Problem, plan.packing as Packing))).toBe(true);
      }),
    );
  });

  it("finds every value of the example missing that is not optional", () => {
    for (const { holder, key } of slotsOf(copyOf(examplePlan).packing)) {
      if (Array.isArray(holder)) continue;
      const plan = copyOf(examplePlan);
      const same = slotsOf(plan.packing).find(
        (slot) => slot.key === key && JSON.stringify(slot.holder) === JSON.stringify(holder),
      );
      if (same === undefined || Array.isArray(same.holder)) throw new TypeError("The example has changed.");
      delete same.holder[key];
      const codes = verify(plan.problem as Problem, plan.packing as Packing).map(({ code }) => code);
      expect(codes, key).toContain(key === "version" ? "wrong-version" : "missing-value");
    }
  });
});

describe("verify with trees of any depth", () => {
  /** A tree as deep as wished: a strip of one tick comes off at each level. */
  const deepPlan = (depth: number): Packing => {
    let node: unknown = { type: "offcut" };
    for (let level = 0; level < depth; level += 1) {
      node = {
        type: "split",
        axis: "x",
        parts: [
          { size: 1, node: { type: "offcut" } },
          { size: depth - level, node },
        ],
      };
    }
    return {
      ...examplePlan.packing,
      layouts: [{ sheet: "night", run: 1, tree: node }],
    } as unknown as Packing;
  };

  it("walks 50,000 levels without running out of stack", () => {
    const codes = verify(examplePlan.problem, deepPlan(50_000)).map(({ code }) => code);
    expect(codes).toContain("parts-too-large");
  });

  it("comes to an end in a tree that holds itself", () => {
    const root = { type: "split", axis: "x", parts: [] as unknown[] };
    root.parts.push({ size: 6, node: root }, { size: 6, node: root });
    const packing = { ...examplePlan.packing, layouts: [{ sheet: "night", run: 1, tree: root }] };
    const codes = verify(examplePlan.problem, packing as unknown as Packing).map(({ code }) => code);
    expect(codes).toContain("parts-too-large");
    expect(codes.at(-1)).toBe("more-findings");
  });
});
