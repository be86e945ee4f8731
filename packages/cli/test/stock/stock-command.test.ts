import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { Ajv2020 } from "ajv/dist/2020.js";
import { beforeAll, describe, expect, it } from "vitest";
import { isSealed } from "../../src/folder/seal.js";
import { readStockText } from "../../src/stock/read-stock-text.js";
import type { StockSummary } from "../../src/stock/stock-command.js";
import { stockFileJsonSchema } from "../../src/stock/stock-file.js";
import { type MemoryFiles, memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";
import { testHolder } from "../test-holder.js";

const CARDS = `sheetwright: 1
title: Evening workshop
copies: 8
papers:
  night: { name: Night blue, cardstock: us-letter, count: 6, grain: long, offcuts: [{ size: 5 1/2 x 8 1/2, count: 2 }] }
  stars: { pad: 6 x 6, designs: { dots: 6, comets: { count: 8, pattern: one-way } } }
cards:
  - name: Lantern
    format: us-a2
    base: night
    front:
      - { panel: stars.comets, border: 1/8 }
`;
/** The same cards with as many sheets as it takes, whatever is on hand. */
const ANY = CARDS.replace(/count: \d+/g, "count: as needed").replace(/, offcuts: \[.*?\]/, "");

const sheetwright = (files: MemoryFiles, line: string) =>
  runIn(line.split(" "), { files, holder: testHolder() });
const stockOf = (files: MemoryFiles) => String(files.all.get("/desk/stock.json"));
const said = (files: MemoryFiles) => JSON.parse(stockOf(files));

let planned: ReadonlyMap<string, string | Uint8Array>;
beforeAll(async () => {
  const files = memoryFiles({ "/desk/cards.yaml": CARDS });
  await sheetwright(files, "stock add cards.yaml");
  const { code } = await sheetwright(files, "plan cards.yaml --stock stock.json --out plan --effort quick");
  expect(code).toBe(0);
  planned = new Map(files.all);
});
/** A desk with the project, its stock of revision 1, and a plan made from that. */
const desk = (): MemoryFiles => memoryFiles(Object.fromEntries(planned));

describe("a stock", () => {
  it("starts from the counts and offcuts of a project", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": CARDS });
    const { code, stdout, stderr } = await sheetwright(files, "stock add cards.yaml");
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toBe(`Added: Night blue, stars: dots, stars: comets.

On hand (stock.json, revision 1)

paper          sheets  offcuts
Night blue     6       2 of 5 1/2 x 8 1/2 in
stars: dots    6       none
stars: comets  8       none
`);
    expect(said(files)).toMatchObject({
      sheetwright: "stock",
      version: 1,
      revision: 1,
      papers: {
        night: { sheet: "8 1/2 x 11 in", grain: "height", sheets: 6, offcuts: { "5 1/2 x 8 1/2 in": 2 } },
      },
    });
    expect(isSealed(stockOf(files))).toBe(true);
  });

  it("gets the papers of another project beside its own, and keeps what it has of those it knows", async () => {
    const files = desk();
    const other = CARDS.replace("count: 6, grain", "count: 99, grain")
      .replace("pad: 6 x 6", "pad: 12 x 12")
      .replaceAll("stars", "moons");
    files.all.set("/desk/other.yaml", other);
    const { stdout } = await sheetwright(files, "stock add other.yaml");
    expect(stdout).toContain("Added: moons: dots, moons: comets.");
    expect(said(files).papers).toMatchObject({ night: { sheets: 6 }, "moons.dots": { sheets: 6 } });
    const again = await sheetwright(files, "stock add other.yaml");
    expect(again.stdout).toContain("Nothing to add");
    expect(said(files).revision).toBe(2);
  });

  it("is planned with in the place of the project's counts, and the plan says so", async () => {
    const files = desk();
    files.all.set("/desk/cards.yaml", ANY);
    const { code, stdout, stderr } = await sheetwright(
      files,
      "plan cards.yaml --stock stock.json --out other --effort quick",
    );
    expect(code).toBe(0);
    expect(stdout).toMatch(/Night blue +3 of 6 sheets, and 2 offcuts/);
    expect(stderr).toContain("From stock.json, revision 1: night, stars.dots and stars.comets.");
    expect(JSON.parse(String(files.all.get("/desk/other/plan.json"))).stock).toEqual({ revision: 1 });
  });

  it("leaves papers that it does not know as the project says", async () => {
    const files = desk();
    files.all.set("/desk/cards.yaml", CARDS.replaceAll("night", "dusk"));
    const { stderr } = await sheetwright(
      files,
      "plan cards.yaml --stock stock.json --out other --effort quick",
    );
    expect(stderr).toContain(
      "From stock.json, revision 1: stars.dots and stars.comets; dusk as the project says.",
    );
  });

  it("is refused where a paper of the project is of another size", async () => {
    const files = desk();
    files.all.set(
      "/desk/cards.yaml",
      CARDS.replace("cardstock: us-letter", "cardstock: 12 x 12").replace("grain: long", "grain: height"),
    );
    const { code, stderr } = await sheetwright(files, "plan cards.yaml --stock stock.json --out other");
    expect(code).toBe(2);
    expect(stderr).toContain(
      "stock.json papers.night.sheet: The stock has Night blue in sheets of 8 1/2 x 11 in, and the project 12 x 12 in.",
    );
    expect(files.folders.has("/desk/other")).toBe(false);
  });

  it("is shown as text, or as data with lengths in ticks", async () => {
    const files = desk();
    expect((await sheetwright(files, "stock show")).stdout).toMatch(
      /^On hand \(stock.json, revision 1\)\n\npaper /,
    );
    const { stdout } = await sheetwright(files, "stock show --json");
    const summary: StockSummary = JSON.parse(stdout);
    expect(summary).toMatchObject({ sheetwright: "stock-summary", version: 1, revision: 1, booked: [] });
    expect(summary.papers[0]?.offcuts).toEqual([{ width: 223520, height: 345440, count: 2 }]);
  });
});

