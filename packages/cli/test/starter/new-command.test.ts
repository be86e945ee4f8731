import { describe, expect, it } from "vitest";
import { STARTER_PROJECT } from "../../src/starter/starter-project.js";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const desk = (more: Readonly<Record<string, string>> = {}) =>
  memoryFiles({ "/desk/notes.txt": "mine", ...more });

describe("a project to start from", () => {
  it("is written here and says what to type next", async () => {
    const files = desk();
    const { code, stdout, stderr } = await runIn(["new"], { files });
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(files.all.get("/desk/cards.yaml")).toBe(STARTER_PROJECT);
    expect(stdout).toContain("\n  sheetwright check cards.yaml\n");
    expect(stdout).toContain("\n  sheetwright plan cards.yaml --out plan\n");
  });

  it("is written to a folder, which is made where it is missing", async () => {
    const files = desk();
    const { code, stdout } = await runIn(["new", "my cards/spring"], { files });
    expect(code).toBe(0);
    expect(files.all.get("/desk/my cards/spring/cards.yaml")).toBe(STARTER_PROJECT);
    expect(stdout).toContain(
      '\n  sheetwright plan "my cards/spring/cards.yaml" --out "my cards/spring/plan"\n',
    );
  });

  it("plans as it is, and what it says to type is right", async () => {
    const files = desk();
    const { stdout } = await runIn(["new", "spring"], { files });
    const typed = [...stdout.matchAll(/^ {2}sheetwright (.*)$/gm)].map((match) =>
      (match[1] ?? "").split(" "),
    );
    expect(typed.map(([command]) => command)).toEqual(["check", "plan"]);
    for (const argv of typed) {
      expect(await runIn(argv, { files })).toMatchObject({ code: 0, stderr: "" });
    }
    expect(files.all.has("/desk/spring/plan/cut-list.txt")).toBe(true);
  });

  it("explains itself in lines that fit a terminal", () => {
    const lines = STARTER_PROJECT.split("\n");
    expect(lines.every((line) => line.length <= 110)).toBe(true);
    expect(lines.filter((line) => line.includes("#")).length).toBeGreaterThan(30);
  });

  it("never takes the place of a file", async () => {
    const files = desk({ "/desk/cards.yaml": "mine" });
    const before = files.snapshot();
    const { code, stdout, stderr } = await runIn(["new"], { files });
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toBe(
      "cards.yaml: this file is there already, and it is not replaced. Give another folder, such as sheetwright new my-cards, " +
        "or move the file away.\n1 fault; no file was written.\n",
    );
    expect(files.snapshot()).toBe(before);
  });

  it("is not written where a folder has its name, or a file that of its folder", async () => {
    const inTheWay = await runIn(["new"], { files: desk({ "/desk/cards.yaml/a.txt": "mine" }) });
    expect(inTheWay).toMatchObject({
      code: 2,
      stderr: expect.stringContaining("a folder of this name is there already."),
    });
  });

  it("leaves nothing behind where it cannot be written", async () => {
    for (const broken of [0, 1, 2]) {
      const files = desk();
      const before = files.snapshot();
      files.failWhen = (_, __, number) => (number === broken ? "ENOSPC" : undefined);
      const { code, stderr } = await runIn(["new", "a/b"], { files });
      expect(code).toBe(2);
      expect(stderr).toBe(
        'sheetwright new: "a/b/cards.yaml" cannot be written: the disk is full.\n' +
          "1 fault; no file was written. sheetwright new --help explains the options.\n",
      );
      expect(files.snapshot()).toBe(before);
    }
  });

  it("takes one folder and no option", async () => {
    const { code, stderr } = await runIn(["new", "a", "b", "--force"], { files: desk() });
    expect(code).toBe(2);
    expect(stderr).toBe(
      "--force: this option is not known.\n" +
        '"b": nothing was expected here. One folder is expected. A name with spaces in it goes in quotes.\n' +
        "2 faults; no file was written. sheetwright new --help explains the options.\n",
    );
  });
});
