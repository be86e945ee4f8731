import { inches } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import {
  checkProject,
  findProjectFaults,
  type Project,
  readProject,
  type Silence,
  silenceableCodes,
} from "../../src/index.js";
import { checkProjects } from "../random-expansion.js";
import { bands, byBorder, card, paper, project } from "../small-project.js";

const night = paper("night", inches(8.5), inches(11), { grain: "height" });
const cream = paper("cream", inches(8.5), inches(11));
const thirds = bands([1, 1, 1], byBorder(0));

/** Three cards with bare seams on them; what is found, in short. */
function found(...silences: readonly Partial<Silence>[]) {
  const cards = [1, 2, 11].map((number) => card(inches(5), inches(7), [thirds], { number }));
  const whole = project(cards, {
    papers: [night, cream],
    silences: silences.map((silence, index) => ({
      path: `silence[${index}]`,
      check: "bare-seam",
      at: null,
      because: "wanted so",
      ...silence,
    })),
  });
  return checkProject(whole).map(({ code, path, silenced }) => [code, path, silenced]);
}

const BARE = ["cards[0].front[0]", "cards[1].front[0]", "cards[10].front[0]"];

describe("a silence", () => {
  it("gives its reason to all that its check finds", () => {
    expect(found({})).toEqual(BARE.map((path) => ["bare-seam", path, "wanted so"]));
  });

  it("holds at its place and below, not where a name only begins alike", () => {
    expect(found({ at: "cards[1]" }).map(([, , silenced]) => silenced)).toEqual([null, "wanted so", null]);
    expect(found({ at: "cards[1].front[0]" }).map(([, , silenced]) => silenced)).toEqual([
      null,
      "wanted so",
      null,
    ]);
    expect(found({ at: "cards" }).every(([, , silenced]) => silenced === "wanted so")).toBe(true);
  });

  it("gives way to the one before it, and is no less of use", () => {
    expect(found({ at: "cards[0]", because: "first" }, { because: "second" })).toEqual(
      BARE.map((path, index) => ["bare-seam", path, index === 0 ? "first" : "second"]),
    );
  });

  it("that silences nothing is told, with where it would", () => {
    const idle = (at: string | null, check: Silence["check"] = "bare-seam") => {
      const whole = project(
        [1, 2, 3, 4].map((number) => card(inches(5), inches(7), [thirds], { number })),
        {
          papers: [night, cream],
          silences: [{ path: "silence[0]", check, at, because: "wanted so" }],
        },
      );
      return checkProject(whole).filter(({ code }) => code === "silence-unused");
    };
    expect(idle("papers.night")).toEqual([
      {
        code: "silence-unused",
        severity: "note",
        path: "silence[0]",
        message:
          "Nothing is silenced here: bare-seam finds nothing at papers.night, but at cards[0].front[0], cards[1].front[0], " +
          "cards[2].front[0] and 1 more places. Name that place, or leave this silence out.",
        silenced: null,
      },
    ]);
    expect(idle("cards[0]", "hidden-layer")).toMatchObject([
      {
        message: "Nothing is silenced here: hidden-layer finds nothing at cards[0]. Leave this silence out.",
      },
    ]);
    expect(idle(null, "hidden-layer")).toMatchObject([
      { message: "Nothing is silenced here: hidden-layer finds nothing. Leave this silence out." },
    ]);
    expect(idle(null)).toEqual([]);
  });

  it("of idle silences covers those, but not itself", () => {
    const idle = { check: "hidden-layer", because: "for later" } as const;
    const ofIdle = { check: "silence-unused", because: "both are for later" } as const;
    expect(found({}, idle, ofIdle).slice(3)).toEqual([
      ["silence-unused", "silence[1]", "both are for later"],
    ]);
    expect(found({}, ofIdle).slice(3)).toEqual([["silence-unused", "silence[1]", null]]);
  });
});

/** A project of two cards with a bare seam each, and these silences. */
const file = (silence: string) => `sheetwright: 1
title: Two cards
papers:
  night: { cardstock: us-letter, grain: long }
cards:
  - { name: Rooftops, format: us-a2, base: night, front: [{ bands: [1, 3], papers: [night, night], border: 1/8 }] }
  - { name: Moth, format: us-a2, base: night, front: [{ bands: [1, 3], papers: [night, night], border: 1/8 }] }
silence:
  - ${silence}
`;

