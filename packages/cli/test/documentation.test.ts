import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { OPTION_KEYS, optionName } from "../src/request/plan-options.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

const page = await readFile(new URL("../../../docs/command-line.md", import.meta.url), "utf8");

describe("the page on the command line", () => {
  it.each(OPTION_KEYS)("explains the option %s", (key) => {
    expect(page).toMatch(new RegExp(`^\\| \`${optionName(key)}\\b`, "m"));
  });

  it("shows a piece list that can be planned", async () => {
    const list = /\n\n((?: {4}.*\n)+)\n\| column/.exec(page)?.[1]?.replace(/^ {4}/gm, "") ?? "";
    const files = memoryFiles({ "/desk/pieces.csv": list });
    const argv = "plan --pieces pieces.csv --sheet us-letter --out plan --effort quick".split(" ");
    expect(await runIn(argv, { files })).toMatchObject({ code: 0, stderr: "" });
  });

  it("shows what exit code 1 really says", async () => {
    const said = await readFile(
      new URL("../../../test-fixtures/not-enough/too-large-and-too-few.expected.txt", import.meta.url),
      "utf8",
    );
    const shown = said.replace(/^exit 1\n\n/, "").replace(/^(?=.)/gm, "    ");
    expect(page).toContain(shown);
  });
});
