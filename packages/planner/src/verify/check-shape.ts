import { shown } from "./first-difference.js";
import type { PlanReport } from "./plan-finding.js";

/** Checks the form of one value; false where it, or something in it, was reported. */
type Check = (value: unknown, path: string, report: PlanReport) => boolean;

/**
 * Checks that a value of any kind has the form of a plan, as far as the other checks read it; what it works out from the
 * project, its problems and its packings are looked at by those who compare them. True where it has.
 */
export function checkShape(value: unknown, report: PlanReport): boolean {
  return plan(value, "plan", report);
}

function must(expected: string, holds: (value: unknown) => boolean): Check {
  return (value, path, report) => {
    if (holds(value)) return true;
    report("malformed", path, `${path} is ${shown(value)}, where a plan has ${expected}.`);
    return false;
  };
}

const text = must("text", (value) => typeof value === "string");
const count = must("a whole number from 0", (value) => Number.isSafeInteger(value) && (value as number) >= 0);
const positive = must(
  "a whole number from 1",
  (value) => Number.isSafeInteger(value) && (value as number) >= 1,
);
const whole = must("a whole number", Number.isSafeInteger);
const flag = must("true or false", (value) => typeof value === "boolean");
const anything: Check = () => true;
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const object = must("an object", isObject);

function oneOf(words: readonly string[]): Check {
  return must(`one of ${words.join(", ")}`, (value) => typeof value === "string" && words.includes(value));
}

function orNull(check: Check): Check {
  return (value, path, report) => value === null || check(value, path, report);
}

function orAbsent(check: Check): Check {
  return (value, path, report) => value === undefined || check(value, path, report);
}

function listOf(check: Check): Check {
  const list = must("a list", Array.isArray);
  return (value, path, report) =>
    list(value, path, report) &&
    (value as readonly unknown[])
      .map((entry, i) => check(entry, `${path}[${i}]`, report))
      .every((isSound) => isSound);
}

function fields(checks: Readonly<Record<string, Check>>): Check {
  return (value, path, report) =>
    object(value, path, report) &&
    Object.entries(checks)
      .map(([key, check]) =>
        check(
          (value as Readonly<Record<string, unknown>>)[key],
          path === "plan" ? key : `${path}.${key}`,
          report,
        ),
      )
      .every((isSound) => isSound);
}

const rollCut = fields({ rolls: positive, lengths: listOf(fields({ length: positive, count: positive })) });

const plan = fields({
  version: anything,
  title: anything,
  units: anything,
  papers: anything,
  cards: anything,
  pieces: anything,
  items: anything,
  enough: oneOf(["yes", "no", "not-found"]),
  groups: listOf(
    fields({
      designs: listOf(text),
      problem: object,
      packing: object,
      sheets: listOf(fields({ sheet: text, design: text, offcut: orNull(count) })),
      bags: orAbsent(count),
      strips: orAbsent(
        listOf(fields({ kind: text, piece: text, holds: count, along: listOf(oneOf(["width", "height"])) })),
      ),
      endless: orAbsent(fields({ problem: object, packing: object })),
    }),
  ),
  noPaper: listOf(fields({ piece: text })),
  complete: listOf(
    fields({
      card: whole,
      wanted: count,
      complete: count,
      spares: orAbsent(fields({ wished: count, made: count })),
    }),
  ),
  shortages: listOf(
    fields({
      group: count,
      outcome: oneOf(["short", "not-found"]),
      pieces: listOf(fields({ piece: text, missing: count })),
      wouldHelp: listOf(fields({ design: text, more: count })),
      atLeast: orNull(count),
      withMore: orNull(fields({ problem: object, packing: object })),
    }),
  ),
  itemUse: orAbsent(
    listOf(
      fields({
        item: text,
        onHand: orNull(count),
        needed: count,
        atLeast: count,
        used: count,
        bags: orAbsent(count),
        cuts: orAbsent(listOf(rollCut)),
        withMore: orAbsent(listOf(rollCut)),
      }),
    ),
  ),
  use: listOf(fields({ design: text, used: count, left: orNull(whole), offcutsUsed: count })),
  leftovers: listOf(fields({ design: text, width: count, height: count, count, keep: flag })),
  folds: listOf(fields({ piece: text, along: count, across: count, unknown: count, none: count })),
  cost: orNull(text),
  costs: orAbsent(
    fields({
      currency: orNull(text),
      copies: count,
      minutes: orNull(text),
      work: orNull(text),
      total: orNull(text),
    }),
  ),
  search: fields({ effort: text, seed: count, lp: text, cancelled: flag }),
});