describe("in the file", () => {
  const read = (silence: string): Project | null => readProject(file(silence)).project;

  it("a card is named by its name, a place as a finding names it", () => {
    expect(read("{ check: bare-seam, at: Moth, because: wanted so }")?.silences).toEqual([
      { path: "silence[0]", check: "bare-seam", at: "cards[1]", because: "wanted so" },
    ]);
    expect(
      read("{ check: bare-seam, at: 'cards[0].front[0].papers[1]', because: x }")?.silences,
    ).toMatchObject([{ at: "cards[0].front[0].papers[1]" }]);
    expect(read("{ check: unused-paper, at: papers.night, because: x }")?.silences).toMatchObject([
      { at: "papers.night" },
    ]);
  });

  it.each([
    [
      "{ check: bare-seem, because: x }",
      "silence[0].check",
      "bare-seam",
      'There is no check "bare-seem". Did you mean bare-seam?',
    ],
    [
      "{ check: too-large, because: x }",
      "silence[0].check",
      null,
      "What too-large finds keeps the cards from being made, so it cannot be silenced.",
    ],
    ["{ check: no-paper, because: x }", "silence[0].check", null, "cannot be silenced. Mend it instead"],
    ["{ check: everything, because: x }", "silence[0].check", null, "What can be silenced is "],
    [
      "{ check: bare-seam }",
      "silence[0].because",
      null,
      'The key "because" is missing. Write the reason, such as wanted so.',
    ],
    ["{ check: bare-seam, because: ' ' }", "silence[0].because", null, "The text is empty."],
    [
      "{ check: bare-seam, at: Month, because: x }",
      "silence[0].at",
      "Moth",
      'There is no card and no place "Month" in this file. Did you mean Moth?',
    ],
    [
      "{ check: bare-seam, at: 'cards[2]', because: x }",
      "silence[0].at",
      null,
      "cards and layers are counted from 0",
    ],
    ["{ check: bare-seam, at: 'cards[0', because: x }", "silence[0].at", null, 'no place "cards[0"'],
    [
      "{ check: bare-seam, because: x }\n  - { check: bare-seam, because: y }",
      "silence[1]",
      null,
      "The check bare-seam is silenced there already.",
    ],
    [
      "{ check: bare-seam, because: x, reason: y }",
      "silence[0].reason",
      null,
      '"reason" is not a key of a silence.',
    ],
    [
      "bare-seam",
      "silence[0]",
      null,
      'Found "bare-seam", expected { check: bare-seam, because: wanted so }.',
    ],
  ])("is refused where it makes no sense: %s", (silence, path, suggestion, words) => {
    const { project: none, faults } = readProject(file(silence));
    expect(none).toBeNull();
    expect(faults[0]).toMatchObject({ path, suggestion, message: expect.stringContaining(words) });
  });

  it("two cards of one name are told apart by their places", () => {
    const twice = file("{ check: bare-seam, at: Moth, because: x }").replace("Rooftops", "Moth");
    expect(readProject(twice).faults).toMatchObject([
      { path: "silence[0].at", message: '2 cards are called "Moth". Write cards[0] or cards[1] instead.' },
    ]);
  });

  it("a card whose name cannot be read makes no second fault", () => {
    const nameless = file("{ check: bare-seam, at: Moth, because: x }").replace("name: Moth", "name: ''");
    expect(readProject(nameless).faults.map(({ path }) => path)).toEqual(["cards[1].name"]);
  });
});

it("in a project made by a program, what cannot be silenced and an empty reason are faults", () => {
  const broken = project([card(inches(5), inches(7), [])], {
    silences: [{ path: "silence[0]", check: "no-paper" as Silence["check"], at: null, because: "" }],
  });
  expect(findProjectFaults(broken).map(({ code, path }) => [code, path])).toEqual([
    ["not-a-word", "silence[0].check"],
    ["missing", "silence[0].because"],
  ]);
});

it("silencing neither adds nor takes away a finding, in projects made at random", () => {
  checkProjects(({ project: whole }) => {
    const loud = checkProject({ ...whole, silences: [] });
    const silences = silenceableCodes
      .filter((check) => loud.some(({ code }) => code === check))
      .map((check, index) => ({ path: `silence[${index}]`, check, at: null, because: "known" }));
    const quiet = checkProject({ ...whole, silences });
    expect(quiet.map((one) => ({ ...one, silenced: null }))).toEqual(loud);
    for (const { severity, silenced } of quiet) expect(silenced).toBe(severity === "error" ? null : "known");
  });
});
