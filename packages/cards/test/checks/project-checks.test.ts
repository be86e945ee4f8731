import { readdir, readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { faultChecks } from "../../src/checks/fault-checks.js";
import { checkProject, projectChecks, readProject, silenceableCodes } from "../../src/index.js";
import { checksPage } from "./checks-page.js";
import { ODD_PROJECTS } from "./odd-projects.js";

const page = fileURLToPath(new URL("../../../../docs/checks.md", import.meta.url));
const broken = fileURLToPath(new URL("../../../../test-fixtures/broken-projects/", import.meta.url));

describe("the checks", () => {
  it("stand on the page docs/checks.md as they are (vitest -u renews it)", async () => {
    await expect(checksPage()).toMatchFileSnapshot(page);
  });

  it("have one code each, in words, and errors first among those of their list", () => {
    const codes = projectChecks.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
  });

  it("say rule and advice in whole sentences, what and source in words that go in a table", () => {
    for (const { title, rule, source, advice } of projectChecks) {
      expect(rule).toMatch(/^[A-Z].*\.$/);
      expect(advice).toMatch(/^[A-Z].*\.$/);
      expect(title).toMatch(/^[A-Z0-9].*[^.]$/);
      expect(source).toMatch(/\S.*[^.]$/);
      expect(`${title}${rule}${source}${advice}`).not.toContain("\n");
    }
  });

  it.each(Object.entries(ODD_PROJECTS))("find what they are for in a project: %s", (code, text) => {
    const { project, faults } = readProject(text);
    expect(faults).toEqual([]);
    const found = project === null ? [] : checkProject(project);
    expect(found.map((finding) => finding.code)).toContain(code);
    // What was found, and in another sentence what helps.
    for (const { message } of found) expect(message).toMatch(/^[A-Z].*[.:?] [A-Z].*\.$/);
  });

  it("that make a project wrong are each broken by a file of the broken projects", async () => {
    const names = (await readdir(broken)).filter((name) => /\.(yaml|json)$/.test(name));
    const texts = await Promise.all(names.map((name) => readFile(`${broken}${name}`, "utf8")));
    const told = new Set(texts.flatMap((text) => readProject(text).faults.map(({ code }) => code)));
    expect(faultChecks.map(({ code }) => code).filter((code) => !told.has(code))).toEqual([]);
  });

  it("can be silenced but for the errors", () => {
    const text = (check: string) =>
      `sheetwright: 1\ntitle: x\npapers: { cream: { cardstock: us-letter } }\n` +
      `cards: [{ name: A, format: us-a2, base: cream }]\nsilence: [{ check: ${check}, because: wanted so }]\n`;
    for (const { code, severity } of projectChecks) {
      const { project, faults } = readProject(text(code));
      expect(silenceableCodes.includes(code as never)).toBe(severity !== "error");
      if (severity === "error") expect(faults.map(({ path }) => path)).toEqual(["silence[0].check"]);
      else expect(project?.silences).toMatchObject([{ check: code, at: null, because: "wanted so" }]);
    }
  });
});
