import type { NoPaper, Project } from "@sheetwright/cards";
import type { Size, Ticks, Unit } from "@sheetwright/measure";
import type { CutOrder, KindCount } from "@sheetwright/packing";
import {
  type CompleteCopies,
  copiesCut,
  type ItemUse,
  type PaperLeftover,
  type Plan,
  type Shortage,
} from "@sheetwright/planner";
import type { FinishedInShort } from "../finished/finished-in-short.js";
import type { LayoutSummary } from "../plan/plan-summary.js";
import { rollOf } from "../words/item-use-in-words.js";
import { designNames } from "./design-names.js";
import type { FileNames } from "./file-names.js";
import { type GroupProof, groupProof } from "./group-proof.js";

/** A project's plan in short, as plain data: what `--json` prints, and what the words for a person are made from. */
export interface ProjectPlanSummary {
  readonly sheetwright: "project-summary";
  readonly version: 1;
  readonly title: string;
  /** `yes`: every piece of every copy is planned, and every item there; `no`: proven that what is on hand cannot give all; `not-found`: neither. */
  readonly enough: Plan["enough"];
  /** True where the search was ended early, so that another run may give another plan. */
  readonly endedEarly: boolean;
  readonly units: { readonly length: "tick"; readonly ticksPerInch: 40640; readonly shown: Unit };
  readonly cards: readonly CardSummary[];
  /** The bags that all hold the same, and whether what is in one makes every card of it; absent in a class. */
  readonly kits?: { readonly bags: number; readonly makeEveryCard: boolean };
  /** How thick and heavy the finished cards are, and which envelopes take them. */
  readonly finished: readonly FinishedInShort[];
  readonly pieces: {
    /** Those of the copies asked for that are not cut already, and of the spares that are made. */
    readonly wanted: number;
    readonly cut: number;
    /** Those that an earlier plan cut; absent where there are none. */
    readonly cutAlready?: number;
    /** Pieces asked for and not planned, by their ids, without zeros. */
    readonly missing: readonly KindCount[];
  };
  /** The designs of the papers that some piece may come from, in the order of the project. */
  readonly papers: readonly PaperSummary[];
  /** The items that the project names, in its order; absent where it names none. */
  readonly items?: readonly ItemSummary[];
  /** What is proven of the papers that are planned together. */
  readonly proofs: readonly GroupProof[];
  readonly noPaper: readonly NoPaper[];
  readonly shortages: readonly Omit<Shortage, "withMore">[];
  readonly folds: readonly (Plan["folds"][number] & { readonly label: string })[];
  /** Names of the papers that bases are folded from and whose grain is only assumed. */
  readonly grainAssumed: readonly string[];
  /** Cost of the sheets used, as decimal text; `null` where a used paper has no cost. */
  readonly cost: string | null;
  /** What the work costs, and that with the sheets; absent where the project has no rates. */
  readonly costs?: Plan["costs"];
  readonly layouts: readonly PaperLayout[];
  /** Cuts on all sheets; a stack cut at once counts each of its sheets. */
  readonly cuts: number;
  /** How often the trimmer is lined up, once a layout and setting. */
  readonly settings: number;
  /** The narrowest part the tool holds firmly. */
  readonly hold: number;
  /** Cuts, counted once a layout, that hold a narrower part. */
  readonly narrowCuts: number;
  /** The longest cut; 0 without any. */
  readonly longestCut: number;
  readonly leftovers: readonly PaperLeftover[];
  /** Names of the files written to the folder. */
  readonly files: readonly string[];
}

/** Copies of one card. */
export interface CardSummary {
  readonly number: number;
  readonly name: string;
  readonly wanted: number;
  /** Copies that every piece of is planned, and every item there. */
  readonly complete: number;
  readonly guests: number;
  readonly samples: number;
  /** Copies more that are wished for, and how many of them are planned; absent where none are wished for. */
  readonly spares?: CompleteCopies["spares"];
}

/** Sheets of one design of a paper. */
export interface PaperSummary {
  readonly design: string;
  readonly name: string;
  readonly used: number;
  /** Sheets on hand; `null` where as many as needed are. */
  readonly onHand: number | null;
  readonly offcutsUsed: number;
}

/** A ribbon, a tape or an extra that the project names. */
export interface ItemSummary extends Pick<ItemUse, "item" | "onHand" | "needed" | "atLeast" | "used"> {
  /** How long one roll is; `null` for what is counted singly. */
  readonly roll: Ticks | null;
}

/** One way to cut a sheet of a paper, in short. */
export interface PaperLayout extends LayoutSummary, Size {
  readonly design: string;
  /** True where an offcut from earlier is cut, not a whole sheet. */
  readonly offcut: boolean;
  /** Bags that each hold these sheets whole: all else is of one of them. Absent: they are cut for all. */
  readonly bags?: number;
  /** Where it stands in the plan. */
  readonly group: number;
  readonly layout: number;
}

/** What {@link projectPlanSummary} needs beside the plan itself. */
export interface ProjectSummaryParts {
  readonly finished: readonly FinishedInShort[];
  /** Bags that all hold the same; `null` in a class. */
  readonly bags: number | null;
  /** The items of the project. */
  readonly items?: Project["items"];
  readonly hold: number;
  /** By group and layout. */
  readonly cutOrders: readonly (readonly CutOrder[])[];
  readonly names: FileNames;
  readonly files: readonly string[];
}

