import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as measure from "@sheetwright/measure";
import * as packing from "@sheetwright/packing";
import * as svg from "@sheetwright/svg";
import { describe, expect, test } from "vitest";
import { testReadme } from "../../measure/test/check-doc-examples.js";
import { memoryFiles } from "./memory-files.js";
import { runIn } from "./run-in.js";

const root = new URL("../../../", import.meta.url);

testReadme(new URL("README.md", root), { ...measure, ...packing, ...svg });

describe("the picture on the front page", () => {
  test("is a sheet of the demo plan, as the command draws it", async () => {
    const list = readFileSync(new URL("test-fixtures/lantern-night/pieces.csv", root), "utf8");
    const files = memoryFiles({ "/desk/pieces.csv": list });
    const argv = "plan --pieces pieces.csv --sheet us-letter --count 20 --out plan".split(" ");
    expect(await runIn(argv, { files })).toMatchObject({ code: 0 });
    const drawn = String(files.all.get("/desk/plan/sheet-2.svg"));
    await expect(drawn).toMatchFileSnapshot(
      fileURLToPath(new URL("docs/images/lantern-night-sheet.svg", root)),
    );
  });
});
