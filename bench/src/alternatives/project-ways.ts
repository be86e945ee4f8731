/** A project with more or fewer choices of papers, folds and offcuts than it was written with. */
import { type Face, type Paper, type Project, paperMeasures } from "@sheetwright/cards";

/** A way to read a project. */
export interface ProjectWay {
  readonly name: string;
  readonly of: (project: Project) => Project;
}

/** From no choice to more than was written. */
export const PROJECT_WAYS: readonly ProjectWay[] = [
  { name: "no choice", of: (project) => withoutOffcuts(firstChoices(project)) },
  { name: "papers and folds", of: withoutOffcuts },
  { name: "offcuts", of: firstChoices },
  { name: "as written", of: (project) => project },
  { name: "any paper like it", of: withPapersAlike },
];

/** Every piece from the first of its papers, folded in the first way. */
function firstChoices(project: Project): Project {
  const cards = project.cards.map((card) => ({ ...card, flats: card.flats.slice(0, 1) }));
  return withFaces({ ...project, cards }, (faces) => faces.slice(0, 1));
}

function withoutOffcuts(project: Project): Project {
  const papers = project.papers.map((paper) => ({
    ...paper,
    designs: paper.designs.map((design) => ({ ...design, offcuts: [] })),
  }));
  return { ...project, papers };
}

/** Wherever a plain paper will do, so does any plain one of its material that is no lighter, and goes into bags whole as it does. */
function withPapersAlike(project: Project): Project {
  const alike = new Map(
    project.papers
      .filter(isPlain)
      .map((paper): [string, readonly string[]] => [
        frontOf(paper).id,
        project.papers
          .filter(
            (one) =>
              isPlain(one) &&
              one.material === paper.material &&
              one.bags === paper.bags &&
              weightOf(one) >= weightOf(paper),
          )
          .map((one) => frontOf(one).id),
      ]),
  );
  return withFaces(project, (faces) => [
    ...new Set(faces.flatMap((face) => [face, ...(alike.get(face) ?? [])])),
  ]);
}

function isPlain({ material, designs }: Paper): boolean {
  return material !== "pad" && designs.every(({ front }) => front.pattern === "none");
}

function frontOf({ designs: [design] }: Paper): Face {
  if (design === undefined) throw new RangeError("Expected a paper with a design.");
  return design.front;
}

/** In whole g/m2, as its label says or as such paper usually has. */
function weightOf(paper: Paper): number {
  return Math.round(paperMeasures(paper).grammage.value);
}

/** Every choice of papers in a project, changed. */
function withFaces(project: Project, change: (faces: readonly string[]) => readonly string[]): Project {
  const text = JSON.stringify(project, (key, value: unknown) =>
    key === "faces" && Array.isArray(value) ? change(value.map(String)) : value,
  );
  return JSON.parse(text) as Project;
}
