import { inches } from "@sheetwright/measure";
import { type Damage, gone, longer, more, shorter, to } from "./damage.js";
import { cutToShapes, enough, inStrips, type Sample, sparesInStrips } from "./sample-plans.js";

// Cream gives the discs: one kind, strips of four.
const STRIPS = "groups[1].strips";
const STRIP = "groups[1].problem.kinds[0]";
const ENDLESS = "groups[1].endless";

/** The same plan for a project with another die machine: platform, or without strips. */
function withMachine(machine: { readonly platform?: number; readonly strips?: boolean }): Sample {
  const { project, plan } = inStrips;
  const { platform = inches(6), strips = true } = machine;
  const size = { width: platform, height: platform };
  const dieMachine = { platform: size, margin: inches(1 / 4), narrowestBridge: inches(1 / 16), strips };
  return { project: { ...project, dieMachine }, plan };
}

/** Nothing is changed: only the project is another. */
const same = (value: unknown): unknown => value;

/** Damage to strips of several shapes. */
export const damagesToStrips: readonly Damage[] = [
  {
    does: "has a strip of no kind",
    code: "wrong-strip",
    path: `${STRIPS}[0].kind`,
    change: to("9z*4"),
    of: inStrips,
    at: STRIPS,
  },
  {
    does: "has a strip of no piece",
    code: "wrong-strip",
    path: `${STRIPS}[0].piece`,
    change: to("9z"),
    of: inStrips,
    at: STRIPS,
  },
  {
    does: "has a strip of one",
    code: "wrong-strip",
    path: `${STRIPS}[0].holds`,
    change: to(1),
    of: inStrips,
    at: STRIPS,
  },
  {
    does: "has a strip of more than can be fed straight",
    code: "wrong-strip",
    path: `${STRIPS}[0].holds`,
    change: to(2 ** 52),
    of: inStrips,
    at: STRIPS,
  },
  {
    does: "has a strip along more sides than sizes",
    code: "wrong-strip",
    path: `${STRIPS}[0].along`,
    change: longer("height"),
    of: inStrips,
    at: STRIPS,
  },
  {
    does: "calls a die blank a strip",
    code: "wrong-strip",
    path: "groups[1].strips",
    change: to([{ kind: "1b", piece: "1b", holds: 2, along: ["width"] }]),
    of: cutToShapes,
  },
  {
    does: "forgets that a kind is a strip",
    code: "unknown-piece",
    path: STRIPS,
    change: gone,
    of: inStrips,
    at: `${STRIP}.id`,
  },
  {
    does: "says that a strip holds one more",
    code: "wrong-quantity",
    path: `${STRIPS}[0].holds`,
    change: more(1),
    of: inStrips,
    at: STRIP,
  },
  {
    does: "cuts a strip more",
    code: "wrong-quantity",
    path: `${STRIP}.quantity`,
    change: more(1),
    of: inStrips,
  },
  {
    does: "calls a strip by the name of its piece",
    code: "wrong-name",
    path: `${STRIP}.name`,
    change: to("1b die blank"),
    of: inStrips,
  },
  {
    does: "counts a strip to a card",
    code: "wrong-kind",
    path: `${STRIP}.set`,
    change: to({ of: "1", each: 4 }),
    of: inStrips,
  },
  {
    does: "cuts a strip a tick too short",
    code: "strip-too-small",
    path: `${STRIP}.forms[0].width`,
    change: more(-1),
    of: inStrips,
    at: `${STRIP}.forms[0]`,
  },
  {
    does: "cuts a strip a tick too narrow",
    code: "strip-too-small",
    path: `${STRIP}.forms[0].height`,
    change: more(-1),
    of: inStrips,
    at: `${STRIP}.forms[0]`,
  },
  {
    does: "cuts a strip a tick too long",
    code: "wrong-forms",
    path: `${STRIP}.forms[0].width`,
    change: more(1),
    of: inStrips,
  },
  {
    does: "lets a strip lie on a paper only one way",
    code: "wrong-turns",
    path: `${STRIP}.forms[0].sheets[0].turns`,
    change: to("upright"),
    of: inStrips,
    at: `${STRIP}.forms[0]`,
  },
  {
    does: "cuts strips that the project does not want",
    code: "strip-forbidden",
    path: "title",
    change: same,
    of: withMachine({ strips: false }),
    at: STRIPS,
  },
  {
    does: "cuts strips as wide as no plate",
    code: "strip-too-wide",
    path: "title",
    change: same,
    of: withMachine({ platform: inches(2.25) - 1 }),
    at: STRIPS,
  },
  {
    does: "cuts strips of what is cut without a die",
    code: "strip-forbidden",
    path: "groups[1].strips",
    change: to([{ kind: "1g*2", piece: "1g", holds: 2, along: ["width"] }]),
    of: strippedStar(),
    at: "groups[1].strips",
  },
  {
    does: "cuts strips where discs are missing",
    code: "strips-too-soon",
    path: "groups[1].problem.sheets[0].stock",
    change: to(0),
    of: inStrips,
    at: STRIPS,
  },
  {
    does: "forgets what bounds its strips",
    code: "wrong-endless",
    path: ENDLESS,
    change: gone,
    of: inStrips,
  },
  {
    does: "bounds strips where there are none",
    code: "wrong-endless",
    path: "groups[1].endless",
    change: to(inStrips.plan.groups[1]?.endless),
    of: enough,
  },
  {
    does: "bounds strips by larger shares",
    code: "wrong-endless",
    path: `${ENDLESS}.problem.kinds[0].forms[0].width`,
    change: more(1),
    of: inStrips,
  },
  {
    does: "bounds strips for fewer copies",
    code: "wrong-endless",
    path: `${ENDLESS}.problem.kinds[0].quantity`,
    change: more(-1),
    of: inStrips,
  },
  {
    does: "bounds strips without their spares",
    code: "wrong-endless",
    path: `${ENDLESS}.problem.kinds[0].quantity`,
    change: to(12),
    of: sparesInStrips,
  },
  {
    does: "bounds strips by cuts as short as a trimmer's",
    code: "wrong-endless",
    path: `${ENDLESS}.problem.sheets[0].longestCut`,
    change: to(inches(12)),
    of: inStrips,
    at: `${ENDLESS}.problem.sheets[0]`,
  },
  {
    does: "bounds strips in strips",
    code: "wrong-endless",
    path: `${ENDLESS}.problem.mode`,
    change: to("shelf"),
    of: inStrips,
  },
  {
    does: "bounds strips by a sheet more",
    code: "wrong-endless",
    path: `${ENDLESS}.packing.bound.sheets`,
    change: more(1),
    of: inStrips,
    at: `${ENDLESS}.bound`,
  },
  {
    does: "bounds strips of no piece",
    code: "wrong-endless",
    path: `${ENDLESS}.problem.kinds`,
    change: shorter,
    of: inStrips,
  },
];

/** The star, which no die cuts, as if its two were a strip. */
function strippedStar(): Sample {
  const { project, plan } = cutToShapes;
  const groups = plan.groups.map((group, index) =>
    index !== 1 ? group : JSON.parse(JSON.stringify(group).replaceAll('"1g"', '"1g*2"')),
  );
  return { project, plan: { ...plan, groups } };
}