describe("a plan that was cut", () => {
  it("is booked: what it took goes, what is left and worth keeping comes back", async () => {
    const files = desk();
    const { code, stdout, stderr } = await sheetwright(files, "stock book plan");
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toBe(`Booked: Evening workshop.

paper          sheets taken  offcuts taken          back in stock
Night blue     3             2 of 5 1/2 x 8 1/2 in  none
stars: comets  8             none                   8 of 2 x 6 in

On hand (stock.json, revision 2)

paper          sheets  offcuts
Night blue     3       none
stars: dots    6       none
stars: comets  0       8 of 2 x 6 in

Booked
  Evening workshop (${said(files).booked[0].plan.slice(0, 8)}): 13 sheets and offcuts cut
`);
  });

  it("is told on the page on stocks as it is here, with a stock file that can be read", async () => {
    const page = readFileSync(new URL("../../../../docs/stock.md", import.meta.url), "utf8");
    const { stdout } = await sheetwright(desk(), "stock book plan");
    const [said = ""] = stdout.split("\nBooked\n");
    expect(page).toContain(said.replace(/^(?=.)/gm, "    "));
    const [, example = ""] = /```json\n([\s\S]*?)```/.exec(page) ?? [];
    expect(readStockText(example, "stock.json")).toHaveProperty("papers");
  });

  it("is booked once", async () => {
    const files = desk();
    await sheetwright(files, "stock book plan");
    const before = stockOf(files);
    const { code, stderr } = await sheetwright(files, "stock book plan");
    expect(code).toBe(2);
    expect(stderr).toContain("this plan is booked already, all of it. Nothing was booked again.");
    expect(stockOf(files)).toBe(before);
  });

  it("can be planned again from what is left, and booked again", async () => {
    const files = desk();
    files.all.set("/desk/cards.yaml", ANY);
    for (const papers of ["night", "stars.comets"])
      files.all.set(
        "/desk/stock.json",
        stockOf(files).replace(new RegExp(`("${papers}"[^}]*"sheets": )\\d+`), '$1"as needed"'),
      );
    for (const out of ["one", "two", "three"]) {
      const plan = await sheetwright(files, `plan cards.yaml --stock stock.json --out ${out} --effort quick`);
      expect(plan.code).toBe(0);
      expect((await sheetwright(files, `stock book ${out}`)).code).toBe(0);
    }
    expect(said(files).booked).toHaveLength(3);
  });

  it("is booked as far as it is cut, by the sheets so far, so that saying so twice books nothing twice", async () => {
    const files = desk();
    expect(
      (await sheetwright(files, "stock book plan --done sheet-night-1=1,sheet-stars-comets-1=3")).code,
    ).toBe(0);
    expect(said(files).papers).toMatchObject({
      night: { sheets: 5 },
      "stars.comets": { sheets: 5, offcuts: { "2 x 6 in": 3 } },
    });
    const before = stockOf(files);
    const again = await sheetwright(files, "stock book plan --done sheet-night-1=1,sheet-stars-comets-1=3");
    expect(again.stderr).toContain("what is said of this plan is booked already.");
    const less = await sheetwright(files, "stock book plan --done sheet-night-1=0");
    expect(less.stderr).toContain("--done: 1 sheet of sheet-night-1 is booked already, and 0 given.");
    const more = await sheetwright(files, "stock book plan --done sheet-night-1=9");
    expect(more.stderr).toContain("--done: found 9 sheets of sheet-night-1, and the plan has 3 of it.");
    expect(stockOf(files)).toBe(before);
    expect((await sheetwright(files, "stock book plan")).code).toBe(0);
    const once = desk();
    await sheetwright(once, "stock book plan");
    expect(said(files)).toMatchObject({ papers: said(once).papers, booked: said(once).booked });
  });

  it("may have spoiled sheets, which are taken and give nothing", async () => {
    const files = desk();
    await sheetwright(files, "stock book plan --done none --spoiled sheet-night-1,sheet-stars-comets-1=2");
    expect(said(files).papers).toMatchObject({
      night: { sheets: 5, offcuts: { "5 1/2 x 8 1/2 in": 2 } },
      "stars.comets": { sheets: 6, offcuts: {} },
    });
    expect(said(files).booked[0]).toMatchObject({
      done: {},
      spoiled: { "sheet-night-1": 1, "sheet-stars-comets-1": 2 },
    });
    const { stderr } = await sheetwright(files, "stock book plan");
    expect(stderr).toContain(
      "stock.json papers.stars.comets.sheets: The plan takes 8 sheets of stars: comets, and 6 are on hand.",
    );
  });

  it("leaves narrow strips too where these are kept", async () => {
    const files = desk();
    files.all.set(
      "/desk/cards.yaml",
      CARDS.replace("smallest", "x").replace("units: in", "").replace("border: 1/8", "border: 5/8"),
    );
    await sheetwright(files, "plan cards.yaml --stock stock.json --out other --effort quick");
    const { stdout } = await sheetwright(files, "stock book other --keep 1/2x4in --json");
    const { changes } = JSON.parse(stdout) as StockSummary;
    const [, comets] = changes ?? [];
    const narrowest = Math.min(...(comets?.left ?? []).map(({ width, height }) => Math.min(width, height)));
    expect(narrowest).toBeLessThan(2 * 40640);
  });

  it("is not booked where less is on hand than it takes", async () => {
    const files = desk();
    files.all.set(
      "/desk/stock.json",
      stockOf(files).replace('"5 1/2 x 8 1/2 in": 2', '"5 1/2 x 8 1/2 in": 1'),
    );
    const { code, stderr } = await sheetwright(files, "stock book plan");
    expect(code).toBe(2);
    expect(stderr).toContain(
      'stock.json papers.night.offcuts["5 1/2 x 8 1/2 in"]: The plan takes 2 of the offcuts 5 1/2 x 8 1/2 in of Night blue, and 1 are on hand.',
    );
  });

  it("is not booked where it was changed, is no plan of a project, or is not there", async () => {
    const files = desk();
    const plan = String(files.all.get("/desk/plan/plan.json"));
    const refused = async (text: string): Promise<string> => {
      files.all.set("/desk/plan/plan.json", text);
      const { code, stderr } = await sheetwright(files, "stock book plan");
      expect(code).toBe(2);
      return stderr;
    };
    expect(await refused(plan.replace('"run": 3', '"run": 2'))).toContain(
      "plan/plan.json: the plan was changed after Sheetwright wrote it.",
    );
    expect(await refused("{}")).toContain("plan/plan.json: found no plan of a project.");
    expect(await refused('{ "sheetwright": "plan" }')).toContain("this is the plan of a list of pieces");
    expect(await refused("no JSON")).toContain("found no plan of a project.");
    expect((await sheetwright(files, "stock book nowhere")).stderr).toContain(
      '"nowhere/plan.json" cannot be read',
    );
  });
});

