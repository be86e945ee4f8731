import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { readOnly } from "./read-only-files.js";
import { runIn } from "./run-in.js";

const folder = fileURLToPath(new URL("../../../test-fixtures/broken-projects/", import.meta.url));
const files = (await readdir(folder)).filter((name) => /\.(yaml|json)$/.test(name));
const expectedOf = (file: string): Promise<string> =>
  readFile(join(folder, file.replace(/\.\w+$/, ".expected.txt")), "utf8");

describe("a broken project", () => {
  it("is there in more than a hundred ways", () => {
    expect(files.length).toBeGreaterThan(100);
  });

  // The expected text is all of standard error, after a line with the exit code.
  it.each(files)("gets its whole message from plan, and nothing is written: %s", async (file) => {
    const attempts: string[] = [];
    const { code, stdout, stderr } = await runIn(["plan", file, "--out", "out"], {
      files: readOnly(attempts),
      cwd: folder,
    });
    expect(`exit ${code}\n${stderr}`).toBe(await expectedOf(file));
    expect({ code, stdout, attempts }).toEqual({ code: 2, stdout: "", attempts: [] });
    expect(stderr).not.toMatch(/^\s+at |Error:|node:|undefined|NaN|\[object/m);
  });

  it.each(files)("gets the same from check: %s", async (file) => {
    const { code, stdout, stderr } = await runIn(["check", file], { files: readOnly([]), cwd: folder });
    const expected = (await expectedOf(file)).replace("; no file was written", "").replace(/^exit 2\n/, "");
    expect({ code, stdout, stderr }).toEqual({ code: 2, stdout: "", stderr: expected });
  });

  it("says in every message where the fault is: the file, the line and all but a few times the value", async () => {
    let faults = 0;
    let paths = 0;
    // A key that is no plain word stands in quotes, and may have spaces in it.
    const path = '(?:[^\\s"]|"[^"]*")+';
    for (const file of files) {
      const lines = (await expectedOf(file)).split("\n").slice(1, -2);
      for (const line of lines.filter((one) => !/^and \d+ more/.test(one))) {
        expect(line).toMatch(
          new RegExp(`^${file.replaceAll(".", "\\.")}:\\d+(:\\d+)?( ${path})?: \\S.*[.?]$`),
        );
        faults += 1;
        if (new RegExp(`^\\S+ ${path}: `).test(line)) paths += 1;
      }
    }
    expect(paths).toBeGreaterThan(faults * 0.8);
  });

  it("is told as data with --json: with its place, what was found, what is expected and what was meant", async () => {
    for (const command of [["plan", "--out", "out"], ["check"]]) {
      const { code, stdout } = await runIn([...command, "paper-misspelt.yaml", "--json"], {
        files: readOnly([]),
        cwd: folder,
      });
      expect(code).toBe(2);
      expect(JSON.parse(stdout)).toEqual({
        sheetwright: "faults",
        version: 1,
        faults: [
          {
            code: "unknown-paper",
            place: { file: "paper-misspelt.yaml", line: 13, column: 14, path: "cards[0].front[0].mat" },
            message:
              'There is no paper "coper". The project has night, cream and copper. Did you mean copper?',
            found: expect.stringContaining("coper"),
            expected: expect.any(String),
            suggestion: "copper",
          },
        ],
      });
    }
  });

  it("is told together with what is wrong on the command line", async () => {
    const argv = ["plan", "paper-misspelt.yaml", "--kerf", "1/8", "--effort", "hard"];
    const { code, stderr } = await runIn(argv, { files: readOnly([]), cwd: folder });
    expect(code).toBe(2);
    expect(stderr.split("\n").map((line) => line.split(": ")[0])).toEqual([
      "--out",
      "--kerf",
      "--effort",
      "paper-misspelt.yaml:13:14 cards[0].front[0].mat",
      "4 faults; no file was written. sheetwright plan --help explains the options.",
      "",
    ]);
  });

  it("that is not there, or no file, is a fault of the command line", async () => {
    const said = async (...argv: readonly string[]) =>
      (await runIn(argv, { files: readOnly([]), cwd: folder })).stderr.split("\n")[0];
    expect(await said("plan", "none.yaml", "--out", "out")).toBe(
      'sheetwright plan: "none.yaml" cannot be read: there is no such file or folder.',
    );
    expect(await said("check", ".")).toBe(
      'sheetwright check: "." cannot be read: it is a folder, not a file.',
    );
    expect(await said("check", "pieces.csv")).toBe(
      'sheetwright check: "pieces.csv" is no project file by its name, expected one that ends in .yaml or .json. ' +
        "A list of pieces is checked when it is planned.",
    );
    expect(await said("check")).toBe(
      "sheetwright check: the project file is missing. Give its name, such as sheetwright check cards.yaml.",
    );
    expect(await said("check", "a.yaml", "--jsn")).toBe(
      "--jsn: this option is not known. Did you mean --json?",
    );
  });
});
