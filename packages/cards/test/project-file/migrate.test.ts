import { describe, expect, it } from "vitest";
import { type Migration, migrate } from "../../src/project-file/migrate.js";
import { readProjectOf } from "../../src/project-file/read-project.js";
import { SMALLEST } from "./sample-projects.js";

// A made-up history: version 1 called the title a name, version 2 the papers stock.
const HISTORY: ReadonlyMap<number, Migration> = new Map<number, Migration>([
  [1, ({ name, ...rest }) => ({ ...rest, title: name })],
  [2, ({ stock, ...rest }) => ({ ...rest, papers: stock })],
]);
const old = (version: number) => {
  const text = SMALLEST.replace("wright: 1", `wright: ${version}`);
  return version === 3
    ? text
    : (version === 2 ? text : text.replace("title", "name")).replace("papers", "stock");
};

describe("a file of an earlier version", () => {
  it.each([1, 2])("comes through every version from %i on, in order", (version) => {
    const { project, faults, migratedFrom } = readProjectOf(old(version), 3, HISTORY);
    expect(faults).toEqual([]);
    expect(project).toEqual(readProjectOf(SMALLEST, 1, new Map()).project);
    expect(migratedFrom).toBe(version);
  });

  it("is not brought anywhere when it is of the current one", () => {
    expect(readProjectOf(old(3), 3, HISTORY)).toMatchObject({ faults: [], migratedFrom: null });
  });

  it("has its faults at the paths of the current version, at the nearest place in the file", () => {
    const { faults } = readProjectOf(old(1).replace("us-letter", "us-leter"), 3, HISTORY);
    expect(faults).toMatchObject([
      { path: "papers.cream.cardstock", code: "not-a-size", line: 1, suggestion: "us-letter" },
    ]);
  });

  it("of a later one is refused, with nothing else said of it", () => {
    const { project, faults, migratedFrom } = readProjectOf(
      old(3).replace("wright: 3", "wright: 4"),
      3,
      HISTORY,
    );
    expect([project, migratedFrom]).toEqual([null, null]);
    expect(faults).toMatchObject([
      { code: "version", path: "sheetwright", found: "4", expected: "sheetwright: 3" },
    ]);
    expect(faults[0]?.message).toContain("this program knows versions 1 to 3");
  });
});

describe("migrate", () => {
  it("writes the version that it comes to", () => {
    expect(migrate({ sheetwright: 1, name: "x", stock: {} }, 1, 3, HISTORY)).toEqual({
      sheetwright: 3,
      title: "x",
      papers: {},
    });
  });

  it("refuses a history with a gap, since every published version must stay readable", () => {
    expect(() => migrate({}, 1, 3, new Map([[1, (data) => data]]))).toThrow(RangeError);
  });
});
