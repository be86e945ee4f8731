import { type Design, flatsOf, type Project } from "@sheetwright/cards";
import type { Change } from "./savings.js";
import { withDesign } from "./with-layers.js";

/** Changes of how it is cut and folded, and of how many copies are made. */
export function otherCutting(project: Project): readonly Change[] {
  return [...eitherFold(project), ...fewerCopies(project), ...otherTrimmer(project), ...withoutTrim(project)];
}

/** A card that is folded once, at its side or at its top, may be folded in either way. */
function eitherFold(project: Project): readonly Change[] {
  return project.cards.flatMap((card) => {
    const [flat, ...others] = card.flats;
    if (others.length > 0 || flat === undefined || (flat.fold !== "side" && flat.fold !== "top")) return [];
    const flats = flatsOf({ front: card.front, fold: "either" });
    return [
      {
        subject: `fold of ${card.path}`,
        words: `let ${card.name} be folded at its side or at its top`,
        path: card.path,
        write: "fold: either",
        project: withDesign(project, { ...card, flats }),
      },
    ];
  });
}

/** Fewer spares or samples of every card: one less, two less, and so on to none; at least one copy stays. */
function fewerCopies(project: Project): readonly Change[] {
  return (["spares", "samples"] as const).flatMap((what) => {
    const most = project.cards.reduce((sum, { copiesFor }) => Math.max(sum, copiesFor[what] ?? 0), 0);
    const numbers = [...new Set([1, 2, 3, 4, most])].filter((number) => number <= most);
    return numbers.flatMap((number): Change[] => {
      const cards = project.cards.map((card) => lessOf(card, what, number));
      if (cards.some(({ copies }) => copies === 0)) return [];
      const word = number === 1 ? what.slice(0, -1) : what;
      return [
        {
          subject: what,
          isLeast: true,
          words: number === most ? `make no ${what}` : `make ${number} ${word} less of each card`,
          path: "copies",
          write: `${what}: ${number} less`,
          project: { ...project, cards },
        },
      ];
    });
  });
}

/** Copies less; spares are a wish and no copies in the project itself. */
function lessOf(card: Design, what: "spares" | "samples", number: number): Design {
  const { guests, samples, spares } = card.copiesFor;
  const left = Math.max(0, (card.copiesFor[what] ?? 0) - number);
  if (what === "samples") {
    const copiesFor = { ...card.copiesFor, samples: left };
    return { ...card, copies: guests + left, copiesFor };
  }
  if (spares === undefined) return card;
  return { ...card, copiesFor: { guests, samples, ...(left === 0 ? {} : { spares: left }) } };
}

function otherTrimmer(project: Project): readonly Change[] {
  const { trimmer, dieMachine } = project;
  const changes: Change[] = [];
  if (trimmer.kerf > 0)
    changes.push({
      subject: "kerf",
      words: "cut with a blade, which loses nothing at a cut",
      path: "trimmer",
      write: "kerf: 0",
      project: { ...project, trimmer: { ...trimmer, kerf: 0 } },
    });
  if (trimmer.cuts === "strips")
    changes.push({
      subject: "cuts",
      words: "cut edge to edge in any order, not only in strips",
      path: "trimmer",
      write: "cuts: edge-to-edge",
      project: { ...project, trimmer: { ...trimmer, cuts: "edge-to-edge" } },
    });
  if (dieMachine?.strips === false)
    changes.push({
      subject: "die strips",
      words: "let several shapes be cut along one strip",
      path: "die-machine",
      write: "strips: true",
      project: { ...project, dieMachine: { ...dieMachine, strips: true } },
    });
  return changes;
}

/** One paper at a time without anything squared off its sides. */
function withoutTrim(project: Project): readonly Change[] {
  return project.papers.flatMap((paper): Change[] => {
    const { left, right, top, bottom } = paper.trim;
    if (left + right + top + bottom === 0) return [];
    const whole = { ...paper, trim: { left: 0, right: 0, top: 0, bottom: 0 } };
    return [
      {
        subject: `trim of ${paper.id}`,
        words: `leave the sides of ${paper.name} as they are`,
        path: `papers.${paper.id}`,
        write: "trim: 0",
        project: { ...project, papers: project.papers.map((one) => (one.id === paper.id ? whole : one)) },
      },
    ];
  });
}
