// What the maker does not want to be told. A silence that is misspelt would hide nothing, or too much, so each is looked
// into: its check must be one that can be silenced, and its place must be there.

import { type CheckCode, projectChecks } from "../checks/project-checks.js";
import { type SilenceableCode, silenceableCodes } from "../checks/silenceable-codes.js";
import type { Design, Silence } from "../project.js";
import type { Written } from "./check-structure.js";
import { nearestWord } from "./nearest-word.js";
import { type Reading, readText } from "./reading.js";
import { listWords, quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { isWithin, pathTo } from "./value-path.js";

type WrittenSilence = NonNullable<NonNullable<Written<ProjectFile["silence"]>>[number]>;

const LONGEST_REASON = 200;

/** Reads all silences. `data` is the whole file, whose places they may name. */
export function readSilences(
  silences: Written<ProjectFile["silence"]>,
  { data, cards }: { readonly data: unknown; readonly cards: readonly Design[] },
  reading: Reading,
): readonly Silence[] {
  const seen = new Set<string>();
  return (silences ?? []).flatMap((silence, index) => {
    if (silence === undefined) return [];
    const path = pathTo("silence", index);
    const check = readCheck(silence, path, reading);
    const at = readAt(silence, path, { data, cards }, reading);
    const because = readText(silence.because, pathTo(path, "because"), reading, LONGEST_REASON);
    if (check === null || at === undefined || because === null) return [];
    const key = JSON.stringify([check, at]);
    if (seen.has(key)) {
      const message = `The check ${check} is silenced there already. Leave one of the two out.`;
      reading.faults.report({ code: "twice", path, found: check, expected: "each silence once", message });
      return [];
    }
    seen.add(key);
    return [{ path, check, at, because }];
  });
}

function readCheck({ check }: WrittenSilence, silence: string, { faults }: Reading): SilenceableCode | null {
  if (check === undefined) return null;
  const path = pathTo(silence, "check");
  const text = check.trim();
  const known = silenceableCodes.find((code) => code === text);
  if (known !== undefined) return known;
  const expected = "the code of a warning or a note, such as bare-seam";
  const error = projectChecks.find(({ code }) => code === (text as CheckCode));
  if (error !== undefined) {
    const message = `What ${error.code} finds keeps the cards from being made, so it cannot be silenced. Mend it instead, and leave this silence out.`;
    faults.report({ code: "contradiction", path, found: text, expected, message });
    return null;
  }
  const suggestion = nearestWord(text, silenceableCodes);
  const help =
    suggestion === null
      ? `What can be silenced is ${listWords(silenceableCodes, "and")}.`
      : `Did you mean ${suggestion}?`;
  const message = `There is no check ${quote(text)}. ${help}`;
  faults.report({ code: "not-a-word", path, found: text, expected, message, suggestion });
  return null;
}

/** The place that is meant; `null` for everywhere, `undefined` where there is no such place. */
function readAt(
  { at }: WrittenSilence,
  silence: string,
  { data, cards }: { readonly data: unknown; readonly cards: readonly Design[] },
  { faults }: Reading,
): string | null | undefined {
  if (at === undefined) return null;
  const path = pathTo(silence, "at");
  const text = at.trim();
  const named = cards.filter(({ name }) => name === text);
  const [card, other] = named;
  if (card !== undefined && other !== undefined) {
    const expected = "one card, or a place such as cards[0]";
    const message = `${named.length} cards are called ${quote(text)}. Write ${listWords(
      named.map((one) => one.path),
      "or",
    )} instead.`;
    faults.report({ code: "contradiction", path, found: text, expected, message });
    return undefined;
  }
  if (card !== undefined) return card.path;
  if (text !== "" && hasPlace(data, text, "")) return text;
  // The name of a card that could not be read may be the one that is meant.
  if (
    cards.some(({ name }) => name === "") ||
    faults.faults().some((one) => /^cards(\[\d+\])?$/.test(one.path))
  )
    return undefined;
  const suggestion = nearestWord(
    text,
    cards.map(({ name }) => name),
  );
  const expected = "the name of a card, or a place such as cards[0].front[1]";
  const help =
    suggestion === null
      ? "Write the name of a card, or a place as a finding names it, such as cards[0].front[1]; cards and layers are counted from 0."
      : `Did you mean ${suggestion}?`;
  const message = `There is no card and no place ${quote(text)} in this file. ${help}`;
  faults.report({ code: "not-a-word", path, found: text, expected, message, suggestion });
  return undefined;
}

/** Whether a value stands at a path of the data. */
function hasPlace(value: unknown, path: string, before: string): boolean {
  if (typeof value !== "object" || value === null) return false;
  const steps = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return steps.some((step) => {
    const place = pathTo(before, step);
    if (place === path) return true;
    return isWithin(path, place) && hasPlace((value as Record<string | number, unknown>)[step], path, place);
  });
}
