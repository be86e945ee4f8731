import { expandProject, readProject } from "@sheetwright/cards";
import { describe, expect, test } from "vitest";
import { classProject } from "../../src/class/class-project.js";

describe("the project of a class", () => {
  test("has a hundred kinds of pieces, forty thousand for five hundred guests, from twelve papers", () => {
    const { project, faults } = readProject(classProject(500));
    expect(faults).toEqual([]);
    const { pieces, papers } = expandProject(project!);
    const used = new Set(pieces.flatMap(({ faces }) => faces));
    expect([pieces.length, papers.length, used.size]).toEqual([100, 12, 12]);
    expect(pieces.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(40_000);
  });
});
