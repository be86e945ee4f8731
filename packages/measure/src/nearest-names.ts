import leven from "leven";
import type { SizeKind } from "./named-size.js";
import { namedSizes, sizeKey } from "./named-sizes.js";

/** Which names are suggested. */
export interface NearestNamesOptions {
  /** Only names of this kind. Default: all kinds. */
  readonly kind?: SizeKind;
  /** At most so many names. Default 3. */
  readonly limit?: number;
}

/** Longer text is no id; the limit keeps the work on hostile input small. */
const LONGEST_NAME = 60;

/**
 * Suggests names of sizes for a text that is none. Where the text is part of names, these: `a2` gives the US
 * card, the ISO sheet and the US envelope, for whoever wrote it to choose. Else the names that are the fewest
 * letters away (`us-leter`), at most one letter in three. Gives ids and aliases that `findNamedSize` knows,
 * the shortest way first; none where nothing is near.
 *
 * @example
 * nearestNames("us-leter") // => ["us-letter"]
 * nearestNames("a2") // => ["us-a2", "iso-a2", "env-us-a2"]
 * nearestNames("a7", { kind: "envelope" }) // => ["env-us-a7"]
 * nearestNames("papyrus") // => []
 */
export function nearestNames(text: string, options: NearestNamesOptions = {}): readonly string[] {
  const { kind, limit = 3 } = options;
  const key = sizeKey(text);
  if (key === "" || key.length > LONGEST_NAME) return [];
  const names = namedSizes
    .filter((size) => kind === undefined || size.kind === kind)
    .flatMap(({ id, aliases, name }) => [
      { text: id, words: `${id}-${sizeKey(name)}`.split("-") },
      ...aliases.map((alias) => ({ text: alias, words: alias.split("-") })),
    ])
    .map((name) => ({ ...name, distance: leven(key, name.text) }))
    .sort((a, b) => a.distance - b.distance);
  const words = key.split("-");
  const holding = names.filter((name) => words.every((word) => name.words.includes(word)));
  const reach = Math.min(Math.max(1, Math.floor(key.length / 3)), names[0]?.distance ?? 0);
  const near = holding.length > 0 ? holding : names.filter(({ distance }) => distance <= reach);
  return [...new Set(near.map((name) => name.text))].slice(0, limit);
}
