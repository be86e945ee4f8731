import { inches, millimetres } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { type ProjectFault, readProject, readShelf, shelfOf } from "../../src/index.js";
import type { FileObject, FileValue } from "../random-draw.js";
import { randomProject } from "../random-project.js";

const SHELF = `sheetwright-shelf: 1
papers:
  night: { cardstock: us-letter, count: 20, grain: long, weight: 80 lb cover, cost: 0.35 }
  cream:
    cardstock: us-letter
    count: 12
    name: 007
    offcuts: [4 x 8 1/2, { size: 2 x 11, count: 3 }]
  stars: { pad: 6 x 6, designs: { dots: 6, comets: { count: 6, pattern: one-way } } }
trimmers:
  small trimmer: { longest-cut: 12, narrowest-hold: 1 1/2 }
  large cutter: { longest-cut: 18, cuts: strips }
dies:
  star: 3 x 3
  tag: { blank: 2 1/2 x 4 1/2 }
  moon: { size: 2 x 2, margin: 1/8 }
  leaf: { size: 2 x 3, blank: 2 1/4 x 4 }
rates: { currency: $, hour: 18.50, minutes-per-card: 12 }
`;

const PROJECT = `sheetwright: 1
title: Lantern Night workshop
shelf: my-shelf.yaml
papers:
  night: shelf
  pale: { shelf: cream, count: 4 }
  stars: shelf
trimmer: small trimmer
cards:
  - name: Rooftops
    format: us-a7
    base: night
    front:
      - die: star
        paper: pale
        top: 1
`;

const shelved = (project: string, shelf = SHELF) =>
  readProject(project, { file: "cards.yaml", shelf: { file: "my-shelf.yaml", text: shelf } });

/** A fault in short: `my-shelf.yaml:3:5 papers.x: what is wrong`. */
const told = ({ file = "cards.yaml", line, column, path, message }: ProjectFault) =>
  `${file}:${line}:${column} ${path}: ${message}`;

