/** Reads a file of published instances; its fields are described in the README of the bench. */
import { z } from "zod";
import type { BenchFault } from "../bench-fault.js";
import type { Family, Instance, Question, Reference } from "./family.js";

const LONGEST_SIDE = 1_000_000;
const MOST_COPIES = 1_000_000;
const side = z.int().min(1).max(LONGEST_SIDE);
const count = z.int().min(0).max(MOST_COPIES);
const figure = z.int().min(0);

const stocked = z.union([
  z.tuple([side, side, count.nullable()]),
  z.tuple([side, side, count.nullable(), figure]),
]);

const instanceSchema = z.looseObject({
  id: z.string().min(1),
  sheet: z.tuple([side, side]).optional(),
  sheets: z.array(stocked).min(1).optional(),
  pieces: z.array(z.tuple([side, side, z.int().min(1).max(MOST_COPIES)])).min(1),
  values: z.array(figure).optional(),
  class: z.int().optional(),
  cat: z.int().optional(),
  set: z.string().optional(),
  n: z.int().optional(),
  lbOG: figure.optional(),
  lbRG: figure.optional(),
  optOG: figure.optional(),
  optRG: figure.optional(),
  optHeight: side.optional(),
  guillotineOG: z.boolean().optional(),
  guillotineRG: z.boolean().optional(),
  unconstrainedOptOG: figure.optional(),
  unconstrainedOptRG: figure.optional(),
});
const familySchema = z.looseObject({ family: z.string().min(1), instances: z.array(instanceSchema).min(1) });

type FileInstance = z.infer<typeof instanceSchema>;

/** A family, or all that is wrong with its file. */
export type FamilyResult =
  | { readonly ok: true; readonly family: Family }
  | { readonly ok: false; readonly faults: readonly BenchFault[] };

/**
 * Reads what a file holds as JSON.
 *
 * @param file the file's path as it was given, for the messages.
 */
export function readFamily(document: unknown, file: string): FamilyResult {
  const read = familySchema.safeParse(document, { reportInput: true });
  if (!read.success) return { ok: false, faults: read.error.issues.map((issue) => faultOf(issue, file)) };
  const { family: name, instances } = read.data;
  const faults = instances.flatMap((instance, i) => inconsistencies(instance, i, instances, file));
  if (faults.length > 0) return { ok: false, faults };
  const question = questionOf(instances);
  return {
    ok: true,
    family: { name, question, instances: instances.map((each) => instanceOf(each, question)) },
  };
}

/** The question of a whole family: a field that one of its instances has speaks for all. */
function questionOf(instances: readonly FileInstance[]): Question {
  const some = (key: keyof FileInstance): boolean =>
    instances.some((instance) => instance[key] !== undefined);
  if (some("sheets")) return "sizes";
  if (some("unconstrainedOptOG") || some("unconstrainedOptRG")) return "unlimited";
  if (some("values")) return "value";
  return some("optHeight") ? "strip" : "sheets";
}

function instanceOf(instance: FileInstance, question: Question): Instance {
  const [width, height] = instance.sheet ?? [0, 0];
  const one = question === "sheets" ? null : 1;
  return {
    id: instance.id,
    sheets: instance.sheets?.map(([w, h, stock]) => ({ width: w, height: h, stock })) ?? [
      { width, height: instance.optHeight ?? height, stock: one },
    ],
    pieces: instance.pieces.map(([w, h, quantity], i) => ({
      width: w,
      height: h,
      quantity,
      value: instance.values?.[i] ?? w * h,
    })),
    copies: instance.pieces.reduce((sum, [, , quantity]) => sum + quantity, 0),
    group: groupOf(instance),
    cell:
      instance.class === undefined || instance.n === undefined
        ? null
        : { class: instance.class, n: instance.n },
    fixed: referenceOf(instance, question, "O"),
    turned: referenceOf(instance, question, "R"),
  };
}

