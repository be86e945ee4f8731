import { join, resolve } from "node:path";
import { type Project, readProject, shelfOf } from "@sheetwright/cards";
import { type BenchFault, BenchFaults } from "../bench-fault.js";
import { type BenchIo, withFile } from "../bench-io.js";
import { prepareResults, shownPath, writeResults } from "../results-files.js";
import type { WrittenOptions } from "../written-options.js";
import { readAlternativesOptions } from "./alternatives-options.js";
import { type AlternativeFigures, measureAlternatives } from "./measure-alternatives.js";
import { writeAlternatives } from "./write-alternatives.js";

/** Runs the suite `alternatives`. Throws BenchFaults for wrong usage or input, before anything is measured. */
export function runAlternatives(written: WrittenOptions, io: BenchIo): 0 | 1 {
  const options = readAlternativesOptions(written);
  if (!("effort" in options)) throw new BenchFaults(options);
  const { effort, projects: given } = options;
  const folder =
    given === null ? resolve(io.results, "../../test-fixtures/projects") : resolve(io.cwd, given);
  const projects = readProjects(folder, io);
  const paths = prepareResults("alternatives", options, io);
  const began = io.now();
  const rows = measureAlternatives(projects, effort, (name) => {
    if (io.stderr.isTTY) io.stderr.write(`\r\u001b[K${name}`);
  });
  if (io.stderr.isTTY) io.stderr.write("\r\u001b[K");
  const text = writeAlternatives(effort, rows);
  io.stdout.write(text);
  const figures = {
    suite: "alternatives",
    version: 1,
    options: { effort },
    machine: io.machine,
    seconds: io.now() - began,
    rows,
  };
  writeResults(
    [
      [paths.table, text],
      [paths.json, `${JSON.stringify(figures, null, 2)}\n`],
    ],
    io,
  );
  const faults = rows.flatMap((row) => faultsOf(row, rows));
  for (const fault of faults) io.stderr.write(`${fault}\n`);
  return faults.length > 0 ? 1 : 0;
}

function readProjects(
  folder: string,
  io: BenchIo,
): readonly { readonly name: string; readonly project: Project }[] {
  const told: BenchFault[] = [];
  const where = shownPath(folder, io);
  const textOf = (path: string) =>
    new TextDecoder().decode(withFile(shownPath(path, io), "cannot be read", () => io.read(path)));
  const names = withFile("--projects", `${where} cannot be read`, () => [...io.list(folder)].sort());
  const projects = names.flatMap((file) => {
    const path = join(folder, file);
    if (!/\.(yaml|json)$/.test(file)) return [];
    const text = textOf(path);
    if (/^sheetwright-shelf:/m.test(text)) return [];
    const name = shelfOf(text);
    const shelf = name === null ? undefined : { file: name, text: textOf(join(folder, name)) };
    const { project, faults } = readProject(text, { file, shelf });
    for (const { line, message } of faults) told.push({ where: `${file}:${line ?? 1}`, message });
    return project === null ? [] : [{ name: file.replace(/\.\w+$/, ""), project }];
  });
  if (told.length === 0 && projects.length === 0)
    told.push({
      where: "--projects",
      message: `${where} holds no project: no file that ends in .yaml or .json.`,
    });
  if (told.length > 0) throw new BenchFaults(told);
  return projects;
}

/** Which ways have all choices of another one, and more. */
const LESS: Readonly<Record<string, readonly string[]>> = {
  "papers and folds": ["no choice"],
  offcuts: ["no choice"],
  "as written": ["no choice", "papers and folds", "offcuts"],
};

/** What is wrong with a plan: that it does not prove right, or that a choice costs more than going without it. */
function faultsOf(row: AlternativeFigures, rows: readonly AlternativeFigures[]): readonly string[] {
  const { project, way, verified } = row;
  const dearer = (LESS[way] ?? []).filter((name) => {
    const less = rows.find((one) => one.project === project && one.way === name);
    if (less === undefined || !less.complete) return false;
    return !row.complete || costOf(row, less) > costOf(less, row);
  });
  return [
    ...(verified ? [] : [`${project}, ${way}: the plan does not prove right.`]),
    ...dearer.map((name) => `${project}, ${way}: costs more than ${name}.`),
  ];
}

/** By cost where both plans have one, else by area. */
function costOf({ cost, area }: AlternativeFigures, other: AlternativeFigures): number {
  return cost === null || other.cost === null ? area : Number(cost);
}
