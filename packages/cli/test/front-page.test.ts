import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as cards from "@sheetwright/cards";
import * as planner from "@sheetwright/planner";
import * as svg from "@sheetwright/svg";
import { describe, expect, test } from "vitest";
import { testReadme } from "../../measure/test/check-doc-examples.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

const root = new URL("../../../", import.meta.url);

testReadme(new URL("README.md", root), { ...cards, ...planner, ...svg });

describe("the front page", () => {
  test("shows a sheet and a card of the demo, as the command draws them", async () => {
    const project = readFileSync(new URL("test-fixtures/lantern-night/lantern-night.yaml", root), "utf8");
    const files = memoryFiles({ "/desk/lantern-night.yaml": project });
    const argv = ["plan", "lantern-night.yaml", "--out", "plan"];
    expect(await runIn(argv, { files })).toMatchObject({ code: 0 });
    const pictures = {
      "lantern-night-sheet": "sheet-ember-4.svg",
      "lantern-night-card": "card-1-rooftops.svg",
    };
    for (const [picture, name] of Object.entries(pictures)) {
      const drawn = String(files.all.get(`/desk/plan/${name}`));
      await expect(drawn).toMatchFileSnapshot(fileURLToPath(new URL(`docs/images/${picture}.svg`, root)));
    }
  });

  test("shows a project that can be planned as it is", async () => {
    const page = readFileSync(new URL("README.md", root), "utf8");
    const [, project = ""] = /```yaml\n([\s\S]*?)```/.exec(page) ?? [];
    const files = memoryFiles({ "/desk/cards.yaml": project });
    const { code, stdout } = await runIn(["plan", "cards.yaml", "--out", "plan"], { files });
    expect(code).toBe(0);
    expect(stdout).toContain("yes, every piece of every copy is planned");
  });
});
