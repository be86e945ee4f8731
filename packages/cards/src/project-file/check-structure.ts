// Checks plain data against the schema and says every error in our own words. What is wrong is then taken out of the data,
// so that all the rest can still be looked into and all faults of a file come at once.

import type { z } from "zod";
import { SHELF_GROUPS } from "../shelf/shelf-schema.js";
import type { FaultList } from "./fault-list.js";
import { isExcused } from "./is-excused.js";
import { nearestWord } from "./nearest-word.js";
import { listWords, quote, sayValue, writeNumber } from "./say-value.js";
import { CARD_GROUPS, CARD_KINDS } from "./schema/card-schema.js";
import { FINISH_GROUPS } from "./schema/finish-schema.js";
import { type Kinds, keysOfKind } from "./schema/kinds.js";
import { LAYER_GROUPS, LAYER_KINDS } from "./schema/layer-schema.js";
import { PAPER_GROUPS, PAPER_KINDS } from "./schema/paper-schema.js";
import { PROJECT_GROUPS, type ProjectFile, projectFile } from "./schema/project-schema.js";
import { SILENCE_GROUPS } from "./schema/silence-schema.js";
import { pathOf, pathTo, type Step } from "./value-path.js";
import { WORDINGS, type Wording, wordingOf } from "./wording.js";

type Issue = z.core.$ZodIssue;

/** All groups of keys by their wording. */
const GROUPS: ReadonlyMap<string, z.ZodObject> = new Map<string, z.ZodObject>(
  Object.entries({
    ...PROJECT_GROUPS,
    ...SHELF_GROUPS,
    ...SILENCE_GROUPS,
    ...PAPER_GROUPS,
    ...CARD_GROUPS,
    ...LAYER_GROUPS,
    ...FINISH_GROUPS,
  }),
);

/** A part of the data: what holds it, the step to it, and its path. */
interface Spot {
  readonly steps: readonly Step[];
  readonly path: string;
  readonly holder: unknown;
  readonly value: unknown;
}

/** Groups of keys that come in kinds, by their wording. */
const KINDS: ReadonlyMap<string, Kinds> = new Map<string, Kinds>([
  ["paper", PAPER_KINDS],
  ["card", CARD_KINDS],
  ["layer", LAYER_KINDS],
]);

/** Data of the file that are right as far as they are there: whatever was wrong is `undefined`. */
export type Written<T> = T extends readonly (infer Item)[]
  ? readonly (Written<Item> | undefined)[]
  : T extends object
    ? { readonly [Key in keyof T]?: Written<T[Key]> | undefined }
    : T;

/**
 * Reports what in the data does not fit the schema, and gives the data without it: what is wrong is `undefined`. The data
 * are changed in place.
 */
export function checkStructure(data: unknown, faults: FaultList): Written<ProjectFile> | undefined {
  return checkStructureOf(projectFile, data, faults);
}

/** The same for data of any schema whose messages name wordings. */
export function checkStructureOf<Schema extends z.ZodType>(
  schema: Schema,
  data: unknown,
  faults: FaultList,
): Written<z.infer<Schema>> | undefined {
  const result = schema.safeParse(data);
  if (result.success) return result.data as Written<z.infer<Schema>>;
  const root = { data };
  const wrong: (readonly Step[])[] = [];
  const check: Check = { faults, wrong, missing: [] };
  for (const issue of result.error.issues) checkIssue(issue, [], root, check);
  // A key that was only misspelt is not missing as well, so that is told last.
  for (const report of check.missing) report();
  for (const steps of wrong) takeOut(root, steps);
  // Whatever does not fit is out, so what is left fits as far as it goes.
  return root.data as Written<z.infer<Schema>> | undefined;
}

interface Check {
  readonly faults: FaultList;
  readonly wrong: (readonly Step[])[];
  readonly missing: (() => void)[];
}

