import type { Piece } from "@sheetwright/cards";
import { faceOf, facesById, type SheetFace } from "./group/faces-by-id.js";
import type { FormMarks, LayoutMarks, PaperGroup, PaperStrip, Plan, SheetMarks } from "./plan-model.js";
import { stripPlaces } from "./strips/strip-size.js";

/**
 * What drawings of a group's layouts show besides the layout: grain, pattern and colour of the sheets, and the scores, slits
 * and tops of the pieces. A RangeError where the plan has no such group.
 *
 * @example
 * const text = `{ sheetwright: 1, title: One, papers: { cream: { cardstock: us-letter, grain: long, pattern: one-way } },
 *   cards: [{ name: Plain, format: us-a2, base: cream }] }`;
 * const { project } = cards.readProject(text);
 * const { sheets, forms } = layoutMarks(plan(project), 0);
 * [sheets.cream.grain, sheets.cream.pattern] // => ["height", "one-way"]
 * forms["1a"] // => [{ scores: [{ along: "width", at: 4.25 * 40640, folds: "mountain" }], topOn: ["cream"], backOn: [] }]
 * layoutMarks(plan(project), 1) // throws RangeError: one of 1 groups
 */
export function layoutMarks(plan: Pick<Plan, "papers" | "pieces" | "groups">, group: number): LayoutMarks {
  const chosen = plan.groups[group];
  if (chosen === undefined)
    throw new RangeError(
      `Expected the index of one of ${plan.groups.length} groups of papers, found ${group}.`,
    );
  const faces = facesById(plan.papers);
  const pieces = new Map(plan.pieces.map((piece) => [piece.id, piece]));
  // A strip is marked as the die blank it stands for, but for where the shapes lie.
  const stripsOf = ({ kind, piece, holds, along }: PaperStrip): readonly FormMarks[] => {
    const own = pieces.get(piece)!;
    const [marks] = formsOf(own, chosen, faces);
    const { forms = [] } = chosen.problem.kinds.find(({ id }) => id === kind) ?? {};
    return along.map((side, form) => ({
      ...marks!,
      shapesAt: stripPlaces(own, holds, side, forms[form]![side]),
    }));
  };
  return {
    sheets: Object.fromEntries(
      chosen.sheets.map(({ sheet, design }): [string, SheetMarks] => {
        const { paper, face } = faceOf(faces, design);
        const assumed = paper.grainBasis === "assumed" ? { grainIsAssumed: true as const } : {};
        return [sheet, { grain: paper.grain, ...assumed, pattern: face.pattern, colour: face.colour }];
      }),
    ),
    forms: Object.fromEntries(
      chosen.problem.kinds.map(({ id }) => {
        const strip = (chosen.strips ?? []).find(({ kind }) => kind === id);
        return [id, strip === undefined ? formsOf(pieces.get(id)!, chosen, faces) : stripsOf(strip)];
      }),
    ),
  };
}

function formsOf(
  piece: Piece,
  group: PaperGroup,
  faces: ReadonlyMap<string, SheetFace>,
): readonly FormMarks[] {
  const sides = piece.faces.map((id) => faceOf(faces, id));
  // By sheet: the first face, in the maker's order, that a copy lying so may be cut from. Only the pattern tells faces of
  // one sheet apart, and it forbids nothing but the quarter turn.
  const facesFor = (turned: boolean): ReadonlyMap<string, SheetFace> =>
    new Map(
      group.sheets.flatMap(({ sheet, design }) => {
        const side = sides.find(
          (one) => one.design.id === design && !(turned && one.face.pattern !== "none"),
        );
        return side === undefined ? [] : [[sheet, side]];
      }),
    );
  const upright = facesFor(false);
  const turned = facesFor(true);
  const differ = [...turned].some(([sheet, side]) => side !== upright.get(sheet));
  return piece.forms.map(({ scores, slits = [] }) => ({
    scores: scores.map(({ along, at, folds }) => ({ along, at, folds })),
    ...(slits.length > 0 ? { slits: slits.map((slit) => ({ ...slit })) } : {}),
    ...(piece.die === undefined ? {} : { die: { ...piece.die, cut: { ...piece.die.cut } } }),
    ...listsOf(upright),
    ...(differ ? { turned: listsOf(turned) } : {}),
  }));
}

function listsOf(faces: ReadonlyMap<string, SheetFace>): Pick<FormMarks, "topOn" | "backOn"> {
  const sheets = (wanted: (side: SheetFace) => boolean): readonly string[] =>
    [...faces].filter(([, side]) => wanted(side)).map(([sheet]) => sheet);
  return {
    topOn: sheets(({ face }) => face.pattern === "one-way"),
    backOn: sheets(({ isBack }) => isBack),
  };
}
