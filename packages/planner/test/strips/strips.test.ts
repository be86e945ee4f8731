import { type Project, readProject } from "@sheetwright/cards";
import { inches } from "@sheetwright/measure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { projectOf, randomProject } from "../../../cards/test/random-project.js";
import { layoutMarks, type Plan, plan, planAsync, planSteps, verifyPlan } from "../../src/index.js";
import { provenPlan } from "../bench-project.js";

/** A card with a disc, and what the project says besides. */
function discs({
  size = "1 3/4",
  copies = "16",
  cream = "cardstock: us-letter",
  machine = "{}",
  more = "",
}: {
  readonly size?: string;
  readonly copies?: string;
  readonly cream?: string;
  readonly machine?: string;
  readonly more?: string;
} = {}): Project {
  const { project } = readProject(`{ sheetwright: 1, title: Discs, copies: ${copies}, die-machine: ${machine},
    papers: { night: { cardstock: us-letter }, cream: { ${cream} } },
    dies: { disc: { shape: circle, size: ${size} }, tall: { size: 1 1/2 x 3 }, wide: { size: 4 x 1 } },
    ${more}
    cards: [{ name: Disc, format: us-a2, base: night, front: [{ die: disc, paper: cream }] }] }`);
  if (project === null) throw new Error("The project has faults.");
  return project;
}

const creamOf = (found: Plan) => found.groups.find(({ designs }) => designs[0] === "cream")!;
const used = (found: Plan) => found.use.find(({ design }) => design === "cream")?.used;
const cutOf = (found: Plan) =>
  creamOf(found)
    .problem.kinds.map(({ name, quantity }) => `${quantity} ${name}`)
    .join(", ");

