import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";
import { testHolder } from "../test-holder.js";

const text = await readFile(
  new URL("../../../../test-fixtures/projects/lantern-bags.yaml", import.meta.url),
  "utf8",
);

async function planned(project: string) {
  const files = memoryFiles({ "/desk/bags.yaml": project });
  const ended = await runIn(["plan", "bags.yaml", "--out", "out", "--effort", "quick"], { files });
  return { ...ended, files, file: (name: string) => String(files.all.get(`/desk/out/${name}`)) };
}

// Ten bags. A bag makes 1 Rooftops and 2 Lanterns: 3 bases of 8 1/2 x 5 1/2 in, two to a letter sheet, are 2 sheets, 20 in all.
// The panel of 3 1/2 x 4 3/4 in takes a sheet of 6 x 6 in, 10 in all. Cut before are 10 mats, 4 x 5 1/4 in, and of cream and
// ember 20 bands of 3 1/4 x 2 1/4 in each.
describe("kits on the command line", () => {
  it("say that each bag makes every card, and how often each layout is cut in each", async () => {
    const { code, stdout, file } = await planned(text);
    expect(code).toBe(0);
    expect(stdout).toContain("Bags       10, all alike; each makes every card\n");
    expect(stdout).toMatch(/Night blue +20 of 20 sheets/);
    expect(stdout).toMatch(/Star pad: comets +10 of 10 sheets/);
    expect(file("cut-list.txt")).toContain("sheet-night-1: cut 1 sheet in each of 10 bags like this");
    expect(file("sheet-night-1.svg")).toContain("Lantern Night bags, for each bag");
    expect(file("sheet-night-1.txt")).toMatch(/^For each of 10 bags, all alike/);
    expect(file("sheet-cream-1.txt")).not.toContain("bag");
  });

  it("list what goes into each bag, with what to mind", async () => {
    const list = (await planned(text)).file("packing-list.txt");
    for (const line of [
      "2 sheets of Night blue, 8 1/2 x 11 in",
      "1 sheet of Star pad: comets, 6 x 6 in",
      "1 x 1b mat, 4 x 5 1/4 in",
      "2 x 2b band, 3 1/4 x 2 1/4 in",
      "2 x 2c band, 3 1/4 x 2 1/4 in",
      "2 x 2d ribbon: Copper ribbon, 4 1/4 in, 1/4 in wide",
      "2 x knot",
      "1 envelope of 4 3/8 x 5 3/4 in for Rooftops",
      "2 envelopes of 4 3/4 x 6 1/2 in for Lantern",
    ])
      expect(list).toContain(`[ ] ${line}\n`);
    expect(list).not.toContain("base");
    expect(list).toContain("A blade that cuts card cuts fingers.");
    expect(list).toContain("from children\nunder three.");
    const cutBefore = text
      .replaceAll("cost: 0.35", "hand-out: cut, cost: 0.35")
      .replace("count: 2,", "count: 20,");
    const withoutBlade = (
      await planned(
        cutBefore.replace("cost: 0.10", "hand-out: cut, cost: 0.10").replace("comets: 1", "comets: 10"),
      )
    ).file("packing-list.txt");
    expect(withoutBlade).toContain("[ ] 2 x 2a base, 8 1/2 x 5 1/2 in\n");
    expect(withoutBlade).not.toContain("A blade");
  });

  it("say which cards a bag does not make, and what would help for all bags", async () => {
    const { code, stdout, stderr } = await planned(text.replace("count: 2,", "count: 1,"));
    expect(code).toBe(1);
    expect(stdout).toMatch(/Bags +10, all alike; not each makes every card: .*(Rooftops|Lantern)/);
    expect(stderr).toContain("With 10 more of Night blue (20 in all) a plan for all was found.");
  });

  it("are bought for all bags", async () => {
    const files = memoryFiles({ "/desk/bags.yaml": text });
    const { stdout } = await runIn(["need", "bags.yaml", "--effort", "quick"], { files });
    expect(stdout).toContain(
      "For 10 bags: each gets 2 sheets of Night blue, 1 sheet of Star pad: comets and 2 x knot.",
    );
  });

  it("leave the stock sheet by sheet of all bags, and cannot be gone on from", async () => {
    const { files } = await planned(text);
    const run = (...argv: string[]) => runIn(argv, { files, holder: testHolder() });
    expect((await run("stock", "add", "bags.yaml")).code).toBe(0);
    expect(
      (await run("plan", "bags.yaml", "--stock", "stock.json", "--out", "one", "--effort", "quick")).code,
    ).toBe(0);
    const booked = await run("stock", "book", "one");
    expect(booked.code).toBe(0);
    expect(booked.stdout).toMatch(/Night blue +20 +none +none/);
    const again = await run("plan", "bags.yaml", "--stock", "stock.json", "--after", "one", "--out", "two");
    expect(again.code).toBe(2);
    expect(again.stderr).toContain("went out whole in bags");
  });

  it("list whole rolls with what the guest cuts of them, and only what there is of items that are short", async () => {
    const ribbons = await readFile(
      new URL("../../../../test-fixtures/projects/ribbon-bags.yaml", import.meta.url),
      "utf8",
    );
    const { code, stdout, stderr, file } = await planned(ribbons);
    expect(code).toBe(1);
    expect(stdout).toContain(`Items      plum ribbon    6 of 6 rolls of 1 yd   fewest possible, proven
           copper ribbon  5 of 5 rolls of 12 in  6 needed for all
           gem            12
`);
    expect(stdout).toContain("Bags       6, all alike; not each makes every card: Moth\n");
    expect(stderr).toContain("Cannot be planned as asked: too little of copper ribbon.");
    const list = file("packing-list.txt");
    expect(list).toContain(`RIBBONS AND TAPES
[ ] 1 roll of plum ribbon, 1 yd, 1/4 in wide

EXTRAS
[ ] 2 x gem
`);
    expect(list).toContain("[ ] 1 x Moth (pieces or items are missing: see cut-list.txt)\n");
    // A length of 4 in shows within the border, and 1/2 in more at both ends is taped behind.
    expect(list).toContain("[ ] plum ribbon: cut 1 roll of 1 yd into 1 of 5 in\n");
    expect(file("cut-list.txt")).toContain(`  1d ribbon: 6 of 5 in
  in each of 6 bags cut 1 roll of 1 yd into 1 of 5 in
`);
    expect(file("cut-list.txt")).toContain(`  2d ribbon: 6 of 7 in
  for the complete copies cut 5 rolls of 12 in into 1 of 7 in each
`);
  });

  it("count items that are cut or dealt out for all by the bag", async () => {
    const { stdout, file } = await planned(text);
    // Twenty lengths of 4 1/4 in are 85 of 108 in; two knots for each Lantern's bag.
    expect(stdout).toContain(`Items      copper ribbon  1 of 1 roll of 3 yd  fewest possible, proven
           knot           20 of 24
`);
    expect(file("cut-list.txt")).toContain("  cut 1 roll of 3 yd into 20 of 4 1/4 in\n");
    expect(file("packing-list.txt")).toContain("[ ] 2 x 2d ribbon: Copper ribbon, 4 1/4 in, 1/4 in wide\n");
  });
});
