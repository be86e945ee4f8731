import { allowedTurns } from "../fold/turns.js";
import type { Paper, Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { type ChoiceAt, choicesOf } from "./card-choices.js";
import { type FaceOfPaper, indexFaces } from "./face-index.js";
import { fault } from "./fault.js";

const BEND_TEST =
  "To find it, bend the sheet one way and the other without creasing it: it gives more easily when the bend runs along the grain.";

/**
 * Finds papers that are named but not there, and grain that is required but cannot be promised.
 *
 * @internal
 */
export function checkPapers(project: Project): readonly ProjectFault[] {
  const faces = indexFaces(project);
  return project.cards.flatMap(choicesOf).flatMap((at) => {
    const known = at.choice.faces.flatMap((id) => faces.get(id) ?? []);
    return [...unknownPapers(at, faces), ...unknownGrain(at, known), ...grainAgainstPattern(at, known)];
  });
}

function unknownPapers({ choice, path }: ChoiceAt, faces: ReadonlyMap<string, FaceOfPaper>) {
  if (choice.faces.length === 0) {
    const expected = "at least one paper of the project";
    return [
      fault({
        code: "missing",
        path,
        found: "none",
        expected,
        message: `No paper is named here. Name ${expected}.`,
      }),
    ];
  }
  return choice.faces
    .filter((id) => !faces.has(id))
    .map((id) =>
      fault({
        code: "unknown-paper",
        path,
        found: id,
        expected: "a paper of the project",
        message: `There is no paper "${id}" in the project. It has ${[...faces.keys()].join(", ") || "none"}.`,
      }),
    );
}

function unknownGrain({ need, grainAlong, grainPath }: ChoiceAt, faces: readonly FaceOfPaper[]) {
  if (need !== "require" || grainAlong.every((along) => along === null)) return [];
  const papers = new Set(faces.map(({ paper }) => paper).filter(isUnsure));
  return [...papers].map(({ id, name, grainBasis }) => {
    const assumed =
      grainBasis === "assumed"
        ? "is only assumed (along the longer side, as of most such paper)"
        : "is not known";
    return fault({
      code: "grain-required",
      path: grainPath,
      found: "require",
      expected: `a paper whose grain is given; that of "${id}" is not`,
      message:
        `The grain is required to run one way, and which way it runs on ${name} ${assumed}. ${BEND_TEST} ` +
        `Then write it at papers.${id}.grain, or prefer the grain instead of requiring it.`,
    });
  });
}

/** What is required must be known from the paper itself. */
function isUnsure({ grain, grainBasis }: Paper): boolean {
  return grain === "unknown" || grainBasis === "assumed";
}

function grainAgainstPattern({ need, grainAlong, grainPath }: ChoiceAt, faces: readonly FaceOfPaper[]) {
  const [first] = faces;
  if (need !== "require" || first === undefined) return [];
  if (faces.some(({ paper }) => isUnsure(paper))) return [];
  const possible = faces.some(({ face, paper }) =>
    grainAlong.some((along) => allowedTurns({ grainAlong: along }, face.pattern, paper.grain, need) !== null),
  );
  if (possible) return [];
  const { face, paper } = first;
  return [
    fault({
      code: "contradiction",
      path: grainPath,
      found: "require",
      expected: "a grain that the pattern leaves free",
      message:
        `The grain is required to run along the ${grainAlong[0] ?? "height"} of this piece, and on ${face.name} it runs ` +
        `along the ${paper.grain} of the sheet. Only a quarter turn would bring it there, and the pattern (${face.pattern}) ` +
        "forbids that. Prefer the grain instead of requiring it, or choose a paper without a pattern.",
    }),
  ];
}