function checkIssue(
  issue: Issue,
  base: readonly Step[],
  root: { readonly data: unknown },
  check: Check,
): void {
  const steps = [...base, ...issue.path.map((step) => (typeof step === "number" ? step : String(step)))];
  const spot = findSpot(root, steps);
  const branch = issue.code === "invalid_union" ? branchMeant(issue.errors) : null;
  if (branch !== null) {
    for (const inner of branch) checkIssue(inner, steps, root, check);
    return;
  }
  if (issue.code === "unrecognized_keys") {
    for (const key of issue.keys) reportUnknownKey(key, issue.message, spot, check);
    return;
  }
  check.wrong.push(steps);
  if (spot.value === undefined) check.missing.push(() => reportMissing(issue, spot, check.faults));
  else if (issue.code === "invalid_key") reportBadKey(issue.message, spot, check.faults);
  else reportValue(issue, spot, check.faults);
}

/** The errors of the alternative that fits the kind of the value; `null` where it fits none. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | null {
  const meant = branches.find((issues) =>
    issues.every(
      ({ path, code }) =>
        path.length > 0 || !["invalid_type", "invalid_value", "invalid_union"].includes(code),
    ),
  );
  return meant ?? null;
}

function reportUnknownKey(key: string, wording: string, { path, value }: Spot, { faults }: Check): void {
  const noun = nounOf(wording, value);
  const known = keysFor(wording, value);
  const suggestion = nearestWord(key, known);
  const all = `The keys of ${noun} are ${listWords(known, "and")}.`;
  const help = suggestion === null ? all : `Did you mean ${suggestion}?${known.length > 10 ? "" : ` ${all}`}`;
  faults.report({
    code: "unknown-key",
    path: pathTo(path, key),
    found: key,
    expected: `one of ${listWords(known, "or")}`,
    message: `${quote(key)} is not a key of ${noun}. ${help}`,
    suggestion,
  });
}

function kindNamed(
  wording: string,
  value: unknown,
): { readonly name: string; readonly noun: string; readonly keys: readonly string[] } | null {
  const kinds = KINDS.get(wording);
  if (kinds === undefined || typeof value !== "object" || value === null) return null;
  const [only, ...others] = Object.entries(kinds).filter(([name]) => name in value);
  if (only === undefined || others.length > 0) return null;
  const [name, kind] = only;
  return { name, noun: kind.noun, keys: keysOfKind(name, kind) };
}

function nounOf(wording: string, value: unknown): string {
  return kindNamed(wording, value)?.noun ?? wordingOf(wording).noun ?? "this";
}

function keysFor(wording: string, value: unknown): readonly string[] {
  return kindNamed(wording, value)?.keys ?? Object.keys(GROUPS.get(wording)?.shape ?? {});
}

function reportBadKey(wording: string, { path, steps }: Spot, faults: FaultList): void {
  const key = String(steps.at(-1));
  if (wording === "elsewhere") {
    reportBadSurface(key, path, faults);
    return;
  }
  faults.report({
    code: "wrong-type",
    path,
    found: key,
    expected: "a name of at most 40 letters, digits, - and _ that begins with a letter",
    message: `${quote(key)} cannot be the key of a paper or a design. Use letters, digits, - and _, beginning with a letter; a name for pictures and lists goes behind name.`,
  });
}

function reportBadSurface(key: string, path: string, faults: FaultList): void {
  const { code, expected, words, meant } = WORDINGS.surfaceName;
  const suggestion = wordMeant(key, words, { code, expected, meant });
  const isOwn = ["front", "inside", "back"].includes(key);
  const help = isOwn
    ? `What lies on the ${key} stands at the card itself: write ${key}: there.`
    : suggestion === null
      ? `Surfaces here are ${expected.replace("a surface of the card: ", "")}.`
      : `Did you mean ${suggestion}?`;
  const message = `${quote(key)} is not a surface that lies elsewhere. ${help}`;
  faults.report({ code, path, found: key, expected, message, suggestion: isOwn ? null : suggestion });
}

function nameOf({ steps }: Spot): string {
  const key = steps.at(-1);
  return typeof key === "string" ? quote(key) : "this entry";
}

function reportMissing(issue: Issue, spot: Spot, faults: FaultList): void {
  const { path, holder, steps } = spot;
  const key = steps.at(-1);
  // A key that is there was refused before; its fault is known.
  if (typeof key !== "string" || typeof holder !== "object" || holder === null || key in holder) return;
  if (isExcused(key, pathOf(steps.slice(0, -1)), holder, faults)) return;
  const wording = wordingOf(issue.message);
  const { expected } = wording;
  const message = `The key ${nameOf(spot)} is missing. Write ${expected}.`;
  faults.report({ code: wording.code === "version" ? "version" : "missing", path, expected, message });
}

function reportValue(issue: Issue, spot: Spot, faults: FaultList): void {
  const { path, value } = spot;
  const wording = wordingOf(issue.message);
  const { expected } = wording;
  if (value === null) {
    faults.report({ code: "missing", path, expected, message: sayEmpty(path, nameOf(spot), wording) });
    return;
  }
  if (issue.code === "too_big" || issue.code === "too_small") {
    reportRange(issue, spot, wording, faults);
    return;
  }
  const words = issue.code === "invalid_value" ? issue.values.map(String) : (wording.words ?? []);
  const suggestion = typeof value === "string" ? wordMeant(value, words, wording) : null;
  const meant = suggestion === null ? "" : ` Did you mean ${suggestion}?`;
  faults.report({
    code: wording.code,
    path,
    found: value,
    expected,
    message: `Found ${sayValue(value)}, expected ${expected}.${meant}${quotesHelp(value, wording)}`,
    suggestion: suggestion ?? unquoted(value, wording),
  });
}

function wordMeant(value: string, words: readonly string[], { meant = {} }: Wording): string | null {
  const word = value.trim().toLowerCase();
  return Object.hasOwn(meant, word) ? (meant[word] ?? null) : nearestWord(value, words);
}

function sayEmpty(path: string, named: string, { expected }: Wording): string {
  if (path === "")
    return "The file holds nothing. A project begins with sheetwright: 1, a title, papers and cards.";
  const hash =
    named === '"colour"' || named === '"envelope"' ? " A # begins a comment unless it stands in quotes." : "";
  return `Nothing stands behind ${named}. Write ${expected}, or leave the key out if it may be missing.${hash}`;
}

/** A number in quotes, where a number is wanted. */
function unquoted(value: unknown, { code }: Wording): string | null {
  const isNumber = typeof value === "string" && /^\s*\d{1,9}\s*$/.test(value);
  return code === "not-a-count" && isNumber ? value.trim() : null;
}