describe("several shapes of a die along one strip", () => {
  // By hand: 4 x 1 3/4 in and five margins of 1/4 in (common practice, as a maker's blanks have it) are 8 1/4 in, which a
  // letter sheet 8 1/2 in wide gives; four blanks of 2 1/4 in are 9 in, which it does not give.
  test("save a sheet: sixteen discs of 1 3/4 in from one letter sheet instead of two", () => {
    const found = provenPlan(discs());
    expect(used(found)).toBe(1);
    expect(cutOf(found)).toBe("4 1b, strip of 4");
    expect(creamOf(found).strips).toEqual([{ kind: "1b*4", piece: "1b", holds: 4, along: ["width"] }]);
    expect(creamOf(found).problem.kinds[0]?.forms).toMatchObject([
      { width: inches(4 * 1.75 + 5 * 0.25), height: inches(2.25) },
    ]);
    expect(found.complete).toEqual([{ card: 1, wanted: 16, complete: 16 }]);
    const single = provenPlan(discs({ machine: "{ strips: false }" }));
    expect(used(single)).toBe(2);
    expect(cutOf(single)).toBe("16 1b die blank");
    expect(creamOf(single)).not.toHaveProperty("strips");
    expect(creamOf(single)).not.toHaveProperty("endless");
  });

  test.each(["4", "{ guests: 4, spares: 2 }"])(
    "prove right beside pieces of their paper that are all cut already, with copies: %s",
    (copies) => {
      const both = discs({ copies, cream: "cardstock: us-letter, count: 3" });
      const cards = both.cards.map((one) => ({ ...one, base: { faces: ["cream"], text: "cream" } }));
      const found = provenPlan({ ...both, cards, cutAlready: [{ piece: "1a", count: 4 }] });
      expect(creamOf(found).problem.kinds[0]).toMatchObject({ id: "1a", name: "1a base" });
      expect(creamOf(found)).toHaveProperty("endless");
      expect(found.complete).toMatchObject([{ wanted: 4, complete: 4 }]);
    },
  );

  test("leave more that is worth keeping: eight discs of 2 in from letter", () => {
    const found = provenPlan(discs({ size: "2", copies: "8" }));
    const single = provenPlan(discs({ size: "2", copies: "8", machine: "{ strips: false }" }));
    const kept = (one: Plan) =>
      one.leftovers
        .filter(({ design, keep }) => design === "cream" && keep)
        .reduce((sum, { width, height, count }) => sum + (width * height * count) / inches(1) ** 2, 0);
    expect([used(single), kept(single)]).toEqual([1, 3.5 * 11]);
    expect([used(found), kept(found)]).toEqual([1, 3.75 * 11]);
    // By hand: two of 2 in and three margins are 4 3/4 in, two blanks 5 in.
    expect(cutOf(found)).toBe("4 1b, strip of 2");
  });

  test("are not cut where they save nothing", () => {
    expect(cutOf(provenPlan(discs({ copies: "4", cream: "cardstock: 2 1/4 x 4 1/2" })))).toBe(
      "4 1b die blank",
    );
  });

  test("take a strip of what remains, or a single blank", () => {
    const counts = (copies: string) =>
      cutOf(provenPlan(discs({ copies, cream: "cardstock: us-letter, count: 1" })));
    expect(counts("13")).toMatch(/strip of/);
    expect(counts("14")).toMatch(/^\d 1b, strip of \d, 1 1b, strip of \d$/);
  });

  test("are as long as no plate, but no wider", () => {
    const machine = (platform: string) => cutOf(provenPlan(discs({ machine: `{ platform: ${platform} }` })));
    expect(machine("2 1/4 x 2 1/4")).toBe("4 1b, strip of 4");
    expect(machine("2 1/8 x 9")).toBe("16 1b die blank");
  });

  test("lie with the pattern upright, all the same way up", () => {
    const found = provenPlan(discs({ cream: "cardstock: us-letter, pattern: one-way", copies: "16" }));
    expect(used(found)).toBe(1);
    const [kind] = creamOf(found).problem.kinds;
    expect(creamOf(found).strips?.[0]?.along).toEqual(["width", "height"]);
    for (const { sheets } of kind!.forms) expect(sheets).toEqual([{ sheet: "cream", turns: "upright" }]);
    const { forms } = layoutMarks(found, 1);
    expect(forms[kind!.id]?.map(({ topOn }) => topOn)).toEqual([["cream"], ["cream"]]);
  });

  test("are rounded up to the precision, with all margins alike", () => {
    // Six points on a circle of 2 in: the box is 2 in high and 1.732 in wide (from memory: the root of three).
    const { project } = readProject(`{ sheetwright: 1, title: Stars, copies: 24,
      papers: { night: { cardstock: us-letter }, cream: { cardstock: us-letter } },
      dies: { comet: { shape: { kind: polygon, sides: 6 }, size: 2 } },
      cards: [{ name: Star, format: us-a2, base: night, front: [{ die: comet, paper: cream }] }] }`);
    const found = provenPlan(project!);
    const { strips, problem } = creamOf(found);
    const [strip] = strips!;
    const forms = layoutMarks(found, 1).forms[strip!.kind]!;
    for (const [f, side] of strip!.along.entries()) {
      const length = problem.kinds.find(({ id }) => id === strip!.kind)!.forms[f]![side];
      const { cut } = forms[f]!.die!;
      expect(length % inches(1 / 16)).toBe(0);
      const at = forms[f]!.shapesAt!.map(({ x, y }) => (side === "width" ? x : y));
      expect(at).toHaveLength(strip!.holds);
      const ends = [...at, length].map((start, i) => start - (i === 0 ? 0 : at[i - 1]! + cut[side]));
      expect(Math.max(...ends) - Math.min(...ends)).toBeLessThanOrEqual(1);
      expect(Math.min(...ends)).toBeGreaterThanOrEqual(inches(1 / 4));
    }
  });

  test("are looked for where stock is short, and taken where they give everything", () => {
    const found = provenPlan(discs({ cream: "cardstock: us-letter, count: 1" }));
    expect([found.enough, cutOf(found)]).toEqual(["yes", "4 1b, strip of 4"]);
  });

  test("are left where they do not give everything either, and nothing is said to be proven that strips might change", () => {
    const wanted = discs({ copies: "20", cream: "cardstock: us-letter, count: 1" });
    const found = provenPlan(wanted);
    expect([found.enough, cutOf(found)]).toEqual(["not-found", "20 1b die blank"]);
    // With single blanks it is proven, and so it would be told without strips.
    expect(creamOf(found).packing.outcome).toBe("short");
    expect(found.shortages).toMatchObject([{ outcome: "not-found", atLeast: null }]);
  });

  test("are proven to be of no help where even shares without end are too many", () => {
    const found = provenPlan(discs({ copies: "100", cream: "cardstock: us-letter, count: 1" }));
    expect(found.enough).toBe("no");
    expect(found.shortages).toMatchObject([{ outcome: "short" }]);
    expect(creamOf(found).endless?.packing.outcome).toBe("short");
  });

  test("give spare copies that single blanks do not", () => {
    const spares = (machine: string) =>
      provenPlan(
        discs({
          copies: "{ guests: 12, spares: 4 }",
          cream: "cardstock: us-letter, count: 1",
          machine,
        }),
      ).complete[0]?.spares?.made;
    expect(spares("{ strips: false }")).toBe(0);
    expect(spares("{}")).toBe(4);
  });

  test("are planned the same with pauses, and ended early are right too", async () => {
    const wanted = discs();
    const found = plan(wanted, { effort: "quick" });
    expect(JSON.stringify(await planAsync(wanted, { effort: "quick" }))).toBe(JSON.stringify(found));
    for (const stopAt of [1, 4, 12]) {
      const steps = planSteps(wanted, { effort: "quick" });
      let step = steps.next();
      for (let i = 1; !step.done; i++) step = steps.next(i >= stopAt);
      expect(step.value.search.cancelled).toBe(true);
      expect(verifyPlan(wanted, step.value)).toEqual([]);
    }
  });
});