describe("taking a change back", () => {
  it("gives the bytes from before, one change after another", async () => {
    const files = desk();
    const first = stockOf(files);
    await sheetwright(files, "stock book plan --done sheet-night-1=1");
    const second = stockOf(files);
    await sheetwright(files, "stock book plan");
    const { code, stdout } = await sheetwright(files, "stock undo");
    expect(code).toBe(0);
    expect(stdout).toContain("Taken back: stock.json holds what it held before its last change.");
    expect(stockOf(files)).toBe(second);
    await sheetwright(files, "stock undo");
    expect(stockOf(files)).toBe(first);
    const none = await sheetwright(files, "stock undo");
    expect(none.code).toBe(2);
    expect(none.stderr).toContain("stock.json: there is nothing to take back");
    expect((await sheetwright(files, "stock book plan")).code).toBe(0);
    expect([...files.all.keys()].filter((path) => path.startsWith("/desk/stock.json"))).toEqual([
      "/desk/stock.json",
      "/desk/stock.json.before-1",
    ]);
  });

  it("also after an edit by hand before the change; but what was edited since is not lost", async () => {
    const files = desk();
    const edited = `\uFEFF${stockOf(files).replace('"sheets": 6', '"sheets": 26')}`;
    files.all.set("/desk/stock.json", edited);
    await sheetwright(files, "stock book plan");
    expect(said(files).papers.night.sheets).toBe(23);
    const booked = stockOf(files);
    await sheetwright(files, "stock undo");
    expect(stockOf(files)).toBe(edited);
    files.all.set("/desk/stock.json", booked.replace('"sheets": 23', '"sheets": 24'));
    files.all.set("/desk/stock.json.before-1", edited);
    const { code, stderr } = await sheetwright(files, "stock undo");
    expect(code).toBe(2);
    expect(stderr).toContain("the file was edited by hand after its last change, and that would be lost.");
    expect((await sheetwright(files, "stock undo --force")).code).toBe(0);
    expect(stockOf(files)).toBe(edited);
  });

  it("keeps the last ten contents", async () => {
    const files = desk();
    for (let sheets = 1; sheets <= 8; sheets++)
      await sheetwright(files, `stock book plan --done sheet-stars-comets-1=${sheets}`);
    for (let sheets = 1; sheets <= 3; sheets++)
      await sheetwright(files, `stock book plan --done sheet-night-1=${sheets}`);
    await sheetwright(files, "stock book plan");
    const kept = [...files.all.keys()].flatMap((path) => /stock\.json\.before-(\d+)$/.exec(path)?.[1] ?? []);
    expect(kept.map(Number).sort((a, b) => a - b)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });
});

describe("a stock file that is no good", () => {
  const refused = async (change: (text: string) => string): Promise<string> => {
    const files = desk();
    files.all.set("/desk/stock.json", change(stockOf(files)));
    const { code, stderr } = await sheetwright(files, "stock show");
    expect(code).toBe(2);
    return stderr;
  };

  it("is told with the place, what was found and what is expected", async () => {
    expect(await refused((text) => text.replace('"sheets": 6', '"sheets": -1'))).toContain(
      "stock.json papers.night.sheets: found -1, expected a whole number from 0 to 1000000, such as 12.",
    );
    expect(await refused((text) => text.replace('"8 1/2 x 11 in"', '"8 1/2"'))).toContain(
      'stock.json papers.night.sheet: found "8 1/2", expected width x height',
    );
    expect(await refused((text) => text.replace('"5 1/2 x 8 1/2 in"', '"9 x 8 1/2 in"'))).toContain(
      "an offcut of 9 x 8 1/2 in does not come out of a sheet of 8 1/2 x 11 in.",
    );
    expect(
      await refused((text) => text.replace('"5 1/2 x 8 1/2 in": 2', '"4 x 4": 1, "4 in x 4 in": 2')),
    ).toContain("the size 4 in x 4 in stands there twice");
    expect(await refused((text) => text.replace('"night"', '"my night"'))).toContain(
      'found "my night", expected the key of a paper',
    );
    expect(await refused((text) => text.replace('"version": 1', '"version": 2'))).toContain(
      "stock.json version: found 2, expected version 1; a later one needs a later Sheetwright.",
    );
    expect(await refused((text) => text.slice(0, 300))).toContain("stock.json: found text that is no JSON");
    expect(await refused(() => "[]")).toContain("stock.json: found a list, expected a stock file");
    expect(
      await refused((text) => text.replace('"grain": "height",', '"grain": "long", "colour": 1,')),
    ).toMatch(/papers\.night\.grain: found "long", expected width, height, none or unknown\./);
  });

  it("is told where it is not there, or what to do is not said", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": CARDS });
    for (const line of ["stock show", "stock undo", "plan cards.yaml --stock stock.json --out plan"])
      expect((await sheetwright(files, line)).stderr).toContain(
        '--stock: there is no "stock.json". sheetwright stock add cards.yaml --stock stock.json makes it',
      );
    expect((await sheetwright(files, "stock")).stderr).toContain(
      "what to do is missing. Give show, add, book or undo",
    );
    expect((await sheetwright(files, "stock sell")).stderr).toContain(
      '"sell" is nothing that can be done with a stock.',
    );
    expect((await sheetwright(files, "stock add")).stderr).toContain("the project file is missing.");
    expect((await sheetwright(files, "stock book")).stderr).toContain("the folder of the plan is missing.");
    expect((await sheetwright(files, "stock show --done x-1")).stderr).toContain(
      "--done: this has no meaning for stock show, only for stock book.",
    );
    expect((await sheetwright(files, "stock book plan more")).stderr).toContain(
      '"more": nothing was expected here.',
    );
    expect((await sheetwright(files, "stock show --stok x")).stderr).toContain(
      "--stok: this option is not known. Did you mean --stock?",
    );
    expect((await sheetwright(files, "stock book plan --done 3")).stderr).toContain(
      '--done: found "3", expected the name of a layout',
    );
    expect(
      (await sheetwright(files, "plan --pieces a.csv --sheet us-letter --out p --stock s")).stderr,
    ).toContain("--stock: this option is for a project.");
  });
});

