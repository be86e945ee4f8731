import type { LayoutProgress } from "@sheetwright/planner";
import type { Fault } from "../fault.js";
import { counted } from "../words/counted.js";
import { listed } from "../words/listed.js";
import type { LayoutCounts } from "./layout-counts.js";
import type { CutPlan, NamedLayout } from "./read-cut-plan.js";
import type { Booking } from "./stock-data.js";

/** What is said to be cut of a plan, all that was booked before included. */
export interface SaidDone {
  /** Sheets cut by each layout so far; `null`: all of the plan. */
  readonly done: LayoutCounts | null;
  /** Sheets spoiled over each so far. */
  readonly spoiled: LayoutCounts;
}

/** A booking with what is new in it, or why it cannot be made. */
export type BookedLayouts =
  | { readonly booking: Booking; readonly progress: readonly LayoutProgress[] }
  | { readonly faults: readonly Fault[] };

/**
 * Works out what was cut since a plan was booked last. The numbers are those of all its sheets so far, so that saying the
 * same twice books nothing twice.
 *
 * @param before what is booked of it.
 */
export function bookLayouts(
  { identity, project, layouts }: Pick<CutPlan, "identity" | "project" | "layouts">,
  { done, spoiled }: SaidDone,
  before: Booking | undefined,
): BookedLayouts {
  const faults = [
    ...unknownNames(done ?? new Map(), layouts, "--done"),
    ...unknownNames(spoiled, layouts, "--spoiled"),
  ];
  const report = (option: string, code: string, message: string): void => {
    faults.push({ code, place: { option }, message });
  };
  const all: Record<string, number> = {};
  const lost: Record<string, number> = {};
  const progress: LayoutProgress[] = [];
  for (const { name, group, layout, run } of layouts) {
    const from = before?.done[name] ?? 0;
    const said = done === null ? run : done.has(name) ? (done.get(name) ?? run) : from;
    const lostBefore = before?.spoiled[name] ?? 0;
    const saidLost = spoiled.has(name) ? (spoiled.get(name) ?? 1) : lostBefore;
    if (said > run)
      report("--done", "too-many", `found ${said} sheets of ${name}, and the plan has ${run} of it.`);
    if (said < from) report("--done", "booked-already", lessThan(counted(from, "sheet"), from, name, said));
    if (saidLost < lostBefore)
      report(
        "--spoiled",
        "booked-already",
        lessThan(counted(lostBefore, "spoiled sheet"), lostBefore, name, saidLost),
      );
    if (said > 0) all[name] = said;
    if (saidLost > 0) lost[name] = saidLost;
    if (said > from || saidLost > lostBefore)
      progress.push({ group, layout, from, to: said, spoiled: saidLost - lostBefore });
  }
  if (faults.length > 0) return { faults };
  if (progress.length === 0) return { faults: [nothingNew(before, layouts)] };
  return { booking: { plan: identity, title: project.title, done: all, spoiled: lost }, progress };
}

function lessThan(sheets: string, number: number, name: string, said: number): string {
  return (
    `${sheets} of ${name} ${number === 1 ? "is" : "are"} booked already, and ${said} given. Give the sheets so far, those ` +
    "from before among them; sheetwright stock undo takes the last booking back."
  );
}

function unknownNames(counts: LayoutCounts, layouts: readonly NamedLayout[], option: string): Fault[] {
  return [...counts.keys()]
    .filter((name) => layouts.every((layout) => layout.name !== name))
    .map((name) => {
      const names = listed(layouts.map((layout) => layout.name));
      const message = `the plan has no layout ${name}. It has ${names}.`;
      return { code: "unknown-layout", place: { option }, message };
    });
}

function nothingNew(before: Booking | undefined, layouts: readonly NamedLayout[]): Fault {
  const place = { option: "sheetwright stock book" };
  if (before === undefined)
    return { code: "nothing-cut", place, message: "nothing is said to be cut, so there is nothing to book." };
  const isWhole = layouts.every(({ name, run }) => (before.done[name] ?? 0) === run);
  const message = isWhole
    ? "this plan is booked already, all of it. Nothing was booked again."
    : "what is said of this plan is booked already. Give the sheets so far, with those that are new.";
  return { code: "booked-already", place, message };
}
