import { inches } from "@sheetwright/measure";
import type { Form, Kind, Problem, Sheet } from "@sheetwright/packing";
import { type Change, type Damage, gone, longer, more, shorter, to } from "./damage.js";
import { cutToShapes, enough, homeless, short } from "./sample-plans.js";

const NIGHT = "groups[0].problem";
const CREAM = "groups[1].problem";
const STARS = "groups[2].problem";
const PROOF = "shortages[0].withMore.problem";

const hidden = { x: 9, y: 9, width: 9, height: 9, tool: "knife" };
const [night] = enough.plan.groups;
const gold: Sheet = { ...night!.problem.sheets[0]!, id: "gold" };

/** A problem without one of its sheets. */
const without =
  (sheet: string): Change =>
  (value) => {
    const problem = value as Problem;
    const isOther = (id: string): boolean => id !== sheet && id !== `${sheet}+`;
    const forms = (kind: Kind): readonly Form[] =>
      kind.forms.map((form) => ({
        ...form,
        sheets: (form.sheets ?? []).filter((use) => isOther(use.sheet)),
      }));
    return {
      ...problem,
      sheets: problem.sheets.filter(({ id }) => isOther(id)),
      kinds: problem.kinds.map((kind) => ({ ...kind, forms: forms(kind) })),
    };
  };

/** The same turns on every sheet of a form. */
const lying =
  (turns: string): Change =>
  (value) =>
    (value as readonly object[]).map((use) => ({ ...use, turns }));

