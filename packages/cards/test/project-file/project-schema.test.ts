import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { projectSchema, readProject } from "../../src/index.js";
import { EVERY_KEY, SMALLEST } from "./sample-projects.js";

const published = fileURLToPath(new URL("../../schema/project.schema.json", import.meta.url));

/**
 * Judges data by the published file, with nothing of ours or of zod. What a kind requires is defined one level up, and a
 * text may be a bare number: of all strict rules only these two are off.
 */
async function judge(data: unknown): Promise<boolean> {
  const ajv = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true });
  return ajv.compile(JSON.parse(await readFile(published, "utf8")))(data);
}

describe("the published schema of project files", () => {
  it("is the one made from the source (vitest -u renews it)", async () => {
    const text = await readFile(published, "utf8");
    const made: unknown = JSON.parse(JSON.stringify(projectSchema()));
    // The formatter lays the file out, so what it says is compared, not how it is laid out.
    const same = isDeepStrictEqual(JSON.parse(text), made);
    await expect(same ? text : `${JSON.stringify(made, null, 2)}\n`).toMatchFileSnapshot(published);
  });

  it("explains every key, so that an editor can show what it is for", () => {
    const keys: string[] = [];
    const unexplained: string[] = [];
    const visit = (schema: unknown, path: string): void => {
      if (typeof schema !== "object" || schema === null) return;
      for (const [name, part] of Object.entries(schema)) {
        if (name === "properties") {
          for (const [key, value] of Object.entries<Record<string, unknown>>(part)) {
            keys.push(key);
            if (!String(value.description ?? "").endsWith(".")) unexplained.push(`${path}.${key}`);
          }
        }
        visit(part, `${path}.${name}`);
      }
    };
    visit(projectSchema(), "");
    expect(unexplained).toEqual([]);
    expect(new Set(keys).size).toBe(138);
  });

  it("accepts the smallest project and one that uses every key", async () => {
    for (const text of [SMALLEST, EVERY_KEY]) {
      expect(readProject(text).faults).toEqual([]);
      expect(await judge(parse(text))).toBe(true);
    }
  });

  it("offers the names of sheets and cards, and allows other texts, since sizes are written in many ways", async () => {
    const named = JSON.stringify(projectSchema());
    expect(named).toContain('"us-letter"');
    expect(named).toContain('"us-a7"');
    expect(await judge(parse(SMALLEST.replace("us-letter", "8 1/2 x 11").replace("us-a2", "US A2")))).toBe(
      true,
    );
  });

  it.each([
    ["no version", "sheetwright: 1\n", ""],
    ["another version", "sheetwright: 1", "sheetwright: 2"],
    ["no title", "title: One card\n", ""],
    ["a key that is not listed", "title:", "size: 3\ntitle:"],
    ["a word that is not listed", "title:", "units: cm\ntitle:"],
    ["half a copy", "title:", "copies: 1.5\ntitle:"],
    ["no copies", "title:", "copies: 0\ntitle:"],
    ["a paper without a size", "cardstock: us-letter", "count: 3"],
    ["a paper of two materials", "cardstock: us-letter", "cardstock: us-letter, glitter: us-letter"],
    ["a pad without designs", "cardstock: us-letter", "pad: 6 x 6"],
    ["designs without a pad", "cardstock: us-letter", "cardstock: us-letter, designs: { a: 1 }"],
    ["a key with a space", "cream: {", "off white: {"],
    ["an unknown pattern", "cardstock: us-letter", "cardstock: us-letter, pattern: stripes"],
    ["a count in words", "cardstock: us-letter", "cardstock: us-letter, count: many"],
    ["no cards", /cards:[\s\S]*/, "cards: []\n"],
    ["a card without a size", "    format: us-a2\n", ""],
    ["a card with a format and a size", "    format: us-a2\n", "    format: us-a2\n    size: 5 x 7\n"],
    ["a stand of a card with a size", "    format: us-a2\n", "    size: 5 x 7\n    stand: lying\n"],
    ["a card without a base", "    base: cream\n", ""],
    ["a layer of no kind", "base: cream\n", "base: cream\n    front: [{ border: 1/8 }]\n"],
    ["a layer of two kinds", "base: cream\n", "base: cream\n    front: [{ mat: cream, panel: cream }]\n"],
    ["a strip without a width", "base: cream\n", "base: cream\n    front: [{ strip: cream }]\n"],
    [
      "a key of another kind of layer",
      "base: cream\n",
      "base: cream\n    front: [{ mat: cream, runs: across }]\n",
    ],
    [
      "a mistake in a layer on a layer",
      "base: cream\n",
      "base: cream\n    front: [{ mat: cream, layers: [{ matt: cream }] }]\n",
    ],
  ])("refuses %s, as the reader does", async (_, from, to) => {
    const text = SMALLEST.replace(from, to);
    expect(text).not.toBe(SMALLEST);
    expect(readProject(text).project).toBeNull();
    expect(await judge(parse(text))).toBe(false);
  });
});
