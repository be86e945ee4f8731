import { checkProject, type Expansion, expandProject, type Finding, type Project } from "@sheetwright/cards";
import type { Size, Unit } from "@sheetwright/measure";
import type { Place } from "../fault.js";
import { type FinishedInShort, finishedInShort } from "../finished/finished-in-short.js";
import { designNames } from "../project-plan/design-names.js";

/** A project in short, and what is odd in it: what `sheetwright check --json` prints. */
export interface CheckReport {
  readonly sheetwright: "check";
  readonly version: 1;
  readonly title: string;
  readonly units: { readonly length: "tick"; readonly ticksPerInch: 40640; readonly shown: Unit };
  readonly cards: readonly CheckedCard[];
  readonly papers: readonly CheckedPaper[];
  /** How thick and heavy the finished cards are, and which envelopes take them. */
  readonly finished: readonly FinishedInShort[];
  /** What the checks find, errors first; the silenced ones too. */
  readonly findings: readonly (Finding & { readonly place: Place })[];
}

/** A card in short. */
export interface CheckedCard {
  readonly number: number;
  readonly name: string;
  readonly format: string | null;
  /** The front, as the card stands. */
  readonly front: Size;
  readonly copies: number;
  readonly guests: number;
  readonly samples: number;
  /** Copies more that are wished for; absent where none are. */
  readonly spares?: number | undefined;
  /** Pieces for one copy. */
  readonly pieces: number;
}

/** Sheets of one design of a paper, in short. */
export interface CheckedPaper {
  readonly design: string;
  readonly name: string;
  readonly sheet: Size;
  readonly sheetName: string | null;
  /** Sheets on hand; `null` where as many as needed are. */
  readonly count: number | null;
  /** Pieces of all copies that may come from it. */
  readonly pieces: number;
}

/** Sums a project up without planning it. */
export function checkReport(project: Project, placeOf: (path: string) => Place): CheckReport {
  const expansion = expandProject(project);
  return {
    sheetwright: "check",
    version: 1,
    title: project.title,
    units: { length: "tick", ticksPerInch: 40640, shown: project.units },
    cards: expansion.cards.map(({ number, name, format, front, copies, copiesFor }) => ({
      number,
      name,
      format,
      front,
      copies,
      ...copiesFor,
      pieces: expansion.pieces.filter(({ card }) => card === number).length,
    })),
    papers: checkedPapers(expansion),
    finished: finishedInShort(project),
    findings: checkProject(project).map((one) => ({ ...one, place: placeOf(one.path) })),
  };
}

function checkedPapers({ papers, pieces }: Expansion): readonly CheckedPaper[] {
  const names = designNames(papers);
  return papers.flatMap(({ sheet, sheetName, designs }) =>
    designs.map(({ id, count, front, back }) => ({
      design: id,
      name: names.get(id) ?? id,
      sheet,
      sheetName,
      count,
      pieces: pieces
        .filter(({ faces }) => faces.includes(front.id) || (back !== null && faces.includes(back.id)))
        .reduce((total, { quantity }) => total + quantity, 0),
    })),
  );
}
