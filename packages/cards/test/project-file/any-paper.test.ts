import { describe, expect, it } from "vitest";
import { checkProject, expandProject, type Project, readProject } from "../../src/index.js";

const PAPERS = [
  "night: { cardstock: us-letter, grain: long, weight: 80 lb cover, back: {} }",
  "cream: { cardstock: us-letter, grain: long, weight: 65 lb }",
  "kraft: { cardstock: us-letter, grain: long }",
  "woven: { cardstock: us-letter, grain: long, weight: 216 gsm, pattern: two-way }",
  "letters: { paper: us-letter, weight: 70 lb text }",
  "copper: { glitter: us-letter, weight: 110 lb index }",
  "stars: { pad: 6 x 6, weight: 100 gsm, designs: { dots: 6, comets: 6 } }",
];

function projectWith(mat: string, papers = PAPERS): Project {
  const { project, faults } = readProject(
    `sheetwright: 1\ntitle: One\npapers:\n  ${papers.join("\n  ")}\n` +
      `cards: [{ name: A, format: us-a7, base: night, front: [{ mat: ${mat}, size: 2 x 2 }] }]\n`,
  );
  if (project === null) throw new Error(faults.map(({ message }) => message).join("\n"));
  return project;
}

const facesOf = (mat: string, papers = PAPERS) =>
  expandProject(projectWith(mat, papers)).pieces.find(({ id }) => id === "1b")?.faces;

describe("any paper of a kind", () => {
  it.each([
    ["any cardstock", ["night", "cream", "kraft", "woven"]],
    ["any plain cardstock", ["night", "cream", "kraft"]],
    ["any patterned paper", ["woven", "stars.dots", "stars.comets"]],
    ["any plain paper", ["night", "cream", "kraft", "letters", "copper"]],
    ["any glitter", ["copper"]],
    ["any pad", ["stars.dots", "stars.comets"]],
    ["any paper", ["night", "cream", "kraft", "woven", "letters", "copper", "stars.dots", "stars.comets"]],
  ])("%s means the papers that are of it, without printed backs", (mat, faces) => {
    expect(facesOf(mat)).toEqual(faces);
  });

  // g/m2 of the tables of paper mills and printer manuals: 65 lb cover 176, 80 lb cover 216, 110 lb index 199, 70 lb text 104.
  it.each([
    ["any paper of at least 176 gsm", ["night", "cream", "woven", "copper"]],
    ["any paper of at least 177 gsm", ["night", "woven", "copper"]],
    ["any paper of at least 199 g/m2", ["night", "woven", "copper"]],
    ["any paper of at least 200 gsm", ["night", "woven"]],
    ["any cardstock of at least 80 lb cover", ["night", "woven"]],
    ["any cardstock of at least 80 lb", ["night", "woven"]],
    ["any plain cardstock of at least 65 lb cover", ["night", "cream"]],
    ["any paper of at least 104 gsm", ["night", "cream", "woven", "letters", "copper"]],
    ["any pad of at least 100 gsm", ["stars.dots", "stars.comets"]],
  ])("%s compares the weights of labels in g/m2", (mat, faces) => {
    expect(facesOf(mat)).toEqual(faces);
  });

  it("stands in a list beside names, which come first where they are first", () => {
    expect(facesOf("[letters, any plain cardstock of at least 65 lb cover]")).toEqual([
      "letters",
      "night",
      "cream",
    ]);
    expect(facesOf("[kraft, any cardstock of at least 80 lb cover]")).toEqual(["kraft", "night", "woven"]);
  });

  it("may be written with other spaces and capitals, and is told in its plain form", () => {
    const choice = expandProject(projectWith('"Any  plain Cardstock of AT least 80 lb Cover"')).pieces[1];
    expect(choice).toMatchObject({
      faces: ["night"],
      paperText: "any plain cardstock of at least 80 lb Cover",
    });
  });

  it("does not take a paper whose weight is not known, and tells which and what would help", () => {
    const found = checkProject(projectWith("any plain cardstock of at least 65 lb cover"));
    expect(found.filter(({ code }) => code === "weight-unknown")).toEqual([
      {
        code: "weight-unknown",
        severity: "warning",
        path: "papers.kraft",
        message:
          "The weight of kraft is not known, so it is not taken for any plain cardstock of at least 65 lb cover (cards[0].front[0].mat). Write what its label says at papers.kraft.weight, such as weight: 80 lb cover.",
        silenced: null,
      },
    ]);
  });

  it("does not ask for the weight of papers that do not match anyway", () => {
    const codes = checkProject(projectWith("any plain glitter of at least 100 gsm")).map(({ code }) => code);
    expect(codes).not.toContain("weight-unknown");
  });

  it("leaves a paper that is called any alone", () => {
    expect(facesOf("any", [...PAPERS, "any: { paper: 12 x 12 }"])).toEqual(["any"]);
  });
});
