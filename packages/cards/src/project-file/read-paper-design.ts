import { formatSize, type Size } from "@sheetwright/measure";
import type { Face, Offcut, Paper, PaperDesign } from "../project.js";
import type { Written } from "./check-structure.js";
import { type GiveColour, readColour } from "./colours.js";
import { readCost } from "./read-cost.js";
import { readSheetSize } from "./read-measures.js";
import { type Reading, readText } from "./reading.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** The longest name of a paper, a card or a layer. */
export const LONGEST_NAME = 80;

/** What the sheets of one design share, as written. */
export type WrittenSheets = Pick<
  Written<ProjectFile["papers"][string]>,
  "name" | "count" | "pattern" | "colour" | "cost" | "back" | "offcuts"
>;

/** A value as it was written, and where. */
interface Found<Value> {
  readonly value: Value;
  readonly path: string;
}

/** What is known of a design before it is read. */
export interface DesignPlace {
  readonly id: string;
  /** Its name where it has none of its own. */
  readonly name: string;
  readonly material: Paper["material"];
  readonly sheet: Size | null;
  readonly giveColour: GiveColour;
}

/**
 * Reads what the sheets of one design share. Of several groups of keys the first that has a key counts: those of the
 * design itself come before those of its pad.
 */
export function readPaperDesign(
  groups: readonly Found<WrittenSheets>[],
  { id, name: ownName, material, sheet, giveColour }: DesignPlace,
  reading: Reading,
): PaperDesign {
  const find = <Key extends keyof WrittenSheets>(key: Key): Found<WrittenSheets[Key]> => {
    const group = groups.find(({ value }) => value[key] !== undefined);
    return { value: group?.value[key], path: pathTo(group?.path ?? "", key) };
  };
  const count = find("count").value;
  const cost = find("cost");
  const colour = find("colour");
  const back = find("back");
  const offcuts = find("offcuts");
  // The name of a pad is not that of its designs.
  const [own] = groups;
  const name = readText(own?.value.name, pathTo(own?.path ?? "", "name"), reading, LONGEST_NAME) ?? ownName;
  return {
    id,
    name,
    count: typeof count === "number" ? count : null,
    cost: readCost(cost.value, cost.path, reading),
    front: {
      id,
      name,
      pattern: find("pattern").value ?? "none",
      colour: readColour(colour.value, colour.path, reading) ?? giveColour(material, name),
    },
    back: readBack(back, `${id}.back`, `${name}, back`, (of) => giveColour(material, of), reading),
    offcuts: readOffcuts(offcuts, sheet, reading),
  };
}

function readBack(
  { value: back, path }: Found<WrittenSheets["back"]>,
  id: string,
  name: string,
  giveColour: (name: string) => string,
  reading: Reading,
): Face | null {
  if (back === undefined) return null;
  const own = readText(back.name, pathTo(path, "name"), reading, LONGEST_NAME) ?? name;
  return {
    id,
    name: own,
    pattern: back.pattern ?? "none",
    colour: readColour(back.colour, pathTo(path, "colour"), reading) ?? giveColour(own),
  };
}

function readOffcuts(
  { value: offcuts = [], path }: Found<WrittenSheets["offcuts"]>,
  sheet: Size | null,
  reading: Reading,
): readonly Offcut[] {
  return offcuts.flatMap((offcut, index) => {
    const at = pathTo(path, index);
    const [text, sizePath, count] =
      typeof offcut === "object" ? [offcut.size, pathTo(at, "size"), offcut.count ?? 1] : [offcut, at, 1];
    const size = readSheetSize(text, sizePath, reading);
    if (size === null) return [];
    checkOffcut(size, sheet, sizePath, reading);
    return [{ width: size.width, height: size.height, count }];
  });
}

function checkOffcut(size: Size, sheet: Size | null, path: string, { faults, unit }: Reading): void {
  if (sheet === null || (size.width <= sheet.width && size.height <= sheet.height)) return;
  const write = ({ width, height }: Size) => formatSize(width, height, { unit });
  const turned = size.height <= sheet.width && size.width <= sheet.height;
  const meant = `${write({ width: size.height, height: size.width })}`;
  const help = turned
    ? `Width comes first, with the pattern upright: is ${meant} meant?`
    : "Check the two, or enter it as a paper of its own.";
  faults.report({
    code: "too-large",
    path,
    found: write(size),
    expected: `at most ${write(sheet)}`,
    message: `An offcut of ${write(size)} does not come out of a sheet of ${write(sheet)}. ${help}`,
    suggestion: turned ? meant : null,
  });
}