describe("a project with a shelf", () => {
  const { project, faults } = shelved(PROJECT);

  it("takes papers as they are on the shelf, under a key of its own, with keys of its own before those of the shelf", () => {
    expect(faults).toEqual([]);
    const [night, pale, stars] = project?.papers ?? [];
    expect(night).toMatchObject({ id: "night", grain: "height", weight: { text: "80 lb cover" } });
    expect(night?.designs[0]).toMatchObject({ count: 20, cost: "0.35" });
    expect(pale).toMatchObject({ id: "pale", name: "007" });
    expect(pale?.designs[0]).toMatchObject({
      id: "pale",
      count: 4,
      offcuts: [
        { width: inches(4), height: inches(8.5), count: 1 },
        { width: inches(2), height: inches(11), count: 3 },
      ],
    });
    expect(stars?.designs.map(({ id, count, front }) => [id, count, front.pattern])).toEqual([
      ["stars.dots", 6, "none"],
      ["stars.comets", 6, "one-way"],
    ]);
  });

  it("takes a trimmer by its name, alone or with keys of its own", () => {
    expect(project?.trimmer).toMatchObject({ longestCut: inches(12), narrowestHold: inches(1.5) });
    const own = "trimmer: { shelf: large cutter, longest-cut: 15 }";
    const other = shelved(PROJECT.replace("trimmer: small trimmer", own));
    expect(other.project?.trimmer).toMatchObject({ longestCut: inches(15), cuts: "strips" });
  });

  it("takes the only trimmer of a shelf without its name", () => {
    const only = SHELF.replace(/^ {2}large cutter.*\n/m, "");
    const text = PROJECT.replace("trimmer: small trimmer", "trimmer: shelf");
    expect(shelved(text, only).project?.trimmer).toEqual(shelved(PROJECT, only).project?.trimmer);
    expect(shelved(text).faults.map(told)).toEqual([
      'cards.yaml:8:10 trimmer: The shelf has no trimmer "shelf". Its trimmers are small trimmer and large cutter.',
    ]);
  });

  it("takes rates where it has none of its own", () => {
    expect(project?.rates).toEqual({ currency: "$", hour: "18.5", minutesPerCard: "12" });
    const own = shelved(`${PROJECT}rates: { hour: 20 }\n`);
    expect(own.project?.rates).toEqual({ currency: null, hour: "20", minutesPerCard: null });
    expect(shelved(PROJECT, SHELF.replace(/^rates.*$/m, "")).project).not.toHaveProperty("rates");
  });

  it("cuts a layer by a die of the shelf or of its own, out of a blank with 1/4 in on each side unless it says otherwise", () => {
    const dieOf = (name: string, dies = "") => {
      const text = PROJECT.replace("die: star", `die: ${name}`) + dies;
      const [layer] = shelved(text).project?.cards[0]?.surfaces[0]?.layers ?? [];
      if (layer?.kind !== "die") throw new Error(`No die is called ${name}.`);
      const size = ({ width, height }: { width: number; height: number }) =>
        `${width / inches(1)} x ${height / inches(1)}`;
      return `${layer.die}: ${size(layer.cut)} out of ${size(layer.blank)}`;
    };
    expect(dieOf("star")).toBe("star: 3 x 3 out of 3.5 x 3.5");
    expect(dieOf("tag")).toBe("tag: 2 x 4 out of 2.5 x 4.5");
    expect(dieOf("moon")).toBe("moon: 2 x 2 out of 2.25 x 2.25");
    expect(dieOf("leaf")).toBe("leaf: 2 x 3 out of 2.25 x 4");
    expect(dieOf("star", "dies: { star: 1 x 2 }\n")).toBe("star: 1 x 2 out of 1.5 x 2.5");
    expect(dieOf("bird", "dies: { bird: 1 x 2 }\n")).toBe("bird: 1 x 2 out of 1.5 x 2.5");
  });

  it("reads lengths of the shelf in the unit of the shelf", () => {
    const shelf = `sheetwright-shelf: 1
units: mm
papers:
  night:
    paper: 300 x 200
    thickness: 0.3
    trim: { left: 5, top: 1/8 in }
    offcuts: [100 x 150, { size: 4 x 3 in, count: 2 }]
  stars: { pad: 150 x 150, designs: { dots: { count: 6, offcuts: [75 x 100] } } }
  cream: { cardstock: us-letter }
trimmers: { small trimmer: { longest-cut: 310, smallest-offcut: 50 x 60 } }
dies: { star: 50 x 60, moon: { size: 20 x 30, margin: 2.5 } }
`;
    const inInches = PROJECT.replace("die: star", "die: moon");
    const read = shelved(inInches, shelf);
    expect(read.faults).toEqual([]);
    const [night, pale, stars] = read.project?.papers ?? [];
    const mm = (width: number, height: number) => ({
      width: millimetres(width),
      height: millimetres(height),
    });
    expect(night).toMatchObject({
      sheet: mm(300, 200),
      thickness: millimetres(0.3),
      trim: { left: millimetres(5), top: inches(1 / 8) },
    });
    expect(night?.designs[0]?.offcuts).toEqual([
      { ...mm(100, 150), count: 1 },
      { width: inches(4), height: inches(3), count: 2 },
    ]);
    expect(stars?.designs[0]?.offcuts).toEqual([{ ...mm(75, 100), count: 1 }]);
    expect(pale?.sheet.width).toBe(inches(8.5));
    expect(read.project?.trimmer).toMatchObject({ longestCut: millimetres(310), smallestOffcut: mm(50, 60) });
    const [moon] = read.project?.cards[0]?.surfaces[0]?.layers ?? [];
    expect(moon).toMatchObject({ cut: mm(20, 30), blank: mm(25, 35) });
  });

  it("is not looked at where the project names none", () => {
    const alone = PROJECT.replace(/^shelf:.*\n/m, "").replace(
      /^papers:[\s\S]*?(?=cards:)/m,
      "papers: { night: { cardstock: us-letter }, pale: { cardstock: us-letter } }\ndies: { star: 3 x 3 }\n",
    );
    expect(shelved(alone, "no shelf at all").project).toEqual(readProject(alone).project);
    expect(readProject(alone).faults).toEqual([]);
  });
});

