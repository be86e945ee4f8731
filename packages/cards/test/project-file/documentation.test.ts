import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { projectSchema, readProject } from "../../src/index.js";
import { SMALLEST } from "./sample-projects.js";

const page = readFileSync(new URL("../../../../docs/project-file.md", import.meta.url), "utf8");

interface Row {
  readonly key: string;
  readonly what: string;
  readonly preset: string;
}

/** The tables of keys, in the order of the page. */
const tables: readonly (readonly Row[])[] = [
  ...page.matchAll(/^\| key \| what \| default \|\n.*\n((?:\|.*\n)+)/gm),
].map(([, rows = ""]) =>
  rows
    .trim()
    .split("\n")
    .map((row) => {
      const [, key = "", what = "", preset = ""] = row.split(/ ?\| ?/);
      return { key: key.replaceAll("`", ""), what, preset };
    }),
);

interface Keys {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, { readonly description: string }>>;
  readonly required?: readonly string[];
  readonly oneOf?: readonly { readonly required: readonly string[] }[];
}

/** Every group of keys in the schema. */
function groupsOf(schema: unknown): readonly Keys[] {
  if (typeof schema !== "object" || schema === null) return [];
  const own = "properties" in schema ? [schema as Keys] : [];
  return [...own, ...Object.values(schema).flatMap(groupsOf)];
}
const signature = (keys: readonly string[]) => [...keys].sort().join(" ");
const groups = new Map(
  groupsOf(projectSchema())
    .map((group) => [signature(Object.keys(group.properties ?? {})), group] as const)
    // A design of a pad takes a part of the keys of a paper, as the page says in a sentence.
    .filter(
      ([keys]) => keys !== signature(["name", "count", "pattern", "colour", "cost", "back", "offcuts"]),
    ),
);

describe("the page on project files", () => {
  it("lists every key of every group, and none that there is not", () => {
    const listed = tables.map((rows) => signature(rows.map(({ key }) => key)));
    expect([...listed].sort()).toEqual([...groups.keys()].sort());
  });

  it("gives for every key the default that the schema gives, and says which are needed", () => {
    for (const rows of tables) {
      const group = groups.get(signature(rows.map(({ key }) => key)));
      const kinds = group?.oneOf ?? [];
      for (const { key, preset } of rows) {
        const description = group?.properties?.[key]?.description ?? "";
        const said = /Default(?<where>, [^:]*)?: (?<value>.*)\.$/.exec(description)?.groups;
        const always =
          group?.required?.includes(key) ||
          (kinds.length > 0 && kinds.every(({ required }) => required.includes(key)));
        const [kind] = kinds.find(({ required }) => required.indexOf(key) > 0)?.required ?? [];
        if (always) expect(`${key}: ${preset}`).toBe(`${key}: needed`);
        else if (said !== undefined) {
          const where = said.where === undefined ? "" : `${said.where.slice(2)}: `;
          expect(`${key}: ${preset}`).toBe(`${key}: ${where}${said.value}`);
        } else expect([`${key}: `, `${key}: needed with \`${kind}\``]).toContain(`${key}: ${preset}`);
      }
    }
  });

  it("has examples that are right as they stand", () => {
    const examples = [...page.matchAll(/^```yaml\n([\s\S]*?)^```$/gm)].map(([, text = ""]) => text);
    expect(examples.length).toBeGreaterThan(2);
    for (const text of examples) expect(readProject(text).faults).toEqual([]);
  });

  it("quotes what is really told", () => {
    const card = (text: string) => SMALLEST.replace("    format: us-a2\n", text);
    const front = (text: string) =>
      card(`    format: us-a7\n    front:\n      - panel: cream\n        ${text}\n`);
    const written: Readonly<Record<string, string>> = {
      "format: a2": card("    format: a2\n"),
      "boarder: 1/8": front("boarder: 1/8"),
      "border: 1/0": front("border: 1/0"),
      "colour: #22304f": SMALLEST.replace(
        "{ cardstock: us-letter }",
        "\n    cardstock: us-letter\n    colour: #22304f",
      ),
      "border: 3": front("border: 3"),
    };
    const [, table = ""] = /^\| written \| told \|\n.*\n((?:\|.*\n)+)/m.exec(page) ?? [];
    const rows = [...table.matchAll(/^\| `(.*?)` \| (.*) \|$/gm)];
    expect(rows.map(([, text]) => text)).toEqual(Object.keys(written));
    for (const [, text = "", told] of rows) {
      expect(readProject(written[text] ?? "").faults.map(({ message }) => message)).toEqual([told]);
    }
  });
});