// A project takes some 100 ms, so a tenth of the usual runs.
const runs = { numRuns: Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 10) };

/** Dies of two sizes with many copies, from one or two papers, cut by any tool. */
const ofDies = fc
  .record({
    copies: fc.integer({ min: 1, max: 24 }),
    sizes: fc.array(fc.integer({ min: 4, max: 14 }), { minLength: 1, maxLength: 2 }),
    count: fc.option(fc.integer({ min: 1, max: 3 })),
    cost: fc.option(fc.constantFrom("0.35", "1.2")),
    offcut: fc.option(fc.constantFrom("5 x 8", "2 1/4 x 11")),
    pattern: fc.constantFrom("none", "one-way"),
    cuts: fc.constantFrom("edge-to-edge", "strips"),
    kerf: fc.constantFrom("0", "1/16"),
    platform: fc.constantFrom("small", "2 3/4 x 6"),
    both: fc.boolean(),
  })
  .map(({ copies, sizes, count, cost, offcut, pattern, cuts, kerf, platform, both }) => {
    const own = [
      "cardstock: us-letter",
      `pattern: ${pattern}`,
      ...(count === null ? [] : [`count: ${count}`]),
      ...(cost === null ? [] : [`cost: ${cost}`]),
      ...(offcut === null ? [] : [`offcuts: [${offcut}]`]),
    ].join(", ");
    const dies = sizes.map((size, i) => `die${i}: { shape: oval, size: ${size}/4 x ${size + i}/4 }`);
    const layers = sizes.map((_, i) => `{ die: die${i}, paper: ${both ? "[cream, pale]" : "cream"} }`);
    const { project, faults } = readProject(`{ sheetwright: 1, title: Ovals, copies: ${copies},
      trimmer: { cuts: ${cuts}, kerf: ${kerf} }, die-machine: { platform: ${platform} },
      papers: { night: { cardstock: us-letter }, cream: { ${own} }, pale: { cardstock: 6 x 12, cost: 0.4 } },
      dies: { ${dies.join(", ")} },
      cards: [{ name: Oval, format: us-a7, base: night, front: [${layers.join(", ")}] }] }`);
    if (project === null) throw new Error(JSON.stringify(faults));
    return project;
  });

function withStrips(project: Project, strips: boolean): Project {
  const usual = {
    platform: { width: inches(6), height: inches(9) },
    margin: inches(1 / 4),
    narrowestBridge: 0,
  };
  return { ...project, dieMachine: { ...(project.dieMachine ?? usual), strips } };
}

/** Compares a plan with that of single blanks; gives the number of kinds that are strips. */
function compare(wanted: Project): number {
  const [found, single] = [provenPlan(withStrips(wanted, true)), provenPlan(withStrips(wanted, false))];
  const hasSpares = found.complete.some(({ spares }) => spares !== undefined);
  for (const { strips = [] } of single.groups) expect(strips).toEqual([]);
  for (const [g, { packing, strips = [], problem }] of hasSpares ? [] : found.groups.entries()) {
    const other = single.groups[g]!;
    if (strips.length === 0)
      expect([problem, packing.layouts]).toEqual([other.problem, other.packing.layouts]);
    else if (other.packing.outcome === "complete")
      expect(BigInt(packing.cost)).toBeLessThanOrEqual(BigInt(other.packing.cost));
  }
  for (const [c, { complete }] of single.complete.entries())
    expect(found.complete[c]?.complete).toBeGreaterThanOrEqual(complete);
  if (single.enough === "yes") expect(found.enough).toBe("yes");
  if (found.enough === "no") expect(single.enough).toBe("no");
  return found.groups.reduce((sum, { strips = [] }) => sum + strips.length, 0);
}

describe("strips, in projects made at random", () => {
  test("prove right, give every copy, and never cost more than single blanks", () => {
    let strips = 0;
    fc.assert(
      fc.property(ofDies, (wanted) => {
        strips += compare(wanted);
      }),
      runs,
    );
    expect(strips).toBeGreaterThan(0);
  });

  test("do so among everything else that a project may hold", () => {
    const drawn = randomProject({ cards: 2, copies: 9, layers: 2 }).map(projectOf);
    fc.assert(
      fc.property(drawn, (wanted) => {
        compare(wanted);
      }),
      { numRuns: Math.ceil(runs.numRuns / 2) },
    );
  });
});
