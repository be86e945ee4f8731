import { expandProject, readProject } from "@sheetwright/cards";
import { expect, it } from "vitest";
import { isWithin, lesserVersions } from "../../src/search/lesser-versions.js";

function versionsOf(papers: string, base: string, fold = "flat") {
  const { project, faults } = readProject(
    `{ sheetwright: 1, title: One, papers: { ${papers} }, cards: [{ name: A, size: 3 x 4, fold: ${fold}, base: ${base} }] }`,
  );
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  const { papers: known, pieces } = expandProject(project);
  return lesserVersions(known, pieces);
}

const CREAM = "cream: { cardstock: us-letter }";
const STARS = "stars: { pad: 6 x 6, designs: { dots: 6, comets: 6 } }";

it("there is no lesser version where there is no choice", () => {
  expect(versionsOf(CREAM, "cream")).toEqual([]);
});

it("a choice of a pad and a paper is also the pad alone, and its first design alone", () => {
  const faces = versionsOf(`${CREAM}, ${STARS}`, "[stars, cream]").map(({ pieces }) => pieces[0]?.faces);
  expect(faces).toEqual([["stars.dots", "stars.comets"], ["stars.dots"]]);
});

it("papers, folds and offcuts are left out alone and together, those with more choice first", () => {
  const offcuts = "cream: { cardstock: us-letter, offcuts: [5 x 7] }, night: { cardstock: us-letter }";
  const versions = versionsOf(offcuts, "[cream, night]", "either");
  const told = versions.map(({ pieces: [piece], papers }) => [
    piece?.faces.length,
    piece?.forms.length,
    papers.some(({ designs }) => designs.some((design) => design.offcuts.length > 0)),
  ]);
  expect(told).toEqual([
    [1, 2, true],
    [2, 1, true],
    [1, 1, true],
    [2, 2, false],
    [1, 2, false],
    [2, 1, false],
    [1, 1, false],
  ]);
  for (const [i, version] of versions.entries()) {
    for (const later of versions.slice(i + 1)) expect(isWithin(version, later)).toBe(false);
  }
  expect(versions.every((version) => isWithin(versions.at(-1)!, version))).toBe(true);
});

it("offcuts of papers that no piece may come from make no version", () => {
  expect(versionsOf(`${CREAM}, night: { cardstock: us-letter, offcuts: [5 x 7] }`, "cream")).toEqual([]);
});
