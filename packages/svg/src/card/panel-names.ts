import type { Flat } from "@sheetwright/planner";

/**
 * What each panel of a flat is, from the left or the top, its outside up; the front is the last one. A panel whose outside
 * is neither front nor back has the name of the page on its inside: turning the flat over mirrors their order.
 */
export function panelNames({ fold, along, panels }: Flat): readonly string[] {
  const count = panels.length;
  const pages = panels.map((_, index) => `page ${count - index}`);
  const named = (names: Readonly<Record<number, string>>) => pages.map((page, index) => names[index] ?? page);
  switch (fold) {
    case "flat":
      return ["front"];
    case "side":
    case "top":
      return ["back", "front"];
    case "gate":
      return along === "width" ? ["right door", "back", "left door"] : ["lower door", "back", "upper door"];
    case "z":
    case "easel":
      return ["back", "middle", "flap"];
    case "tri":
      return ["flap", "back", "front"];
    case "roll":
    case "double-parallel":
      return named({ [count - 2]: "back", [count - 1]: "front" });
    case "double-gate":
      return named({ 1: "back" });
    case "shutter":
      return named({ 2: "back" });
    case "accordion":
      return named(count % 2 === 0 ? { 0: "back", [count - 1]: "front" } : { [count - 1]: "front" });
    case "own":
      return named({ [count - 1]: "front" });
  }
}
