import type { Paper } from "@sheetwright/cards";
import type { RunOut, SetCount } from "@sheetwright/planner";
import { designNames } from "../project-plan/design-names.js";
import { counted } from "./counted.js";
import { listed } from "./listed.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";

/** Tells a person how many complete sets there are. Gives lines without a break at their end. */
export function writeSetCount(count: SetCount, papers: readonly Paper[]): readonly string[] {
  const names = designNames(papers);
  const { title, most, impossible, runsOut, noPaper } = count;
  // One paper alone is named by what is proven.
  const isTold =
    runsOut.length === 1 && runsOut[0]?.papers.length === 1 && impossible?.sets === (most ?? 0) + 1;
  return [
    title,
    "",
    ...wrapped(setInWords(count)),
    ...wrapped(numbersInWords(count, names)),
    ...(noPaper.length === 0 ? [] : wrapped(`No paper is large enough for ${listed(noPaper)}.`)),
    ...(runsOut.length === 0 || isTold
      ? []
      : ["", ...table([["runs out", "after"], ...runsOut.flatMap((one) => runOutRows(one, names))])]),
    ...moreInWords(count, papers, names),
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
  const { sets, papers } = impossible;
  const why =
    papers.length === 0 ? "" : `: there is too little ${listed(papers.map((ids) => orOf(ids, names)))}`;
  const gap = sets === most + 1 ? "" : `; whether ${most + 1} can be had is open`;
  return `${found}${gap}; ${sets} ${sets === 1 ? "is" : "are"} impossible, proven${why}.`;
}

function runOutRows(
  { sets, papers }: RunOut,
  names: ReadonlyMap<string, string>,
): readonly (readonly string[])[] {
  return papers.map(({ designs, proven }) => [
    orOf(designs, names),
    `${counted(sets, "set")}${proven ? "" : ", as far as was found"}`,
  ]);
}

function moreInWords(
  { withMore, runsOut, wanted }: SetCount,
  papers: readonly Paper[],
  names: ReadonlyMap<string, string>,
): readonly string[] {
  const counts = new Map(
    papers.flatMap(({ designs }) => designs.map(({ id, count }) => [id, count] as const)),
  );
  if (withMore.length === 0) return [];
  return [
    "",
    ...withMore.flatMap(({ sets, sheets }) => {
      const bought = sheets.map(
        ({ design, more }) =>
          `${more} more of ${nameOf(design, names)} (count: ${(counts.get(design) ?? 0) + more})`,
      );
      const next = runsOut[1];
      const until =
        next?.sets === sets
          ? `, until ${listed(next.papers.map(({ designs }) => orOf(designs, names)))} ${next.papers.length === 1 ? "runs" : "run"} out`
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