describe("shelfOf", () => {
  it("tells which shelf a text asks for, and never throws", () => {
    expect(shelfOf(PROJECT)).toBe("my-shelf.yaml");
    expect(shelfOf(PROJECT.replace("my-shelf.yaml", "../shelf of mine.yaml"))).toBe("../shelf of mine.yaml");
    for (const text of ["", "shelf", "shelf: 3", "shelf: [a]", "{", "title: x", "\u0000"])
      expect(shelfOf(text)).toBeNull();
  });
});

describe("what is wrong with a shelf", () => {
  const replaced = (from: string, to: string): readonly string[] => {
    expect(SHELF).toContain(from);
    return shelved(PROJECT, SHELF.replace(from, to)).faults.map(told);
  };

  it.each([
    [
      "a mistake in a paper is told with the name of the file, line and column",
      "count: 20",
      "count: many",
      'my-shelf.yaml:3:41 papers.night.count: Found "many", expected a whole number of sheets, such as 20, or as needed.',
    ],
    [
      "a misspelt key",
      "longest-cut: 12",
      "longestcut: 12",
      'my-shelf.yaml:11:20 trimmers["small trimmer"].longestcut: "longestcut" is not a key of a trimmer. Did you mean longest-cut? The keys of a trimmer are cuts, kerf, longest-cut, narrowest-hold and smallest-offcut.',
    ],
    [
      "a key that no shelf has",
      "dies:\n",
      "envelopes: 3\ndies:\n",
      'my-shelf.yaml:13:1 envelopes: "envelopes" is not a key of a shelf. The keys of a shelf are sheetwright-shelf, units, papers, trimmers, die-machine, dies and rates.',
    ],
    [
      "a length that is none",
      "narrowest-hold: 1 1/2",
      "narrowest-hold: 1/0",
      'my-shelf.yaml:11:53 trimmers["small trimmer"].narrowest-hold: "1/0" is not a length: found "0" at column 3, expected a number other than 0 below the line of the fraction. Write the fraction in full, such as 1/2.',
    ],
    [
      "a die without a size",
      "tag: { blank: 2 1/2 x 4 1/2 }",
      "tag: { margin: 1/8 }",
      "my-shelf.yaml:15:3 dies.tag: This die has neither a size nor a blank. Write size: 3 x 3, the shape that it cuts, or blank: 3 1/2 x 3 1/2.",
    ],
    [
      "a die of which nothing is left inside the margin",
      "blank: 2 1/2 x 4 1/2",
      "blank: 1/2 x 4",
      "my-shelf.yaml:15:17 dies.tag.blank: Nothing is left of this die blank inside its margin. Give the size of the shape as well, or a smaller margin.",
    ],
    [
      "a die with size, blank and margin",
      "blank: 2 1/4 x 4 }",
      "blank: 2 1/4 x 4, margin: 1 }",
      "my-shelf.yaml:17:50 dies.leaf.margin: Size and blank say how much the die blank has more on each side. Leave margin out, or one of the two.",
    ],
    [
      "a blank that is smaller than its shape",
      "blank: 2 1/4 x 4 }",
      "blank: 4 x 2 1/4 }",
      "my-shelf.yaml:17:31 dies.leaf.blank: The die blank is smaller than the shape that is cut from it. Is width x height the other way round?",
    ],
    [
      "a die that is no size",
      "star: 3 x 3",
      "star: 3",
      "my-shelf.yaml:14:9 dies.star: Found 3, expected the size of what the die cuts, such as 3 x 3, or { shape: circle, size: 3 }.",
    ],
    [
      "a rate with the sign of the currency",
      "hour: 18.50",
      "hour: $18.50",
      'my-shelf.yaml:18:29 rates.hour: Found "$18.50", expected the cost of an hour of work, such as 18.50. Write a number from 0 with a dot and at most four decimals, below 10,000,000.',
    ],
    [
      "minutes below 0",
      "minutes-per-card: 12",
      "minutes-per-card: -1",
      "my-shelf.yaml:18:54 rates.minutes-per-card: Found -1, expected minutes of work for one copy, such as 12. Write a number from 0 with a dot and at most four decimals, below 10,000,000.",
    ],
    [
      "a paper of the shelf that comes from a shelf",
      "night: { cardstock: us-letter,",
      "night: { shelf: cream,",
      "my-shelf.yaml:3:19 papers.night.shelf: A paper on the shelf is written out here, and cannot come from a shelf itself. Give it cardstock, paper, glitter or pad.",
    ],
    [
      "an offcut larger than its sheet",
      "4 x 8 1/2",
      "4 x 12",
      "my-shelf.yaml:8:15 papers.cream.offcuts[0]: An offcut of 4 x 12 in does not come out of a sheet of 8 1/2 x 11 in. Check the two, or enter it as a paper of its own.",
    ],
    [
      "no version",
      "sheetwright-shelf: 1\n",
      "\n",
      'my-shelf.yaml:2:1 sheetwright-shelf: The key "sheetwright-shelf" is missing. Write sheetwright-shelf: 1.',
    ],
    [
      "another version",
      "sheetwright-shelf: 1",
      "sheetwright-shelf: 2",
      "my-shelf.yaml:1:20 sheetwright-shelf: Found 2, expected sheetwright-shelf: 1.",
    ],
    [
      "a project in its place",
      "sheetwright-shelf: 1",
      "sheetwright: 1",
      "my-shelf.yaml:1:14 sheetwright: This is a project, and a shelf is wanted: a file that begins with sheetwright-shelf: 1 and holds papers, trimmers, dies or rates.",
    ],
  ])("%s", (_, from, to, message) => {
    expect(replaced(from, to)).toEqual([message]);
  });

  it("is told before what is wrong with the project, and hides no other mistake there", () => {
    const project = PROJECT.replace("format: us-a7", "format: us-a77").replace("die: star", "die: stag");
    const faults = shelved(project, SHELF.replace("count: 20", "count: many")).faults.map(told);
    expect(faults.map((text) => text.split(": ")[0])).toEqual([
      "my-shelf.yaml:3:41 papers.night.count",
      "cards.yaml:11:13 cards[0].format",
    ]);
  });

  it.each([
    [
      "nothing",
      "",
      "my-shelf.yaml:1:1 : The file holds nothing. Write a shelf: sheetwright-shelf: 1, then papers, trimmers, dies or rates.",
    ],
    [
      "a word",
      "paper",
      'my-shelf.yaml:1:1 : The file holds "paper" and no keys. Write a shelf: sheetwright-shelf: 1, then papers, trimmers, dies or rates.',
    ],
  ])("holds %s", (_, text, message) => {
    expect(shelved(PROJECT, text).faults.map(told)).toEqual([message]);
    expect(readShelf({ file: "my-shelf.yaml", text }).faults.map(told)).toEqual([message]);
  });

  it("cannot be read", () => {
    const [fault, ...others] = shelved(PROJECT, `${SHELF}  - [`).faults;
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ code: "not-readable", file: "my-shelf.yaml", line: 19 });
  });
});

