import { type MatchingPapers, matchingPapers } from "../fit/matching-papers.js";
import type { AnyPaper, Paper } from "../project.js";
import { nearestWord } from "./nearest-word.js";
import { readWeight } from "./read-weight.js";
import type { Reading } from "./reading.js";
import { listWords, quote } from "./say-value.js";

/** Any paper that is asked for, with the faces of the project that it means. */
export interface ReadAnyPaper {
  readonly any: AnyPaper;
  /** In plain words, as it may be written. */
  readonly text: string;
  /** Ids of faces; never empty. */
  readonly faces: readonly string[];
}

const LOOKS = ["plain", "patterned"] as const;
const MATERIALS = ["cardstock", "paper", "glitter", "pad"] as const;
const FORM = /^any(?: (plain|patterned))? (cardstock|paper|glitter|pad)(?: of at least (.+))?$/;
const EXAMPLE = "any plain cardstock of at least 65 lb cover";

/** Whether a text asks for any paper of a kind; no paper's key has a space in it. */
export function asksForAny(text: string): boolean {
  return /^any(?:\s|$)/i.test(text);
}

/**
 * Reads `any cardstock`, `any plain paper`, `any pad of at least 100 gsm`; `paper` stands for every kind of it. Gives `null`,
 * with a fault, where it cannot be read or no paper of the project matches.
 */
export function readAnyPaper(
  written: string,
  path: string,
  papers: readonly Paper[],
  reading: Reading,
): ReadAnyPaper | null {
  const { faults } = reading;
  const spaced = written.trim().replace(/\s+/g, " ");
  // The weight keeps its own letters.
  const [, words = spaced, label = ""] = /^(.*? of at least )(.*)$/i.exec(spaced) ?? [];
  const [all, look, material, weight] = FORM.exec(words.toLowerCase() + label) ?? [];
  if (all === undefined) {
    reportForm(spaced, path, reading);
    return null;
  }
  const atLeast = weight === undefined ? null : readWeight(weight, path, reading);
  if (weight !== undefined && atLeast === null) return null;
  const any: AnyPaper = {
    material: MATERIALS.find((word) => word === material && word !== "paper") ?? null,
    look: LOOKS.find((word) => word === look) ?? null,
    atLeast,
  };
  const found = matchingPapers(any, papers);
  if (found.faces.length > 0) return { any, text: all, faces: found.faces };
  // What is wrong with a paper may be why it does not match.
  if (faults.isSound("papers")) reportNone(all, found, path, reading);
  return null;
}

function reportForm(text: string, path: string, { faults }: Reading): void {
  const meant = text
    .split(" ")
    .map((word) => nearestWord(word, ["any", ...LOOKS, ...MATERIALS, "of", "at", "least"]) ?? word)
    .join(" ");
  const suggestion = FORM.test(meant) ? meant : null;
  faults.report({
    code: "unknown-paper",
    path,
    found: text,
    expected: `any paper of a kind, such as ${EXAMPLE}`,
    message:
      `${quote(text)} does not say which papers will do. ${suggestion === null ? "" : `Did you mean ${suggestion}? `}` +
      `After any may come plain or patterned, then ${listWords(MATERIALS, "or")} (paper for all kinds), then of at least ` +
      `with a weight: ${EXAMPLE}.`,
    suggestion,
  });
}

function reportNone(
  text: string,
  { unweighed, lighter }: MatchingPapers,
  path: string,
  { faults }: Reading,
): void {
  const [heaviest] = [...lighter].sort((a, b) => b.weighs - a.weighs);
  const weights =
    heaviest === undefined
      ? ""
      : `The heaviest of that kind is ${heaviest.paper.id} with ${heaviest.weighs} g/m2, ${heaviest.wanted - heaviest.weighs} less than asked for. `;
  const places = unweighed.map(({ id }) => `papers.${id}.weight`);
  const told = listWords(places.length > 5 ? [...places.slice(0, 5), "more"] : places, "and");
  const help =
    unweighed.length > 0
      ? `The weight of ${unweighed.length === 1 ? "one that may be meant is" : "some that may be meant is"} not known: write it at ${told}.`
      : heaviest !== undefined
        ? "Ask for less, or name a paper."
        : "Name a paper, or add one of that kind.";
  faults.report({
    code: "unknown-paper",
    path,
    found: text,
    expected: "a kind of paper that the project has",
    message: `No paper of the project is ${text}. ${weights}${help}`,
  });
}
