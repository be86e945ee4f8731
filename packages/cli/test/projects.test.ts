import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { verifyPlan } from "@sheetwright/planner";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { sha256 } from "../src/folder/seal.js";
import type { ProjectPlanFile } from "../src/project-plan/project-plan-file.js";
import { type MemoryFiles, memoryFiles } from "./memory-files.js";
import { type Ended, runIn } from "./run-in.js";

const folder = fileURLToPath(new URL("../../../test-fixtures/projects/", import.meta.url));
const names = (await readdir(folder))
  .filter((name) => name.endsWith(".args"))
  .map((name) => name.slice(0, -5));
const schema = JSON.parse(
  await readFile(new URL("../schema/project-plan.schema.json", import.meta.url), "utf8"),
);
const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);

const SHELF = "drawer.yaml";

/** A desk with the file on it, and the shelf file that some projects refer to. */
async function deskWith(file: string): Promise<MemoryFiles> {
  const read = async (name: string) => [`/desk/${name}`, await readFile(join(folder, name))] as const;
  return memoryFiles(Object.fromEntries(await Promise.all([file, SHELF].map(read))));
}

/** Runs a fixture with its file on the desk. */
async function runFixture(name: string): Promise<Ended & { readonly files: MemoryFiles }> {
  const argv = (await readFile(join(folder, `${name}.args`), "utf8")).trimEnd().split("\n");
  const files = await deskWith(argv[1] ?? "");
  return { ...(await runIn(argv, { files })), files };
}

const planOf = (files: MemoryFiles): ProjectPlanFile =>
  JSON.parse(String(files.all.get("/desk/out/plan.json")));

describe("a project as a maker would write it", () => {
  it("is there at least eight times: metric, in JSON, from a pad, with other folds, from a shelf, and one without enough paper", async () => {
    expect(names.length).toBeGreaterThanOrEqual(8);
    const texts = await Promise.all(
      (await readdir(folder))
        .filter((name) => /\.(yaml|json)$/.test(name))
        .map((name) => readFile(join(folder, name), "utf8")),
    );
    for (const what of [
      /^units: mm$/m,
      /^\{/,
      /^ +pad: /m,
      /^ +stand: lying$/m,
      /^ +offcuts: |offcuts: \[/m,
      /^ +fold: easel$/m,
      /^shelf: /m,
      /spares: /,
    ])
      expect(texts.some((text) => what.test(text))).toBe(true);
  });

  it("can be ten lines long", async () => {
    const text = await readFile(join(folder, "ten-lines.yaml"), "utf8");
    expect(text.split("\n")).toHaveLength(11);
  });

  it.each(names)("is planned, proven and written whole: %s", async (name) => {
    const { code, stderr, stdout, files } = await runFixture(name);
    const expected = join(folder, `${name}.expected.txt`);
    // The expected text is all of standard error, after a line with the exit code; without one, all went well.
    const text = existsSync(expected) ? await readFile(expected, "utf8") : "exit 0\n";
    expect(`exit ${code}\n${stderr}`).toBe(text);
    const written = planOf(files);
    expect(verifyPlan(written.project, written.plan)).toEqual([]);
    expect(written.plan.enough === "yes").toBe(code === 0);
    validate(written);
    expect(validate.errors).toBeNull();
    for (const { name: file, sha256: hash } of written.files)
      expect(sha256(String(files.all.get(`/desk/out/${file}`)))).toBe(hash);
    expect([...files.all.keys()].filter((path) => path.startsWith("/desk/out/")).sort()).toEqual(
      ["plan.json", ...written.files.map((file) => file.name)].map((file) => `/desk/out/${file}`).sort(),
    );
    expect(stdout).toMatch(new RegExp(`^${written.title}\n\nEnough {5}${code === 0 ? "yes," : "no"}`));
    expect(stdout).toContain("open this first");
    expect(stdout + stderr).not.toMatch(/undefined|NaN|\[object/);
  });

  it.each(names)(
    "is told in short by check, with the same exit code where a piece fits no paper: %s",
    async (name) => {
      const argv = (await readFile(join(folder, `${name}.args`), "utf8")).trimEnd().split("\n");
      const file = argv[1] ?? "";
      const files = await deskWith(file);
      const before = files.snapshot();
      const { code, stdout, stderr } = await runIn(["check", file], { files });
      expect(files.snapshot()).toBe(before);
      const noPaper = planOf((await runFixture(name)).files).plan.noPaper;
      expect(code).toBe(noPaper.length === 0 ? 0 : 1);
      for (const { message } of noPaper) expect(stderr).toContain(message);
      expect(stdout).toMatch(/\nCards {6}1 .*\n/);
      const report = JSON.parse((await runIn(["check", file, "--json"], { files })).stdout);
      expect(report).toMatchObject({ sheetwright: "check", version: 1 });
      const errors = report.findings.filter(({ severity }: { severity: string }) => severity === "error");
      expect(errors.map(({ message }: { message: string }) => message)).toEqual(
        noPaper.map(({ message }) => message),
      );
    },
  );
});
