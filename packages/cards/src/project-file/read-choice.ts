import type { AnyPaper, Choice, Paper } from "../project.js";
import { nearestWord } from "./nearest-word.js";
import { asksForAny, readAnyPaper } from "./read-any-paper.js";
import type { BlankRule, ReadDie } from "./read-dies.js";
import type { Reading } from "./reading.js";
import { listWords, printable, quote } from "./say-value.js";
import { pathTo } from "./value-path.js";

/** What a maker may write for a paper. */
export interface ChoiceNames {
  /** The faces that each name means. */
  readonly faces: ReadonlyMap<string, readonly string[]>;
  /** Those that any paper of a kind is looked for among. */
  readonly papers: readonly Paper[];
  /** Papers whose designs are not known, since they could not be read; `null` where that goes for all papers. */
  readonly unclear: ReadonlySet<string> | null;
}

/** Lists what may be written: `night`, `night.back`, a pad's `stars` for any of its designs, `stars.comets`. */
export function choiceNames(papers: readonly Paper[], unclear: ChoiceNames["unclear"]): ChoiceNames {
  const faces = new Map<string, readonly string[]>();
  for (const { id, material, designs } of papers) {
    if (material === "pad")
      faces.set(
        id,
        designs.map(({ front }) => front.id),
      );
    for (const { front, back } of designs) {
      faces.set(front.id, [front.id]);
      if (back !== null) faces.set(back.id, [back.id]);
    }
  }
  return { faces, papers, unclear };
}

/** A reader that knows the papers. */
export interface ChoiceReading extends Reading {
  readonly names: ChoiceNames;
  /** Faces of papers of cover weight. */
  readonly covers: ReadonlySet<string>;
  /** The dies by their names, `null` in place of one that could not be read; `null` where not all are known. */
  readonly dies: ReadonlyMap<string, ReadDie | null> | null;
  /** How large die blanks are where nothing else is said. */
  readonly blanks: BlankRule;
}

/**
 * Reads a choice of papers: one name, any paper of a kind, or a list of those that any will do of. Gives `null` where one is
 * not known.
 */
export function readChoice(
  value: string | readonly (string | undefined)[] | undefined,
  path: string,
  reading: ChoiceReading,
): Choice | null {
  if (value === undefined) return null;
  const single = typeof value === "string";
  const entries = single ? [value] : value;
  const faces = new Set<string>();
  const texts: string[] = [];
  const any: AnyPaper[] = [];
  let isKnown = true;
  for (const [index, entry] of entries.entries()) {
    const at = single ? path : pathTo(path, index);
    const text = entry?.trim();
    const meant = text === undefined ? null : readOne(text, at, reading);
    if (text === undefined || meant === null) {
      isKnown = false;
      continue;
    }
    if (meant.faces.length > 0 && meant.faces.every((face) => faces.has(face)))
      reportAgain(text, at, reading);
    for (const face of meant.faces) faces.add(face);
    texts.push(meant.text);
    if (meant.any !== undefined) any.push(meant.any);
  }
  if (!isKnown || faces.size === 0) return null;
  return { faces: [...faces], text: listWords(texts, "or"), ...(any.length === 0 ? {} : { any }) };
}

/** What one text means: a name, or any paper of a kind. Gives `null` where it means nothing that is known. */
function readOne(
  text: string,
  path: string,
  reading: ChoiceReading,
): (Pick<Choice, "faces" | "text"> & { readonly any?: AnyPaper }) | null {
  const faces = reading.names.faces.get(text);
  if (faces !== undefined) return { faces, text };
  if (asksForAny(text)) return readAnyPaper(text, path, reading.names.papers, reading);
  if (!isUnclear(text, reading.names)) reportUnknown(text, path, reading);
  return null;
}

function isUnclear(text: string, { unclear }: ChoiceNames): boolean {
  return unclear === null || unclear.has(text.split(".", 1)[0] ?? "");
}

function reportAgain(text: string, path: string, { faults }: Reading): void {
  const message = `${quote(text)} is among the papers before it. Leave it out.`;
  faults.report({ code: "twice", path, found: text, expected: "each paper once", message });
}

function reportUnknown(text: string, path: string, { names, faults }: ChoiceReading): void {
  const known = [...names.faces.keys()];
  const help = sayHelp(text, names.faces);
  const suggestion = help === null ? nearestName(text, known) : null;
  const shown = known.slice(0, 12);
  const all = shown.length === 0 ? "none" : listWords(known.length > 12 ? [...shown, "more"] : shown, "and");
  const meant = suggestion === null ? "" : ` Did you mean ${suggestion}?`;
  faults.report({
    code: "unknown-paper",
    path,
    found: text,
    expected: "a paper of the project",
    message: `There is no paper ${quote(text)}. ${help ?? `The project has ${all}.${meant}`}`,
    suggestion,
  });
}

/** What is wrong with a name whose first part is known. */
function sayHelp(text: string, names: ChoiceNames["faces"]): string | null {
  const front = text.endsWith(".back") ? text.slice(0, -".back".length) : null;
  const faces = front === null ? undefined : names.get(front);
  if (front !== null && faces !== undefined) {
    const isPad = faces[0] !== front;
    return isPad
      ? `${front} is a pad: say which design's back, such as ${faces[0] ?? `${front}.dots`}.back.`
      : `${front} has no printed back. If it has one, say so at the paper, such as back: { pattern: two-way }.`;
  }
  const [paper = "", ...rest] = text.split(".");
  const own = names.get(paper);
  if (rest.length === 0 || own === undefined || own[0] !== paper) return null;
  return `${printable(paper)} is no pad, so it has no designs. Write ${printable(paper)}.`;
}

/** The nearest name, with a design looked for within its own pad first, and a design's name alone among all pads. */
function nearestName(text: string, known: readonly string[]): string | null {
  const alone = known.filter((name) => name.endsWith(`.${text}`));
  if (alone[0] !== undefined) return alone[0];
  const dot = text.indexOf(".");
  const own = dot < 0 ? [] : known.filter((name) => name.startsWith(text.slice(0, dot + 1)));
  return nearestWord(text, own) ?? nearestWord(text, known);
}
