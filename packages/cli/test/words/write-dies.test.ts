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

it("the overview counts strips where they are cut, and says in which strips the shapes of a piece are", async () => {
  const files = memoryFiles({
    "/desk/cards.yaml": `{ sheetwright: 1, title: Discs, copies: 15,
      papers: { night: { cardstock: us-letter }, cream: { cardstock: us-letter } },
      dies: { disc: { shape: circle, size: 1 3/4 } },
      cards: [{ name: Moon, format: us-a2, base: night, front: [{ die: disc, paper: cream }] }] }`,
  });
  const argv = ["plan", "cards.yaml", "--out", "plan", "--effort", "quick"];
  const { stdout, code } = await runIn(argv, { files });
  expect(code).toBe(0);
  expect(stdout).toMatch(/\nPieces +all 30\n/);
  const list = String(files.all.get("/desk/plan/cut-list.txt"));
  expect(list).toContain("\n    3 x 1b, strip of 4, 1 x 1b, strip of 3\n");
  expect(list).toMatch(/1b die blank +2 1\/4 x 2 1\/4 in +cream +15\n/);
  expect(list).toContain(
    "\n      15 from sheet-cream-1\n      in 3 strips of 4 (8 1/4 x 2 1/4 in) and 1 of 3 (6 1/4 x 2 1/4 in)\n      cut by the die disc",
  );
});
