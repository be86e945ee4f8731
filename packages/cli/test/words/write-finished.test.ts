import { describe, expect, it } from "vitest";
import type { CheckReport } from "../../src/check/check-report.js";
import type { ProjectPlanSummary } from "../../src/project-plan/project-plan-summary.js";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const CARDS = `
sheetwright: 1
title: Evening
papers:
  night: { cardstock: us-letter, count: 4, grain: long, weight: 80 lb cover, thickness: 0.010 in }
cards:
  - name: Lantern
    format: us-a7
    base: night
    front: [{ panel: night, border: 1/4, foam: 1/16 }]
    extras: [{ name: knot, thickness: 1/32 }]
    envelope: { name: us-a8, weight: 24 lb bond }
  - name: Moth
    size: 4 x 4
    base: night
    envelope: 4 x 4
  - name: Drum
    format: us-a7
    base: night
    extras: [{ name: bell, thickness: 1/2, mass: 2 g }]
    envelope: { weight: 24 lb bond }
`;

// Computed by hand: 70 in2 of base, 29 1/4 of panel and 16 of base at 80 lb cover, 216.3 g/m2; envelopes of 44 11/16 and
// 16 in2, and of 38 1/16 for the third, at 24 lb bond, 90.2 g/m2, times two and a half; 2 g of bell.
const LINES = [
  "1 Lantern  0.124 in thick  0.72 oz (20.4 g)  easy in US A8 envelope",
  "2 Moth     0.020 in thick  0.24 oz (6.8 g)   too large for an envelope of 4 x 4 in",
  "3 Drum     0.520 in thick  0.61 oz (17.3 g)  too thick for US A7 envelope",
  "Weights are estimated, with the envelope (24 lb bond where not given) and without glue,",
  "foam and the knot of Lantern.",
];

describe("what is said of finished cards", () => {
  it("stands in a check, a line a card", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": CARDS });
    const { stdout, stderr } = await runIn(["check", "cards.yaml"], { files });
    const block = stdout.slice(stdout.indexOf("Finished"), stdout.indexOf("\n\n3 cards"));
    expect(block.split("\n").map((line) => line.slice(11))).toEqual(LINES);
    expect(stderr).toContain("(envelope-too-small)");
  });

  it("stands in a check as data", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": CARDS });
    const { stdout } = await runIn(["check", "cards.yaml", "--json"], { files });
    const { finished }: CheckReport = JSON.parse(stdout);
    expect(finished.map(({ name, envelope }) => [name, envelope.id, envelope.verdict])).toEqual([
      ["Lantern", "env-us-a8", "easy"],
      ["Moth", null, "too-small"],
      ["Drum", "env-us-a7", "too-small"],
    ]);
    expect(finished[1]?.envelopes.slice(0, 2)).toEqual([
      { id: "env-us-sq-5", verdict: "easy", isLoose: false },
      { id: "env-us-sq-5.25", verdict: "easy", isLoose: false },
    ]);
    expect(finished[0]?.thickness.basis).toBe("given");
  });

  it("stands in the overview of a plan, and in its summary as data", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": CARDS });
    const argv = ["plan", "cards.yaml", "--out", "out", "--effort", "quick", "--json"];
    const { stdout } = await runIn(argv, { files });
    const summary: ProjectPlanSummary = JSON.parse(stdout);
    expect(summary.finished.map(({ number }) => number)).toEqual([1, 2, 3]);
    const overview = String(files.all.get("/desk/out/cut-list.txt"));
    const inOne = (text: string) => text.replace(/\s+/g, " ");
    expect(inOne(overview)).toContain(inOne(`FINISHED CARDS ${LINES.join(" ")} LEFTOVERS`));
  });
});
