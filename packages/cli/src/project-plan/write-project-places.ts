import type { FileKind } from "./project-plan-files.js";

/** What each kind of file is for, in the order in which they are told. */
const PURPOSES: readonly (readonly [FileKind, string])[] = [
  ["overview", "open this first: all papers, sheets, pieces and leftovers"],
  ["drawing", "the sheets to print, true to scale"],
  ["cut list", "their cuts in working order"],
  ["cutter file", "for a cutting machine"],
  ["card", "the cards as they will look"],
  ["measurements", "every piece of a card measured, to hand out"],
  ["measurements as text", "the same as text"],
  ["packing list", "what goes into each bag"],
  ["plan", "everything as data, for other programs"],
];

/** Says where the files of a project's plan are, which to open first, and what the others are for. */
export function writeProjectPlaces(
  files: readonly { readonly name: string; readonly what: FileKind }[],
  out: string,
): readonly string[] {
  const found = PURPOSES.flatMap(([kind, purpose]) => {
    const [first, ...others] = files.filter(({ what }) => what === kind);
    if (first === undefined) return [];
    return [{ file: others.length === 0 ? first.name : `${first.name} and ${others.length} more`, purpose }];
  });
  const width = found.reduce((widest, { file }) => Math.max(widest, file.length), 0);
  return [`Written to ${out}:`, ...found.map(({ file, purpose }) => `  ${file.padEnd(width)}  ${purpose}`)];
}