/** Sums a project's plan up. */
export function projectPlanSummary(plan: Plan, parts: ProjectSummaryParts): ProjectPlanSummary {
  const { finished, bags: kits, items, hold, cutOrders, names, files } = parts;
  const layouts = plan.groups.flatMap(({ problem, packing, bags, sheets }, group) =>
    packing.layouts.map(({ sheet, run }, layout): PaperLayout => {
      const order = cutOrders[group]?.[layout];
      const name = names.layouts[group]?.[layout];
      const from = sheets.find((one) => one.sheet === sheet);
      const size = problem.sheets.find(({ id }) => id === sheet);
      if (order === undefined || name === undefined || from === undefined || size === undefined)
        throw new RangeError(`Layout ${layout} of group ${group} has no cut order, no name or no paper.`);
      const { design, offcut } = from;
      return {
        name,
        run,
        cuts: order.cuts.length,
        settings: order.settings,
        design,
        offcut: offcut !== null,
        width: size.width,
        height: size.height,
        ...(bags === undefined ? {} : { bags }),
        group,
        layout,
      };
    }),
  );
  const cuts = cutOrders.flat().flatMap((order) => order.cuts);
  const copies = copiesCut(plan.groups);
  const complete = new Map(plan.complete.map((one) => [one.card, one]));
  const wanted = sum(
    plan.pieces.map(({ quantity, card }) => quantity + (complete.get(card)?.spares?.made ?? 0)),
  );
  const cutAlready = sum(plan.pieces.map((piece) => piece.cutAlready ?? 0));
  return {
    sheetwright: "project-summary",
    version: 1,
    title: plan.title,
    enough: plan.enough,
    endedEarly: plan.search.cancelled,
    units: { length: "tick", ticksPerInch: 40640, shown: plan.units },
    cards: plan.cards.map(({ number, name, copies, copiesFor: { guests, samples } }) => {
      const found = complete.get(number);
      const spares = found?.spares === undefined ? {} : { spares: found.spares };
      return { number, name, wanted: copies, complete: found?.complete ?? 0, guests, samples, ...spares };
    }),
    ...(kits === null
      ? {}
      : {
          kits: {
            bags: kits,
            makeEveryCard: plan.complete.every(({ complete, wanted }) => complete === wanted),
          },
        }),
    finished,
    pieces: {
      wanted,
      cut: sum([...copies.values()]),
      ...(cutAlready === 0 ? {} : { cutAlready }),
      missing: plan.pieces
        .map(({ id, quantity }) => ({ kind: id, count: quantity - (copies.get(id) ?? 0) }))
        .filter(({ count }) => count > 0),
    },
    papers: paperSummaries(plan),
    ...(plan.itemUse === undefined ? {} : { items: plan.itemUse.map((use) => itemSummary(use, { items })) }),
    proofs: plan.groups.map((group) => groupProof(group, plan.papers)),
    noPaper: plan.noPaper,
    shortages: plan.shortages.map(({ withMore: _, ...shortage }) => shortage),
    folds: plan.folds.map((fold) => ({
      ...fold,
      label: plan.pieces.find(({ id }) => id === fold.piece)?.label ?? fold.piece,
    })),
    grainAssumed: papersOfAssumedGrain(plan),
    cost: plan.cost,
    ...(plan.costs === undefined ? {} : { costs: plan.costs }),
    layouts,
    cuts: sum(layouts.map((layout) => layout.cuts * layout.run * (layout.bags ?? 1))),
    settings: sum(layouts.map((layout) => layout.settings)),
    hold,
    narrowCuts: cuts.filter((cut) => cut.tooNarrow).length,
    longestCut: cuts.reduce(
      (longest, { line }) => Math.max(longest, line.x2 - line.x1, line.y2 - line.y1),
      0,
    ),
    leftovers: plan.leftovers,
    files,
  };
}

function itemSummary(
  { item, onHand, needed, atLeast, used }: ItemUse,
  project: Pick<Project, "items">,
): ItemSummary {
  return { item, roll: rollOf(item, project), onHand, needed, atLeast, used };
}

function papersOfAssumedGrain({ papers, pieces, groups }: Plan): readonly string[] {
  const planned = new Set(groups.flatMap(({ designs }) => designs));
  const folded = new Set(
    pieces.filter(({ forms }) => forms.some(({ scores }) => scores.length > 0)).flatMap(({ faces }) => faces),
  );
  return papers
    .filter(({ grainBasis }) => grainBasis === "assumed")
    .filter(({ designs }) =>
      designs.some(
        ({ id, front, back }) =>
          planned.has(id) && (folded.has(front.id) || (back !== null && folded.has(back.id))),
      ),
    )
    .map(({ name }) => name);
}

function paperSummaries({ papers, groups, use }: Plan): readonly PaperSummary[] {
  const names = designNames(papers);
  const planned = new Set(groups.flatMap(({ designs }) => designs));
  return papers
    .flatMap(({ designs }) => designs)
    .filter(({ id }) => planned.has(id))
    .map(({ id, count }) => {
      const found = use.find(({ design }) => design === id);
      return {
        design: id,
        name: names.get(id) ?? id,
        used: found?.used ?? 0,
        onHand: count,
        offcutsUsed: found?.offcutsUsed ?? 0,
      };
    });
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
