import type { Choice, Design, Paper, Project } from "@sheetwright/cards";
import { findNamedSize, type Unit } from "@sheetwright/measure";
import { grainOn } from "../compare/project-cases.js";
import { costText, costUnits } from "../group/cost-units.js";
import type { Change } from "./savings.js";

/** Changes of what is cut from which paper, and of the size of its sheets. */
export function otherPapers(project: Project): readonly Change[] {
  return [...anyDesign(project), ...eitherPaper(project), ...otherSizes(project)];
}

/** Of a pad any design, where a card asks for some of them only. */
function anyDesign(project: Project): readonly Change[] {
  return project.papers.flatMap((paper) => {
    if (paper.material !== "pad" || paper.designs.length < 2) return [];
    const all = paper.designs.map(({ front }) => front.id);
    const asks = (choice: Choice): boolean =>
      choice.faces.some((face) => all.includes(face)) && all.some((face) => !choice.faces.includes(face));
    const cards = withChoices(project.cards, (choice) =>
      asks(choice) ? { ...choice, faces: [...new Set([...choice.faces, ...all])] } : choice,
    );
    if (JSON.stringify(cards) === JSON.stringify(project.cards)) return [];
    return [
      {
        subject: `designs of ${paper.id}`,
        words: `let any design of ${paper.name} be taken`,
        path: "cards",
        write: `${paper.id} wherever one of its designs is named`,
        project: { ...project, cards },
      },
    ];
  });
}

/** What is cut from one plain paper may be cut from another of its material too, which is no lighter. */
function eitherPaper(project: Project): readonly Change[] {
  const plain = project.papers.filter(
    ({ material, designs }) => material !== "pad" && designs[0]?.front.pattern === "none",
  );
  return plain.flatMap((paper) =>
    plain.flatMap((other): Change[] => {
      if (other.id === paper.id || other.material !== paper.material || !isNoLighter(other, paper)) return [];
      const cards = withChoices(project.cards, (choice) =>
        choice.faces.includes(paper.id) && !choice.faces.includes(other.id)
          ? { ...choice, faces: [...choice.faces, other.id] }
          : choice,
      );
      if (JSON.stringify(cards) === JSON.stringify(project.cards)) return [];
      return [
        {
          subject: `papers for ${paper.id}`,
          words: `let what is cut from ${paper.name} be cut from ${other.name} too`,
          path: "cards",
          write: `[${paper.id}, ${other.id}] instead of ${paper.id}`,
          project: { ...project, cards },
        },
      ];
    }),
  );
}

/** Weights are told in several ways; here only equal words, and two of one unit, can be compared. */
function isNoLighter({ weight: a }: Paper, { weight: b }: Paper): boolean {
  if (a === null || b === null) return a === b;
  if (a.unit === "g/m2" && b.unit === "g/m2") return a.grammage >= b.grammage;
  if (a.unit === "lb" && b.unit === "lb") return a.grade === b.grade && a.pounds >= b.pounds;
  return false;
}

/** Sizes that such paper is commonly sold in. */
const SIZES: Readonly<Record<Unit, readonly string[]>> = {
  in: ["us-letter", "us-legal", "us-tabloid", "craft-12x12"],
  mm: ["iso-a4", "iso-a3", "craft-12x12"],
};

/** One paper at a time in sheets of another size, at the same cost for the area. */
function otherSizes(project: Project): readonly Change[] {
  return project.papers.flatMap((paper) => {
    if (paper.material === "pad") return [];
    return SIZES[project.units].flatMap((id): Change[] => {
      const size = findNamedSize(id, "sheet");
      if (size === undefined) return [];
      const { width, height } = size;
      const [short, long] = [Math.min(width, height), Math.max(width, height)];
      const { sheet } = paper;
      if (Math.min(sheet.width, sheet.height) === short && Math.max(sheet.width, sheet.height) === long)
        return [];
      const resized: Paper = {
        ...paper,
        sheet: { width, height },
        sheetName: size.name,
        grain: grainOn(paper, { width, height }),
        designs: paper.designs.map((design) => ({
          ...design,
          cost: design.cost === null ? null : costByArea(design.cost, sheet, size),
        })),
      };
      const known = paper.designs.some(({ cost }) => cost !== null);
      return [
        {
          subject: `size of ${paper.id}`,
          words: `take ${paper.name} as sheets of ${id}${known ? ", at the same cost for the area" : ""}`,
          path: `papers.${paper.id}`,
          write: `${paper.material}: ${id}`,
          project: { ...project, papers: project.papers.map((one) => (one.id === paper.id ? resized : one)) },
        },
      ];
    });
  });
}

/** Units of a cost in a hundredth of the currency. */
const UNITS_PER_HUNDREDTH = 100n;

/** Rounded up to hundredths, as paper is sold. */
function costByArea(cost: string, from: Paper["sheet"], to: Paper["sheet"]): string {
  const step = BigInt(from.width) * BigInt(from.height) * UNITS_PER_HUNDREDTH;
  const whole = costUnits(cost) * BigInt(to.width) * BigInt(to.height);
  return costText(((whole + step - 1n) / step) * UNITS_PER_HUNDREDTH);
}

/** The cards with each choice of papers, wherever it stands in them, as a function gives it. */
function withChoices(cards: readonly Design[], change: (choice: Choice) => Choice): readonly Design[] {
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== "object" || value === null) return value;
    const entries = Object.entries(value).map(([key, own]) => [key, walk(own)] as const);
    const same: unknown = Object.fromEntries(entries);
    return isChoice(same) ? change(same) : same;
  };
  return cards.map((card) => walk(card) as Design);
}

function isChoice(value: unknown): value is Choice {
  return (
    typeof value === "object" &&
    value !== null &&
    "faces" in value &&
    Array.isArray(value.faces) &&
    "text" in value
  );
}