function quotesHelp(value: unknown, wording: Wording): string {
  const number = unquoted(value, wording);
  return number === null ? "" : ` Write ${number} without quotes.`;
}

function reportRange(
  issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall,
  { path, value }: Spot,
  { code, expected: wanted }: Wording,
  faults: FaultList,
): void {
  const isLarge = issue.code === "too_big";
  const limit = writeNumber(Number(isLarge ? issue.maximum : issue.minimum));
  const isList = Array.isArray(value);
  const of = isList ? `entr${limit === "1" ? "y" : "ies"}` : "";
  const expected = `${isLarge ? "at most" : "at least"} ${limit}${isList ? ` ${of}` : ""}`;
  const found = isList
    ? `${value.length === 0 ? "an empty list" : `a list of ${value.length}`}`
    : sayValue(value);
  const message = `Found ${found}, expected ${expected}: ${wanted}.`;
  faults.report({
    code: isLarge ? "too-many" : isList && value.length === 0 ? "missing" : code,
    path,
    found: value,
    expected,
    message,
  });
}

function findSpot(root: { readonly data: unknown }, steps: readonly Step[]): Spot {
  let holder: unknown = null;
  let value = root.data;
  for (const step of steps) {
    holder = value;
    value = typeof value === "object" && value !== null ? (value as Record<Step, unknown>)[step] : undefined;
  }
  return { steps, path: pathOf(steps), holder, value };
}

function takeOut(root: { data: unknown }, steps: readonly Step[]): void {
  const last = steps.at(-1);
  if (last === undefined) {
    root.data = undefined;
    return;
  }
  const { value: holder } = findSpot(root, steps.slice(0, -1));
  if (typeof holder !== "object" || holder === null || !(last in holder)) return;
  (holder as Record<Step, unknown>)[last] = undefined;
}