/** Damage to what is asked of each group of papers. */
export const damagesToProblems: readonly Damage[] = [
  { does: "packs a group of a class into bags", code: "wrong-bags", path: "groups[0].bags", change: to(2) },
  {
    does: "leaves a paper out of its group",
    code: "wrong-groups",
    path: "groups[2].designs",
    change: shorter,
    at: "groups[2][1]",
  },
  {
    does: "leaves a whole group out",
    code: "wrong-groups",
    path: "groups",
    change: shorter,
    at: "groups[2]",
  },
  {
    does: "calls an offcut a whole sheet",
    code: "wrong-sheet-list",
    path: "groups[0].sheets[1].offcut",
    change: to(null),
  },
  {
    does: "forgets a piece",
    code: "piece-not-planned",
    path: `${NIGHT}.kinds`,
    change: shorter,
    at: "groups",
  },
  {
    does: "plans a group twice",
    code: "piece-twice",
    path: "groups",
    change: longer(night),
    at: "groups[3].problem.kinds[0].id",
  },
  {
    does: "cuts a piece that is not there",
    code: "unknown-piece",
    path: `${NIGHT}.kinds[1].id`,
    change: to("9z"),
  },
  {
    does: "cuts a piece of other papers",
    code: "unknown-piece",
    path: `${NIGHT}.kinds[1].id`,
    change: to("2b"),
  },
  {
    does: "cuts a piece too large for its papers",
    code: "unknown-piece",
    path: `${STARS}.kinds[0].id`,
    change: to("3b"),
    of: homeless,
  },
  {
    does: "asks for a copy more",
    code: "wrong-quantity",
    path: `${NIGHT}.kinds[0].quantity`,
    change: more(1),
  },
  {
    does: "asks for a copy less",
    code: "wrong-quantity",
    path: `${CREAM}.kinds[0].quantity`,
    change: more(-1),
  },
  {
    does: "cuts a mat a tick too narrow",
    code: "wrong-forms",
    path: `${CREAM}.kinds[0].forms[0].width`,
    change: more(-1),
  },
  // Night: the base, the mats of both dies, the shadow. Cream: what lies on these.
  ...[
    { what: "a die blank", group: 1, kind: 0, side: "width", by: -1 },
    { what: "the blank of a mat that is cut straight", group: 0, kind: 1, side: "height", by: -1 },
    { what: "the blank of a mat that is turned", group: 0, kind: 2, side: "height", by: -1 },
    { what: "the blank of a star", group: 1, kind: 2, side: "width", by: -1 },
    { what: "the blank of a shadow", group: 0, kind: 3, side: "width", by: -inches(1 / 8) },
  ].map(({ what, group, kind, side, by }): Damage => {
    const at = `groups[${group}].problem.kinds[${kind}].forms[0]`;
    const does = `makes ${what} too small`;
    return {
      does,
      code: "die-blank-too-small",
      path: `${at}.${side}`,
      change: more(by),
      of: cutToShapes,
      at,
    };
  }),
  { does: "opens a mat", code: "wrong-forms", path: `${CREAM}.kinds[0].forms[0].hidden`, change: to(hidden) },
  {
    does: "lets a striped piece turn",
    code: "wrong-turns",
    path: `${CREAM}.kinds[0].forms[0].sheets`,
    change: lying("both"),
    at: `${CREAM}.kinds[0].forms[0]`,
  },
  {
    does: "keeps a piece from turning that may",
    code: "wrong-turns",
    path: `${STARS}.kinds[0].forms[0].sheets`,
    change: lying("upright"),
    at: `${STARS}.kinds[0].forms[0]`,
  },
  {
    does: "takes a paper from a piece",
    code: "wrong-turns",
    path: `${STARS}.kinds[0].forms[0].sheets`,
    change: shorter,
    at: `${STARS}.kinds[0].forms[0]`,
  },
  {
    does: "cuts a piece from any sheet",
    code: "wrong-turns",
    path: `${STARS}.kinds[1].forms[0].sheets`,
    change: gone,
    at: `${STARS}.kinds[1].forms[0]`,
  },
  {
    does: "ties pieces to one sheet",
    code: "wrong-kind",
    path: `${CREAM}.kinds[0].together`,
    change: to("all"),
  },
  { does: "gives a piece a value", code: "wrong-kind", path: `${CREAM}.kinds[0].value`, change: to(1) },
  {
    does: "counts a piece to another card",
    code: "wrong-kind",
    path: `${CREAM}.kinds[0].set.of`,
    change: to("2"),
  },
  {
    does: "names a piece after another",
    code: "wrong-name",
    path: `${NIGHT}.kinds[0].name`,
    change: to("2a base"),
  },
  {
    does: "names a sheet after another",
    code: "wrong-name",
    path: `${STARS}.sheets[0].name`,
    change: to("Stars: comets"),
  },
  {
    does: "forgets an offcut",
    code: "sheet-missing",
    path: NIGHT,
    change: without("night/1"),
    at: `${NIGHT}.sheets`,
  },
  {
    does: "adds a sheet that is not there",
    code: "unknown-sheet",
    path: `${NIGHT}.sheets`,
    change: longer(gold),
    at: `${NIGHT}.sheets[2].id`,
  },
  { does: "makes a sheet larger", code: "wrong-sheet", path: `${CREAM}.sheets[0].width`, change: more(1) },
  { does: "forgets the trim", code: "wrong-sheet", path: `${NIGHT}.sheets[0].trim`, change: gone },
  {
    does: "limits the cuts",
    code: "wrong-sheet",
    path: `${CREAM}.sheets[0].longestCut`,
    change: to(inches(13)),
  },
  {
    does: "adds sheets to the stock",
    code: "wrong-stock",
    path: `${NIGHT}.sheets[0].stock`,
    change: more(1),
  },
  {
    does: "makes a sheet cheaper",
    code: "wrong-sheet-cost",
    path: `${NIGHT}.sheets[0].cost`,
    change: more(-1),
  },
  {
    does: "asks money for an offcut",
    code: "wrong-sheet-cost",
    path: `${NIGHT}.sheets[1].cost`,
    change: to(1),
  },
  { does: "loses width at each cut", code: "wrong-tool", path: `${NIGHT}.kerf`, change: to(1) },
  { does: "cuts in strips", code: "wrong-tool", path: `${NIGHT}.mode`, change: to("shelf") },
  { does: "limits the stages", code: "wrong-tool", path: `${NIGHT}.stages`, change: to(9) },
  {
    does: "keeps smaller offcuts",
    code: "wrong-tool",
    path: `${NIGHT}.smallestOffcut.width`,
    change: more(-1),
  },
  {
    does: "has a malformed problem",
    code: "packing-wrong",
    path: "groups[0]",
    change: to({ ...night, problem: {} }),
    at: "groups[0].problem",
  },
  {
    does: "cuts more sheets than there are",
    code: "over-stock",
    path: `${STARS}.sheets[1].stock`,
    change: gone,
    of: short,
    at: "groups",
  },
  {
    does: "cuts more copies than are wanted",
    code: "too-many-pieces",
    path: `${NIGHT}.kinds[0].quantity`,
    change: more(1),
    at: "groups",
  },
  {
    does: "cuts a piece from another paper",
    code: "wrong-paper",
    path: `${STARS}.kinds[1].forms[0].sheets[0].sheet`,
    change: to("stars.dots"),
    at: "groups[2].packing.layouts",
  },
  {
    does: "cuts a base too low",
    code: "piece-size",
    path: `${NIGHT}.kinds[1].forms[0].height`,
    change: more(-1),
    at: "groups[0].packing.layouts",
  },
  {
    does: "lays a striped piece on its side",
    code: "pattern-broken",
    path: `${STARS}.kinds[1].forms[0].sheets`,
    change: lying("turned"),
    at: "groups[2].packing.layouts",
  },
  {
    does: "folds a base across the grain",
    code: "grain-broken",
    path: `${NIGHT}.kinds[0].forms[0].sheets`,
    change: lying("turned"),
    at: "groups[0].packing.layouts",
  },
  {
    does: "proves what would help with larger sheets",
    code: "wrong-more-sheets",
    path: `${PROOF}.sheets[0].width`,
    change: more(1),
    of: short,
  },
  {
    does: "proves it with an offcut more",
    code: "wrong-more-sheets",
    path: `${PROOF}.sheets`,
    change: longer(gold),
    of: short,
  },
  {
    does: "proves it with fewer pieces",
    code: "wrong-more-sheets",
    path: `${PROOF}.kinds[0].quantity`,
    change: more(-1),
    of: short,
  },
  {
    does: "proves it without a paper",
    code: "wrong-more-sheets",
    path: PROOF,
    change: without("stars.dots"),
    of: short,
  },
  {
    does: "proves it with turns that are not allowed",
    code: "wrong-more-sheets",
    path: `${PROOF}.kinds[1].forms[0].sheets`,
    change: lying("both"),
    of: short,
  },
];
