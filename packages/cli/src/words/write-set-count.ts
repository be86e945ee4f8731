import type { Project } from "@sheetwright/cards";
import type { RunOut, SetCount } from "@sheetwright/planner";
import { designNames } from "../project-plan/design-names.js";
import { counted } from "./counted.js";
import { rollOf } from "./item-use-in-words.js";
import { listed } from "./listed.js";
import { moreItems } from "./more-items.js";
import { moreSheets } from "./more-sheets.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";

/** Tells a person how many complete sets there are. Gives lines without a break at their end. */
export function writeSetCount(
  count: SetCount,
  project: Pick<Project, "papers" | "items" | "kits">,
): readonly string[] {
  const names = designNames(project.papers);
  const { title, most, impossible, runsOut, noPaper } = count;
  // One paper alone is named by what is proven.
  const isTold =
    runsOut.length === 1 && thingsOf(runsOut[0], names).length === 1 && impossible?.sets === (most ?? 0) + 1;
  return [
    title,
    "",
    ...wrapped(setInWords(count)),
    ...wrapped(numbersInWords(count, names)),
    ...(noPaper.length === 0 ? [] : wrapped(`No paper is large enough for ${listed(noPaper)}.`)),
    ...(runsOut.length === 0 || isTold
      ? []
      : ["", ...table([["runs out", "after"], ...runsOut.flatMap((one) => runOutRows(one, names))])]),
    ...moreInWords(count, project, names),
  ];
}

function setInWords({ set, wanted }: SetCount): string {
  const asked = `${wanted === 1 ? "1 is" : `${wanted} are`} asked for.`;
  if (set.every(({ copies }) => copies === 1)) {
    const cards = listed(set.map(({ name }) => name));
    return `A set is one ${set.length === 1 ? "" : "each of "}${cards}; ${asked}`;
  }
  return `A set is ${listed(set.map(({ name, copies }) => `${copies} ${name}`))}; ${asked}`;
}

function numbersInWords(
  { most, impossible, asNeeded, cancelled }: SetCount,
  names: ReadonlyMap<string, string>,
): string {
  if (most === null) {
    const from = listed(asNeeded.map((id) => nameOf(id, names)));
    return `Any number of sets can be made: ${from} ${asNeeded.length === 1 ? "comes" : "come"} as needed.`;
  }
  const found = most === 0 ? "Not one complete set was found" : `${counted(most, "complete set")} found`;
  if (impossible === null)
    return cancelled ? `${found} so far.` : `${found}; how many are impossible is not proven.`;
  const { sets, papers, items = [] } = impossible;
  const scarce = [...papers.map((ids) => orOf(ids, names)), ...items];
  const why = scarce.length === 0 ? "" : `: there is too little ${listed(scarce)}`;
  const gap = sets === most + 1 ? "" : `; whether ${most + 1} can be had is open`;
  return `${found}${gap}; ${sets} ${sets === 1 ? "is" : "are"} impossible, proven${why}.`;
}

function runOutRows(one: RunOut, names: ReadonlyMap<string, string>): readonly (readonly string[])[] {
  return thingsOf(one, names).map(({ name, proven }) => [
    name,
    `${counted(one.sets, "set")}${proven ? "" : ", as far as was found"}`,
  ]);
}

/** What runs out, papers and items alike. */
function thingsOf(
  one: RunOut | undefined,
  names: ReadonlyMap<string, string>,
): readonly { readonly name: string; readonly proven: boolean }[] {
  return [
    ...(one?.papers ?? []).map(({ designs, proven }) => ({ name: orOf(designs, names), proven })),
    ...(one?.items ?? []).map(({ item, proven }) => ({ name: item, proven })),
  ];
}

function moreInWords(
  { withMore, runsOut, wanted }: SetCount,
  project: Pick<Project, "papers" | "items" | "kits">,
  names: ReadonlyMap<string, string>,
): readonly string[] {
  if (withMore.length === 0) return [];
  return [
    "",
    ...withMore.flatMap(({ sets, sheets, items = [] }) => {
      const bought = [
        ...sheets.map(({ design, more }) => moreSheets(project.papers, design, more)),
        ...items.map(({ item, more }) => {
          const onHand = project.items?.find(({ name }) => name === item)?.count ?? null;
          return moreItems({ item, roll: rollOf(item, project), onHand }, more, project.kits !== undefined);
        }),
      ];
      const next = runsOut[1];
      const until =
        next?.sets === sets
          ? `, until ${listed(thingsOf(next, names).map(({ name }) => name))} ${thingsOf(next, names).length === 1 ? "runs" : "run"} out`
          : sets === wanted
            ? ", all that are asked for"
            : "";
      return wrapped(`With ${listed(bought)}: ${counted(sets, "set")}${until}.`);
    }),
  ];
}

function orOf(designs: readonly string[], names: ReadonlyMap<string, string>): string {
  return listed(
    designs.map((id) => nameOf(id, names)),
    "or",
  );
}

function nameOf(design: string, names: ReadonlyMap<string, string>): string {
  return names.get(design) ?? design;
}
