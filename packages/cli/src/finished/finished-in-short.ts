import { type EnvelopeVerdict, type FinishedCard, finishedCards, type Project } from "@sheetwright/cards";

/** A finished card as `--json` prints it: of the named envelopes only those that take it. */
export interface FinishedInShort extends Omit<FinishedCard, "envelopes"> {
  /** Best first. */
  readonly envelopes: readonly {
    readonly id: string;
    readonly verdict: EnvelopeVerdict;
    readonly isLoose: boolean;
  }[];
}

/** How thick and heavy the cards of a project are, and which envelopes take them. */
export function finishedInShort(project: Project): readonly FinishedInShort[] {
  return finishedCards(project).map(({ envelopes, ...card }) => ({
    ...card,
    envelopes: envelopes
      .filter(({ verdict }) => verdict !== "too-small")
      .map(({ id, verdict, isLoose }) => ({ id, verdict, isLoose })),
  }));
}
