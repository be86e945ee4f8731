import { test } from "vitest";
import { projectFile } from "../src/project-file/schema/project-schema.js";
test("x", () => {
  const r = projectFile.safeParse({ sheetwright: 1, title: "x", papers: { "a b": { paper: "12 x 12" } }, cards: [{ name: "A", format: "us-a2", base: "a", elsewhere: { "left-dor": [], "page-3": [] } }] });
  console.log(JSON.stringify(r.error?.issues, null, 1));
});