const published = fileURLToPath(new URL("../../schema/stock.schema.json", import.meta.url));

describe("the published schema of stock files", () => {
  it("is the one made from the source (vitest -u renews it)", async () => {
    const text = readFileSync(published, "utf8");
    const made: unknown = JSON.parse(JSON.stringify(stockFileJsonSchema()));
    const same = isDeepStrictEqual(JSON.parse(text), made);
    await expect(same ? text : `${JSON.stringify(made, null, 2)}\n`).toMatchFileSnapshot(published);
  });

  it("accepts what is written, and no stock with keys of its own", async () => {
    const files = desk();
    await sheetwright(files, "stock book plan --done sheet-night-1=1 --spoiled sheet-night-1=1");
    const validate = new Ajv2020({ strict: true }).compile(JSON.parse(readFileSync(published, "utf8")));
    expect(validate(said(files))).toBe(true);
    expect(validate({ ...said(files), more: 1 })).toBe(false);
  });
});

describe("going on after a spoiled sheet", () => {
  const half = async (): Promise<MemoryFiles> => {
    const files = desk();
    // Of three sheets of night one is cut and one spoiled; of comets three are cut.
    const booked = await sheetwright(
      files,
      "stock book plan --done sheet-night-1=1,sheet-stars-comets-1=3 --spoiled sheet-night-1=1",
    );
    expect(booked.code).toBe(0);
    return files;
  };
  const GO_ON = "plan cards.yaml --stock stock.json --after plan --out rest --effort quick";

  it("plans what is left to cut from what is on hand, and says both", async () => {
    const files = await half();
    const { code, stdout, stderr } = await sheetwright(files, GO_ON);
    expect(code).toBe(0);
    // Two of eight bases and three of eight panels are cut.
    expect(stdout).toContain("Pieces     all 11, and 5 are cut already");
    expect(stdout).toMatch(/Cards +1 Lantern +8 copies/);
    expect(stdout).toMatch(/Night blue +2 of 4 sheets, and 2 offcuts/);
    expect(stdout).toMatch(/stars: comets +5 of 5 sheets/);
    expect(stderr).toContain("After plan: 5 pieces cut already, and 1 sheet spoiled.");
    expect(String(files.all.get("/desk/rest/cut-list.txt"))).toMatch(/1a base .* 6, 2 cut already\n/);
    const { plan, project, stock } = JSON.parse(String(files.all.get("/desk/rest/plan.json")));
    expect(project.cutAlready).toEqual([
      { piece: "1a", count: 2 },
      { piece: "1b", count: 3 },
    ]);
    expect(plan.complete).toEqual([{ card: 1, wanted: 8, complete: 8 }]);
    expect(stock).toEqual({ revision: 2, after: said(files).booked[0].plan });
  });

  it("closes the first plan once the second is booked, and can go on again", async () => {
    const files = await half();
    await sheetwright(files, GO_ON);
    await sheetwright(files, GO_ON.replace("--out rest", "--seed 2 --out other"));
    expect((await sheetwright(files, "stock book rest --done sheet-night-1=1")).code).toBe(0);
    const refused = await sheetwright(files, "stock book plan");
    expect(refused.code).toBe(2);
    expect(refused.stderr).toContain("this plan was gone on from by another plan that is booked");
    const other = await sheetwright(files, "stock book other");
    expect(other.stderr).toContain(
      "the plan of Evening workshop that this one goes on from was gone on from",
    );
    const again = await sheetwright(files, GO_ON);
    expect(again.stderr).toContain("--after: another plan that is booked");
    const last = await sheetwright(
      files,
      GO_ON.replace("--after plan --out rest", "--after rest --out last"),
    );
    expect(last.code).toBe(0);
    expect((await sheetwright(files, "stock book last")).code).toBe(0);
    // One sheet of night was spoiled: five whole sheets and two offcuts for eight bases and that one.
    expect(said(files).papers).toMatchObject({ night: { sheets: 2 }, "stars.comets": { sheets: 0 } });
    expect(said(files).booked.map(({ continuedBy = "" }) => continuedBy !== "")).toEqual([true, true, false]);
  });

  it("says what is missing where a spoiled sheet was the last", async () => {
    const files = desk();
    await sheetwright(
      files,
      "stock book plan --done sheet-stars-comets-1=7 --spoiled sheet-stars-comets-1=1",
    );
    const { code, stderr } = await sheetwright(files, GO_ON);
    expect(code).toBe(1);
    expect(stderr).toContain("Missing from stars: comets:\n  1 of 1 1b panel");
    expect(stderr).toContain("Copies with every piece: 7 of 8 Lantern.");
  });

  it("is refused where nothing is booked, pieces were changed, or the stock is not named", async () => {
    const files = desk();
    expect((await sheetwright(files, GO_ON)).stderr).toContain(
      '--after: nothing of the plan in "plan" is booked.',
    );
    const cut = await half();
    cut.all.set("/desk/cards.yaml", CARDS.replace("border: 1/8", "border: 1/4"));
    expect((await sheetwright(cut, GO_ON)).stderr).toContain(
      "--after: 1b panel was cut, and the project has that no more, or otherwise.",
    );
    expect((await sheetwright(cut, "plan cards.yaml --after plan --out rest")).stderr).toContain(
      "--after: this has no meaning without --stock",
    );
    expect(
      (await sheetwright(cut, "plan --pieces a.csv --sheet us-letter --out p --after s")).stderr,
    ).toContain("--after: this option is for a project.");
  });
});
