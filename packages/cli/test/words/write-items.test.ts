import { expandProject, readProject } from "@sheetwright/cards";
import { expect, test } from "vitest";
import { writeItems, writeJoins } from "../../src/words/write-items.js";

const { project } = readProject(`sheetwright: 1
title: Pieced together
copies: 12
papers:
  night: { cardstock: us-letter, grain: long }
  stars: { pad: 6 x 6, designs: { dots: 60 } }
cards:
  - name: Rooftops
    format: us-a7
    base: night
    front:
      - mat: stars.dots
        border: 1/8
        join: { parts: 2, tape: washi, width: 1/4 }
      - { bands: halves, papers: [night, night], border: 1/4, seam: { ribbon: copper ribbon, width: 3/8 } }
  - name: Comets
    format: us-a7
    base: night
    front:
      - panel: stars.dots
        border: 1/4
        join: { hide: below the layer }
        layers: [{ strip: night, width: 1, bottom: 0 }]
      - { bands: halves, papers: [night, night], border: 1/4, seam: { ribbon: copper ribbon, width: 3/8 } }
`);
if (project === null) throw new Error("The project has faults.");
const expansion = expandProject(project);

test("ribbons and tapes are listed with what all copies take", () => {
  // A ribbon over 4 1/4 in takes 1/2 in more at each end; 12 and 13 copies of 5 1/4 in and 5 1/2 in.
  expect(writeItems(expansion, (card) => (card === 1 ? 12 : 13))).toEqual([
    "RIBBONS AND TAPES",
    "",
    "washi tape, 1/4 in wide: 57 in in all",
    "  1d tape: 12 of 4 3/4 in",
    "copper ribbon, 3/8 in wide: 134 1/2 in in all",
    "  1g ribbon: 12 of 5 1/4 in",
    "  2f ribbon: 13 of 5 1/2 in",
    "",
  ]);
});

test("a ribbon that cards write with other capitals is one ribbon, and called one once", () => {
  const items = expansion.items.map((item) =>
    item.card === 2 ? item : { ...item, name: item.name.replace("copper ribbon", "Copper Ribbon") },
  );
  expect(writeItems({ ...expansion, items }, () => 1).slice(4)).toEqual([
    "Copper Ribbon, 3/8 in wide: 10 3/4 in in all",
    "  1g ribbon: 1 of 5 1/4 in",
    "  2f ribbon: 1 of 5 1/2 in",
    "",
  ]);
});

test("layers larger than their paper are listed with what they are made up of", () => {
  expect(writeJoins(expansion)).toEqual([
    "LARGER THAN THEIR PAPER",
    "",
    "A mat 6 3/4 in high, of which its paper gives 6 in: made up of 1b mat part and 1c mat part.",
    "A panel 6 1/2 in high, of which its paper gives 6 in: 2b panel is cut short below another layer.",
    "",
  ]);
});

test("nothing is written where there is none of either", () => {
  expect(writeItems({ items: [], units: "in" }, () => 1)).toEqual([]);
  expect(writeJoins({ cards: [], pieces: [], units: "in" })).toEqual([]);
});
