import { expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const PROJECT = `sheetwright: 1
title: Whatever is left
papers:
  night: { cardstock: us-letter, grain: long, weight: 80 lb cover, name: Night blue }
  cream: { cardstock: us-letter, grain: long, weight: 176 gsm, offcuts: [5 x 7] }
  kraft: { cardstock: us-letter, grain: long }
cards:
  - name: Rooftops
    format: us-a2
    base: kraft
    front: [{ mat: any plain cardstock of at least 65 lb cover, border: 1/8 }]
`;

it("the overview says which papers any of a kind means, and takes an offcut before a sheet", async () => {
  const files = memoryFiles({ "/desk/cards.yaml": PROJECT });
  const argv = ["plan", "cards.yaml", "--out", "plan", "--effort", "quick"];
  const { code, stderr } = await runIn(argv, { files });
  expect(code).toBe(0);
  expect(stderr).toContain("The weight of kraft is not known");
  const list = String(files.all.get("/desk/plan/cut-list.txt"));
  const [, lines = ""] = /\n {2}1b mat(.*\n.*\n.*)\n/.exec(list) ?? [];
  expect(lines.split("\n").map((line) => line.trim())).toEqual([
    "4 x 5 1/4 in      any plain cardstock of at least 65 lb cover  1",
    "from any of Night blue, cream",
    "1 from sheet-cream-1",
  ]);
  expect(list).toMatch(/sheet-cream-1: cut 1 offcut of 5 x 7/);
});
