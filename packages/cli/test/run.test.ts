import { describe, expect, it, vi } from "vitest";
import * as planCommand from "../src/plan/plan-command.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

const files = memoryFiles({ "/desk/pieces.csv": "name,width,height,quantity,turn\nposter,9,12,1,no\n" });
const TOO_LARGE = [
  "plan",
  "--pieces",
  "pieces.csv",
  "--sheet",
  "us-letter",
  "--out",
  "out",
  "--effort",
  "quick",
];

describe("the command", () => {
  it.each([
    [["--help"]],
    [["help"]],
    ...["plan", "stock", "check", "new"].flatMap((name) => [[[name, "--help"]], [["help", name]]]),
  ])("prints help for %j", async (argv) => {
    const { code, stdout, stderr } = await runIn(argv, { files });
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(stdout).toMatch(/^Usage: sheetwright/);
    expect(stdout).toMatch(/Exit codes: 0 /);
    expect(stdout.split("\n").every((line) => line.length <= 100)).toBe(true);
  });

  it("explains every option in the help of plan", async () => {
    const { stdout } = await runIn(["plan", "--help"], { files });
    const options =
      "pieces sheet out stock after count unit mode trim trim-sides kerf longest-cut hold keep cutter-unit cutter-edges effort seed json force help";
    for (const option of options.split(" ")) expect(stdout).toMatch(new RegExp(`^  --${option}\\b`, "m"));
  });

  it("prints its version", async () => {
    expect(await runIn(["--version"], { files })).toEqual({ code: 0, stdout: "0.1.0\n", stderr: "" });
  });

  it("prints help on standard error where no command is given", async () => {
    const { code, stdout, stderr } = await runIn([], { files });
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toMatch(/^Usage: sheetwright/);
  });

  it("never shows a stack trace: a fault of its own is one plain sentence", async () => {
    const spy = vi
      .spyOn(planCommand, "planCommand")
      .mockRejectedValue(new TypeError("x is not a function\n    at y (z.js:1)"));
    const { code, stdout, stderr } = await runIn(TOO_LARGE, { files });
    spy.mockRestore();
    expect({ code, stdout }).toEqual({ code: 1, stdout: "" });
    expect(stderr).toBe(
      "Sheetwright has a fault of its own and wrote nothing: x is not a function\n" +
        "Please report it, with this line, the command and the file it was given.\n",
    );
  });
});

describe("emphasis", () => {
  const control = "\u001b[";
  it("is there on a terminal only, and not with NO_COLOR or on a plain one", async () => {
    const shows = async (terminal: boolean, env: Readonly<Record<string, string>>): Promise<boolean> => {
      const { stdout, stderr } = await runIn([...TOO_LARGE, "--force"], { files, terminal, env });
      expect(stderr).toContain("Cannot be planned as asked");
      expect(stdout).not.toContain(control);
      return stderr.includes(`${control}1m`);
    };
    expect(await shows(true, {})).toBe(true);
    expect(await shows(true, { NO_COLOR: "" })).toBe(true);
    expect(await shows(true, { NO_COLOR: "1" })).toBe(false);
    expect(await shows(true, { TERM: "dumb" })).toBe(false);
    expect(await shows(false, {})).toBe(false);
  });
});