describe("what is wrong with a project that has a shelf", () => {
  const replaced = (from: string | RegExp, to: string): readonly string[] => {
    const text = PROJECT.replace(from, to);
    expect(text).not.toBe(PROJECT);
    return shelved(text).faults.map(told);
  };

  it.each([
    [
      "a paper that is not on it",
      "shelf: cream",
      "shelf: crem",
      'cards.yaml:6:18 papers.pale.shelf: The shelf has no paper "crem". Did you mean cream? Its papers are night, cream and stars.',
    ],
    [
      "a paper with a key of its own that is not on it",
      "night: shelf",
      "ember: shelf\n  night: shelf",
      'cards.yaml:5:10 papers.ember: The shelf has no paper "ember". Its papers are night, cream and stars.',
    ],
    [
      "a name that is no text",
      "shelf: cream",
      "shelf: [cream]",
      "cards.yaml:6:11 papers.pale.shelf: The shelf has no paper a list. Its papers are night, cream and stars.",
    ],
    [
      "nothing behind the key shelf",
      "shelf: cream,",
      "shelf: ,",
      "cards.yaml:6:11 papers.pale.shelf: Nothing stands behind shelf. Its papers are night, cream and stars.",
    ],
    [
      "a trimmer that is not on it",
      "trimmer: small trimmer",
      "trimmer: smal trimmer",
      'cards.yaml:8:10 trimmer: The shelf has no trimmer "smal trimmer". Did you mean small trimmer? Its trimmers are small trimmer and large cutter.',
    ],
    [
      "a die that is not on it",
      "die: star",
      "die: stra",
      'cards.yaml:14:14 cards[0].front[0].die: No die is called "stra". Did you mean star? The dies are star, tag, moon and leaf.',
    ],
    [
      "a material beside the shelf",
      "shelf: cream",
      "shelf: cream, glitter: us-letter",
      "cards.yaml:6:34 papers.pale.glitter: A paper has one of the keys cardstock, paper, glitter, pad or shelf, and here are cardstock and glitter. Leave one of the two out.",
    ],
    [
      "an offcut of its own that is too large",
      "count: 4",
      "offcuts: [4 x 12]",
      "cards.yaml:6:35 papers.pale.offcuts[0]: An offcut of 4 x 12 in does not come out of a sheet of 8 1/2 x 11 in. Check the two, or enter it as a paper of its own.",
    ],
    [
      "a shelf that is no text",
      "shelf: my-shelf.yaml",
      "shelf: [my-shelf.yaml]",
      "cards.yaml:3:1 shelf: Found a list, expected the name of the shelf's file, such as my-shelf.yaml.",
    ],
    [
      "a die without a paper",
      "\n        paper: pale",
      "",
      'cards.yaml:14:9 cards[0].front[0].paper: The key "paper" is missing: a die-cut layer needs it. Write a paper, such as night, stars.comets or any cardstock, or a list of those.',
    ],
    [
      "a die-cut layer of a size that its die has not",
      "top: 1",
      "size: 2 x 2",
      "cards.yaml:16:15 cards[0].front[0].size: There is no die star of 2 x 2 in: it cuts 3 x 3 in. Leave size out, or write that.",
    ],
    [
      "a shape larger than the front",
      "    format: us-a7",
      "    size: 2 x 5",
      "cards.yaml:14:14 cards[0].front[0].die: The shape of the 1b die blank is 3 x 3 in, and the front of the card is 2 x 5 in: it is 1 in too wide. Take a die that is at most 2 in wide.",
    ],
  ])("%s", (_, from, to, message) => {
    expect(replaced(from, to)).toEqual([message]);
  });

  it("names none, though things are to come from one", () => {
    expect(replaced(/^shelf:.*\n/m, "")).toEqual([
      "cards.yaml:4:10 papers.night: This paper is to come from a shelf, and the project names none. Write shelf: my-shelf.yaml, the name of its file, at the top of the project.",
      "cards.yaml:5:18 papers.pale.shelf: This paper is to come from a shelf, and the project names none. Write shelf: my-shelf.yaml, the name of its file, at the top of the project.",
      "cards.yaml:6:10 papers.stars: This paper is to come from a shelf, and the project names none. Write shelf: my-shelf.yaml, the name of its file, at the top of the project.",
      "cards.yaml:7:10 trimmer: This trimmer is to come from a shelf, and the project names none. Write shelf: my-shelf.yaml, the name of its file, at the top of the project.",
      'cards.yaml:13:14 cards[0].front[0].die: No die is called "star". There is none: name it under dies, with the size of what it cuts, such as star: 3 x 3.',
    ]);
  });

  it("was read without its shelf", () => {
    expect(readProject(PROJECT).faults.map(told)).toEqual([
      'cards.yaml:3:8 shelf: The project takes from the shelf "my-shelf.yaml", and its text was not given.',
    ]);
  });

  it("is a shelf itself", () => {
    expect(readProject(SHELF).faults.map(told)).toEqual([
      "cards.yaml:1:20 sheetwright-shelf: This is a shelf, and a project is wanted: a file that begins with sheetwright: 1. A project names its shelf under the key shelf.",
    ]);
  });
});