function groupOf({ class: number, cat, set }: FileInstance): string | null {
  if (number !== undefined) return `class ${number}`;
  return cat === undefined ? (set ?? null) : `category ${cat}`;
}

function referenceOf(instance: FileInstance, question: Question, turns: "O" | "R"): Reference {
  const best = instance[`opt${turns}G`] ?? null;
  const bound = instance[`lb${turns}G`] ?? null;
  switch (question) {
    case "sheets":
      return { best, bound: bound ?? best };
    case "sizes":
      return { best: null, bound: null };
    case "value":
      return { best, bound: best };
    case "unlimited": {
      const area = instance[`unconstrainedOpt${turns}G`] ?? null;
      return { best: area, bound: area };
    }
    case "strip": {
      // The best height is reached without the guillotine restriction; with it only where that is proven.
      const area = (instance.sheet?.[0] ?? 0) * (instance.optHeight ?? 0);
      return { best: instance[`guillotine${turns}G`] === true ? area : null, bound: area };
    }
  }
}

/** What the schema cannot see: fields that must agree with others. */
function inconsistencies(
  instance: FileInstance,
  index: number,
  all: readonly FileInstance[],
  file: string,
): readonly BenchFault[] {
  const at = `${file}, instances[${index}]`;
  const faults: BenchFault[] = [];
  const earlier = all.findIndex(({ id }) => id === instance.id);
  if (earlier < index) {
    const message = `found "${instance.id}", which is the id of instances[${earlier}] as well. Give each its own.`;
    faults.push({ where: `${at}.id`, message });
  }
  if ((instance.sheet === undefined) === (instance.sheets === undefined)) {
    const found = instance.sheet === undefined ? "neither sheet nor sheets" : "both sheet and sheets";
    faults.push({ where: at, message: `found ${found}, expected one of the two.` });
  }
  if (instance.values !== undefined && instance.values.length !== instance.pieces.length) {
    const message = `found ${instance.values.length} values, expected ${instance.pieces.length}, one for each of the pieces.`;
    faults.push({ where: `${at}.values`, message });
  }
  for (const key of ["sheet", "sheets", "optHeight"] as const) {
    const other = all.findIndex((each) => each[key] !== undefined);
    if (other >= 0 && instance[key] === undefined && all[other]?.[key] !== undefined) {
      const message = `found no ${key}, which instances[${other}] has. All instances of a family ask the same.`;
      if (key === "optHeight" || instance.sheet !== undefined || instance.sheets !== undefined) {
        faults.push({ where: at, message });
      }
    }
  }
  return faults;
}

function faultOf(issue: z.core.$ZodIssue, file: string): BenchFault {
  const path = issue.path.map((key, i) =>
    typeof key === "number" ? `[${key}]` : `${i === 0 ? "" : "."}${String(key)}`,
  );
  return {
    where: path.length === 0 ? file : `${file}, ${path.join("")}`,
    message: `found ${shown(issue.input)}, ${expected(issue)}.`,
  };
}

function shown(input: unknown): string {
  const text = JSON.stringify(input) ?? "nothing";
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}

function expected(issue: z.core.$ZodIssue): string {
  if (issue.code === "too_small") {
    const what = issue.origin === "array" ? "entries" : issue.origin === "string" ? "letters" : "";
    return `expected ${issue.minimum} ${what} or more`.replace("  ", " ");
  }
  if (issue.code === "too_big") return `expected ${issue.maximum} at most`;
  if (issue.code === "invalid_union")
    return "expected [width, height, stock or null] or [width, height, stock or null, cost], all whole numbers";
  if (issue.code === "invalid_type") return `expected ${WORDS[issue.expected] ?? issue.expected}`;
  return issue.message.replace(/^Invalid input: /, "");
}

const WORDS: Readonly<Record<string, string>> = {
  int: "a whole number",
  number: "a whole number",
  string: "text",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
};
