/**
 * One plan to read: two sheets of 15 x 14, trimmed by 1 on the left, right and top, cut alike with a kerf of 1.
 *
 *     +-----------+---------+
 *     | mat 7 x 5 |   mat   |
 *     +-----------+  5 x 7  |
 *     | mat 7 x 5 |         |
 *     |           +---------+
 *     +-----------+  panel  |
 *     | offcut    |  5 x 5  |
 *     +-----------+---------+
 */
import type { Packing, Problem } from "../../src/model.js";
import type { ValidPlan } from "../valid-plan.js";

const problem: Problem = {
  kinds: [
    { id: "mat", quantity: 6, forms: [{ width: 5, height: 7 }] },
    { id: "panel", quantity: 1, forms: [{ width: 5, height: 5 }] },
  ],
  sheets: [
    { id: "night", width: 15, height: 14, stock: 3, trim: { left: 1, right: 1, top: 1 }, longestCut: 14 },
  ],
  mode: "guillotine",
  aim: "all",
  kerf: 1,
  stages: 2,
};

const packing: Packing = {
  version: 1,
  mode: "guillotine",
  aim: "all",
  outcome: "complete",
  layouts: [
    {
      sheet: "night",
      run: 2,
      tree: {
        type: "split",
        axis: "x",
        parts: [
          {
            size: 7,
            node: {
              type: "split",
              axis: "y",
              parts: [
                {
                  size: 5,
                  node: { type: "piece", shares: [{ kind: "mat", form: 0, turned: true, count: 2 }] },
                },
                {
                  size: 5,
                  node: { type: "piece", shares: [{ kind: "mat", form: 0, turned: true, count: 2 }] },
                },
                { size: 1, node: { type: "offcut" } },
              ],
            },
          },
          {
            size: 5,
            node: {
              type: "split",
              axis: "y",
              parts: [
                {
                  size: 7,
                  node: { type: "piece", shares: [{ kind: "mat", form: 0, turned: false, count: 2 }] },
                },
                {
                  size: 5,
                  node: { type: "piece", shares: [{ kind: "panel", form: 0, turned: false, count: 1 }] },
                },
              ],
            },
          },
        ],
      },
    },
  ],
  placed: [
    { kind: "mat", count: 6 },
    { kind: "panel", count: 1 },
  ],
  missing: [],
  sheets: 2,
  cost: "420",
  // 6 x 35 + 25
  value: "235",
  bound: {
    aim: "all",
    // With the kerf a mat takes 6 x 8 and the panel 6 x 6 of 14 x 14: 324 of 196, so 1.65 sheets of 210.
    cost: "420",
    sheets: 2,
    certificate: {
      type: "weights",
      sheets: [{ sheet: "night", x: { family: "identity" }, y: { family: "identity" }, capacity: 196 }],
    },
  },
  proven: true,
  search: { effort: "quick", seed: 1, lp: "none", starts: 1, steps: 0, work: 0, ended: "proven" },
};

export const examplePlan: ValidPlan = { problem, packing };

/** Four 5 x 7 round a centre of 2 x 2 on one sheet of 12 x 12: no edge-to-edge cuts give four. */
export const stoppedPlan: ValidPlan = {
  problem: {
    kinds: [{ id: "photo", quantity: 4, forms: [{ width: 5, height: 7 }] }],
    sheets: [{ id: "ember", width: 12, height: 12, stock: 1, longestCut: 7 }],
    mode: "stopped",
    aim: "all",
    smallestOffcut: { width: 2, height: 3 },
  },
  packing: {
    version: 1,
    mode: "stopped",
    aim: "all",
    outcome: "complete",
    layouts: [
      {
        sheet: "ember",
        run: 1,
        tree: {
          type: "stopped",
          hand: "clockwise",
          x1: 5,
          x2: 7,
          y1: 5,
          y2: 7,
          top: { type: "piece", shares: [{ kind: "photo", form: 0, turned: true, count: 1 }] },
          right: { type: "piece", shares: [{ kind: "photo", form: 0, turned: false, count: 1 }] },
          bottom: { type: "piece", shares: [{ kind: "photo", form: 0, turned: true, count: 1 }] },
          left: { type: "piece", shares: [{ kind: "photo", form: 0, turned: false, count: 1 }] },
          centre: { type: "waste" },
        },
      },
    ],
    placed: [{ kind: "photo", count: 4 }],
    missing: [],
    sheets: 1,
    cost: "144",
    value: "140",
    bound: {
      aim: "all",
      cost: "144",
      sheets: 1,
      certificate: {
        type: "weights",
        sheets: [{ sheet: "ember", x: { family: "identity" }, y: { family: "identity" }, capacity: 1 }],
      },
    },
    proven: true,
    search: { effort: "quick", seed: 1, lp: "none", starts: 1, steps: 0, work: 0, ended: "proven" },
  },
};

/** A mat of 8 x 10 whose hidden middle, opened by a knife, gives a tag of 3 x 4. */
export const windowPlan: ValidPlan = {
  problem: {
    kinds: [
      {
        id: "mat",
        quantity: 1,
        forms: [{ width: 8, height: 10, hidden: { x: 1, y: 2, width: 5, height: 7, tool: "knife" } }],
      },
      { id: "tag", quantity: 1, forms: [{ width: 3, height: 4, turns: "upright" }] },
    ],
    sheets: [{ id: "cream", width: 10, height: 8, stock: 1 }],
    mode: "guillotine",
    aim: "all",
    stages: 2,
  },
  packing: {
    version: 1,
    mode: "guillotine",
    aim: "all",
    outcome: "complete",
    layouts: [
      {
        sheet: "cream",
        run: 1,
        tree: {
          type: "piece",
          shares: [{ kind: "mat", form: 0, turned: true, count: 1 }],
          // After the turn the hidden part is 7 x 5 at 1, 1.
          window: {
            x: 2,
            y: 1,
            width: 6,
            height: 5,
            tool: "knife",
            tree: {
              type: "split",
              axis: "x",
              parts: [
                {
                  size: 3,
                  node: {
                    type: "split",
                    axis: "y",
                    parts: [
                      {
                        size: 4,
                        node: { type: "piece", shares: [{ kind: "tag", form: 0, turned: false, count: 1 }] },
                      },
                      { size: 1, node: { type: "offcut" } },
                    ],
                  },
                },
                { size: 3, node: { type: "offcut" } },
              ],
            },
          },
        },
      },
    ],
    placed: [
      { kind: "mat", count: 1 },
      { kind: "tag", count: 1 },
    ],
    missing: [],
    sheets: 1,
    cost: "80",
    value: "92",
    bound: {
      aim: "all",
      // The mat weighs 80 less its hidden 35, the tag 12: 57 of 80.
      cost: "80",
      sheets: 1,
      certificate: {
        type: "weights",
        sheets: [{ sheet: "cream", x: { family: "identity" }, y: { family: "identity" }, capacity: 80 }],
      },
    },
    proven: true,
    search: { effort: "quick", seed: 1, lp: "none", starts: 1, steps: 0, work: 0, ended: "proven" },
  },
};
