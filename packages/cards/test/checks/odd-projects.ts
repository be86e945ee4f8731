import type { oddChecks } from "../../src/checks/odd-checks.js";

const NIGHT = "night: { cardstock: us-letter, grain: long }";
const CREAM = "cream: { cardstock: us-letter }";
const HALVES = "{ bands: [1, 1], papers: [night, night], border: 1/8";

/** A project in which a check finds something, for each. */
export const ODD_PROJECTS: Readonly<Record<(typeof oddChecks)[number]["code"], string>> = {
  "no-paper": project(`${NIGHT}, stars: { paper: 6 x 6 }`, "front: [{ mat: stars, border: 1/8 }]"),
  "bare-seam": project(NIGHT, `front: [${HALVES} }]`),
  "narrow-cover": project(NIGHT, `front: [${HALVES}, seam: { cover: night, width: 1/16 } }]`),
  "hidden-layer": project(
    `${NIGHT}, ${CREAM}`,
    "front: [{ panel: cream, size: 1 x 1 }, { panel: night, size: 2 x 2 }]",
  ),
  "die-blank-too-wide": dieCut("{ shape: circle, size: 4, margin: 1 1/4 }"),
  "thin-bridge": dieCut("{ shape: { kind: circle, window: { shape: circle, size: 1.9 } }, size: 2 }"),
  "stitches-broken": dieCut(
    "{ shape: { kind: rectangle, corners: ticket, radius: 1/8 }, size: 4 x 6, stitched: { dash: 1 } }",
  ),
  "grain-unknown": project("night: { cardstock: us-letter, grain: unknown }"),
  "grain-assumed": project("night: { cardstock: us-letter }"),
  "fold-across-grain": project("night: { cardstock: us-letter, grain: short, pattern: two-way }"),
  "score-first": project("night: { cardstock: us-letter, grain: long, weight: 80 lb cover }"),
  "weight-ambiguous": project("night: { cardstock: us-letter, grain: long, weight: 110 lb }"),
  "weight-assumed": project("night: { cardstock: us-letter, grain: long, weight: 80 lb }"),
  "weight-unknown": project(
    "night: { cardstock: us-letter, grain: long, weight: 80 lb cover }, cream: { cardstock: us-letter }",
    "front: [{ mat: any cardstock of at least 65 lb cover, border: 1/8 }]",
  ),
  "envelope-too-small": project(NIGHT, "envelope: us-a2"),
  "envelope-snug": project(NIGHT, "extras: [{ name: knot, thickness: 1/8 }]"),
  "envelope-loose": project(NIGHT, "envelope: us-booklet-6x9"),
  "thickness-estimated": project(NIGHT, "extras: [{ name: knot, thickness: 0.035 in }]"),
  "small-parts": project(NIGHT, "extras: [{ name: gem, thickness: 1/8, small-part: true }]"),
  "silence-unused": project(NIGHT, "copies: 1", "silence: [{ check: bare-seam, because: wanted so }]\n"),
  "unused-paper": project(`${NIGHT}, ${CREAM}`),
  "unused-item": project(NIGHT, "copies: 1", "items: { pearl: 40 }\n"),
};

function dieCut(die: string): string {
  return project(NIGHT, "front: [{ die: disc, paper: night }]", `dies: { disc: ${die} }\n`);
}

function project(papers: string, card = "copies: 1", more = ""): string {
  return `sheetwright: 1\ntitle: x\npapers: { ${papers} }\ncards: [{ name: A, format: us-a7, base: night, ${card} }]\n${more}`;
}