test("a project with its shelf reads the same as the project with everything written in it", () => {
  let taken = 0;
  fc.assert(
    fc.property(
      randomProject(),
      fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 12, maxLength: 12 }),
      (file, ways) => {
        const { project, shelf, count } = dividedBy(file, ways);
        taken += count;
        const read = readProject(JSON.stringify(project), {
          shelf: { file: "shelf.json", text: JSON.stringify(shelf) },
        });
        expect(read.faults).toEqual([]);
        expect(read.project).toEqual(readProject(JSON.stringify(file)).project);
      },
    ),
  );
  expect(taken).toBeGreaterThan(0);
});

/** A project file divided into a shelf and what is left, each paper and the trimmer in one of four ways. */
function dividedBy(file: FileObject, ways: readonly number[]) {
  const shelf: Record<string, Record<string, FileValue>> = { papers: {}, trimmers: {} };
  let count = 0;
  const papers = Object.entries(file.papers as FileObject).map(([id, paper], index): [string, FileValue] => {
    const way = ways[index % ways.length] ?? 0;
    const keys = paper as FileObject;
    if (way === 0) return [id, paper];
    count++;
    if (way === 1) {
      shelf.papers![id] = paper;
      return [id, "shelf"];
    }
    // Some keys stay with the project, and what the shelf says of them does not count.
    const stays = Object.keys(keys).filter((key) =>
      ["count", "name", "cost", "offcuts", "trim"].includes(key),
    );
    shelf.papers![`own-${index}`] =
      way === 2
        ? Object.fromEntries(Object.entries(keys).filter(([key]) => !stays.includes(key)))
        : { ...keys, ...(stays.includes("count") ? { count: 77 } : {}) };
    return [
      id,
      { shelf: `own-${index}`, ...Object.fromEntries(stays.map((key) => [key, keys[key] as FileValue])) },
    ];
  });
  const trimmer = file.trimmer as FileObject | undefined;
  const byName = trimmer !== undefined && ways[0] !== 0;
  if (byName) shelf.trimmers!["my trimmer"] = trimmer;
  const { dies, rates, ...rest } = file;
  const onShelf = ways[1] !== 0;
  return {
    count,
    project: {
      ...rest,
      shelf: "shelf.json",
      papers: Object.fromEntries(papers),
      ...(byName ? { trimmer: ways[0] === 1 ? "my trimmer" : { shelf: "my trimmer" } } : {}),
      ...(onShelf || dies === undefined ? {} : { dies }),
      ...(onShelf || rates === undefined ? {} : { rates }),
    },
    shelf: {
      "sheetwright-shelf": 1,
      ...(file.units === undefined ? {} : { units: file.units }),
      ...(Object.keys(shelf.papers!).length === 0 ? {} : { papers: shelf.papers }),
      trimmers: shelf.trimmers,
      ...(onShelf && dies !== undefined ? { dies } : {}),
      ...(onShelf && rates !== undefined ? { rates } : {}),
    },
  };
}
