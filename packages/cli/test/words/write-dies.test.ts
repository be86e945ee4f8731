import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const project = readFileSync(
  new URL("../../../../test-fixtures/projects/moonrise.yaml", import.meta.url),
  "utf8",
);

it("the overview says which die cuts a piece, what is cut off it, and what its mat shows", async () => {
  const files = memoryFiles({ "/desk/cards.yaml": project });
  const argv = ["plan", "cards.yaml", "--out", "plan", "--effort", "quick"];
  expect(await runIn(argv, { files })).toMatchObject({ code: 0 });
  const list = String(files.all.get("/desk/plan/cut-list.txt"));
  expect(list).toContain(
    "\n      cut by the die moon, 2 1/2 in across, stitched; then cut straight, 1 1/4 in off the bottom\n      shows 1/8 in of 2c\n",
  );
  // The drawings have what the list speaks of.
  const cards = [...files.all].filter(
    ([path]) => /card-\d[a-z-]*\.svg$/.test(path) && !path.includes("-sizes"),
  );
  expect(cards.length).toBe(3);
  for (const [path, drawing] of cards) {
    expect(String(drawing), path).toMatch(/<path data-role="layer"/);
    expect(String(drawing), path).toMatch(/data-role="(stitches|holes)"/);
  }
  const cutter = [...files.all]
    .filter(([path]) => path.endsWith("-cutter.svg"))
    .map(([, text]) => String(text));
  expect(cutter.some((text) => text.includes('<g id="stitch">') && /<g id="cut">[\s\S]*C/.test(text))).toBe(
    true,
  );
});
