import type { Flat } from "@sheetwright/planner";
import { describe, expect, test } from "vitest";
import { panelNames } from "../../src/card/panel-names.js";
import { flatOf, foldNote } from "./folded.js";

const front = [400_000, 600_000] as const;
const named = (fold: Flat["fold"], lying = false) => panelNames(flatOf(front, foldNote(fold, front, lying)));

// Which way round the panels of each fold lie follows from folding a sheet; the words are common practice, no source.
describe("panelNames", () => {
  test("names the panels of folds with words of their own, outside up, the front or the flap last", () => {
    expect(named("side")).toEqual(["back", "front"]);
    expect(named("top")).toEqual(["back", "front"]);
    expect(named("tri")).toEqual(["flap", "back", "front"]);
    expect(named("z")).toEqual(["back", "middle", "flap"]);
    expect(named("easel")).toEqual(["back", "middle", "flap"]);
  });

  test("names the doors of a gate as they are seen when it is closed, which mirrors them", () => {
    expect(named("gate")).toEqual(["right door", "back", "left door"]);
    expect(named("gate", true)).toEqual(["lower door", "back", "upper door"]);
  });

  test("names other panels by the page on their inside, counted from the front on", () => {
    expect(named("roll")).toEqual(["page 4", "page 3", "back", "front"]);
    expect(named("accordion")).toEqual(["back", "page 3", "page 2", "front"]);
    expect(named("shutter")).toEqual(["page 5", "page 4", "back", "page 2", "page 1"]);
    expect(named("own")).toEqual(["page 3", "page 2", "front"]);
  });

  test("finds the back of an accordion on its last panel only where that shows its outside", () => {
    const of = (count: number) => {
      const panels = Array.from({ length: count }, () => 400_000);
      const folds = panels.slice(1).map(() => "mountain" as const);
      return panelNames(flatOf(front, { fold: "accordion", along: "width", panels, folds }));
    };
    expect(of(2)).toEqual(["back", "front"]);
    expect(of(3)).toEqual(["page 3", "page 2", "front"]);
    expect(of(6)[0]).toBe("back");
  });
});
