import type { Progress } from "@sheetwright/packing";
import { describe, expect, it } from "vitest";
import { showProgress } from "../../src/plan/show-progress.js";

function shown(isTTY: boolean, steps: number, best?: Progress["best"]): string {
  let text = "";
  const progress = showProgress({
    isTTY,
    write: (more) => {
      text += more;
    },
  });
  for (let step = 1; step <= steps; step++)
    progress.show({ share: step / 1000, startsDone: step, starts: 1500, work: step, best });
  progress.clear();
  return text;
}

describe("progress", () => {
  it("is one line of a terminal that is written over and cleared at the end", () => {
    const best = { sheets: 14, cost: 1, everything: true };
    expect(shown(true, 250, best)).toBe(
      "\rSearching: 10 % done, best so far 14 sheets. Ctrl-C takes the best so far.\u001b[K" +
        "\rSearching: 20 % done, best so far 14 sheets. Ctrl-C takes the best so far.\u001b[K" +
        "\r\u001b[K",
    );
  });

  it("says which of several searches it tells of", () => {
    let text = "";
    const progress = showProgress({ isTTY: true, write: (more) => (text += more) });
    for (let step = 1; step <= 100; step++)
      progress.show(
        { share: 0.339, startsDone: 3, starts: 9, work: step, best: undefined },
        "papers 2 of 5, ",
      );
    expect(text).toContain("Searching: papers 2 of 5, 33 % done. Ctrl-C takes the best so far.");
  });

  it("is not shown for a short search, and nowhere but on a terminal", () => {
    expect(shown(true, 99)).toBe("");
    expect(shown(false, 1000)).toBe("");
  });
});
