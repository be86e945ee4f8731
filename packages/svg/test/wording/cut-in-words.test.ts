import { describe, expect, test } from "vitest";
import { runInWords } from "../../src/wording/count-of.js";
import { groupBySetting, settingInWords } from "../../src/wording/cut-in-words.js";
import { inch } from "../plans/build.js";
import { examples } from "../plans/examples.js";
import { plainCutOrder } from "../plans/plain-cut-order.js";

test("says where to line up which edge, in the trade's fractions, never broken in a length", () => {
  expect(settingInWords({ edge: "left", distance: inch(4.25) }, "in")).toEqual([
    "line",
    "up",
    "left",
    "edge",
    "at",
    "4\u00a01/4\u00a0in",
  ]);
  expect(settingInWords({ edge: "bottom", distance: inch(1) }, "mm").at(-1)).toBe("25.4\u00a0mm");
});

test("says how many sheets to cut", () => {
  expect(runInWords(1)).toBe("Cut 1 sheet like this");
  expect(runInWords(3)).toBe("Cut 3 sheets like this");
});

describe("groupBySetting", () => {
  test("groups neighbouring cuts of one setting and keeps all cuts in order", () => {
    for (const example of examples) {
      const { cuts } = plainCutOrder(example, 0);
      const groups = groupBySetting(cuts);
      expect(groups.flat()).toEqual(cuts);
      for (const group of groups) {
        expect(
          new Set(group.map(({ edge, distance, purpose }) => `${edge} ${distance} ${purpose}`)).size,
        ).toBe(1);
      }
      groups.slice(1).forEach((group, i) => {
        const before = groups[i]?.at(-1);
        const [first] = group;
        const same =
          before?.edge === first?.edge &&
          before?.distance === first?.distance &&
          before?.purpose === first?.purpose;
        expect(same).toBe(false);
      });
    }
  });
});
