import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { projectSchema, readShelf, shelfSchema } from "../../src/index.js";

const published = fileURLToPath(new URL("../../schema/shelf.schema.json", import.meta.url));
const page = fileURLToPath(new URL("../../../../docs/shelf.md", import.meta.url));

const options = { strict: true, strictRequired: false, allowUnionTypes: true };

async function judge(data: unknown): Promise<boolean> {
  return new Ajv2020(options).compile(JSON.parse(await readFile(published, "utf8")))(data);
}

const SHELF = `sheetwright-shelf: 1
units: in
papers:
  cream: { cardstock: us-letter, count: 12, offcuts: [4 x 8 1/2] }
  stars: { pad: 6 x 6, designs: { dots: 6 } }
trimmers: { small trimmer: { longest-cut: 12 } }
dies: { star: 3 x 3, tag: { blank: 2 x 4 } }
rates: { currency: $, hour: 18.50, minutes-per-card: 12 }
`;

describe("the published schema of shelf files", () => {
  it("is the one made from the source (vitest -u renews it)", async () => {
    const text = await readFile(published, "utf8").catch(() => "null");
    const made: unknown = JSON.parse(JSON.stringify(shelfSchema()));
    const same = isDeepStrictEqual(JSON.parse(text), made);
    await expect(same ? text : `${JSON.stringify(made, null, 2)}\n`).toMatchFileSnapshot(published);
  });

  it("accepts a shelf of every section, and one of none", async () => {
    for (const text of [SHELF, "sheetwright-shelf: 1\n"]) {
      expect(readShelf({ file: "s.yaml", text }).faults).toEqual([]);
      expect(await judge(parse(text))).toBe(true);
    }
  });

  it.each([
    ["another version", "sheetwright-shelf: 1", "sheetwright-shelf: 2"],
    ["a key that is not listed", "units: in", "unit: in"],
    ["a paper of two materials", "cardstock: us-letter", "cardstock: us-letter, glitter: us-letter"],
    ["a die with another key", "blank: 2 x 4", "blank: 2 x 4, form: star"],
    ["a rate with another key", "hour: 18.50", "day: 18.50"],
  ])("refuses %s, as the reader does", async (_, from, to) => {
    const text = SHELF.replace(from, to);
    expect(text).not.toBe(SHELF);
    expect(readShelf({ file: "s.yaml", text }).faults).not.toEqual([]);
    expect(await judge(parse(text))).toBe(false);
  });

  it("has a page that names every key of a shelf, with examples that are right as they stand", async () => {
    const text = await readFile(page, "utf8");
    for (const key of Object.keys(shelfSchema().properties as object)) expect(text).toContain(`\`${key}\``);
    const examples = [...text.matchAll(/^```yaml\n(sheetwright-shelf[\s\S]*?)^```$/gm)];
    expect(examples.length).toBeGreaterThan(0);
    for (const [, example = ""] of examples)
      expect(readShelf({ file: "s.yaml", text: example }).faults).toEqual([]);
  });
});

describe("the published schema of project files", () => {
  it("takes papers and trimmers from a shelf, in short or with keys", () => {
    const validate = new Ajv2020(options).compile(projectSchema());
    const project = (papers: unknown, trimmer: unknown) => ({
      sheetwright: 1,
      title: "One",
      shelf: "my-shelf.yaml",
      papers,
      trimmer,
      cards: [{ name: "Plain", format: "us-a2", base: "night" }],
    });
    const own = { shelf: "cream", count: 4 };
    expect(validate(project({ night: "shelf", cream: own }, "small trimmer"))).toBe(true);
    expect(validate(project({ night: "shelf" }, { shelf: "small trimmer", kerf: "1/64" }))).toBe(true);
    expect(validate(project({ night: "cupboard" }, "small trimmer"))).toBe(false);
    expect(validate(project({ night: { ...own, glitter: "us-letter" } }, "small trimmer"))).toBe(false);
    expect(validate(project({ night: "shelf" }, { shelf: "small trimmer", size: 3 }))).toBe(false);
  });
});
