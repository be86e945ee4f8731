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

/** What ids start with. A right name with a wrong start, such as `us-a4`, is looked for without it. */
const NAMESPACES: ReadonlySet<string> = new Set(["us", "iso", "asme", "ansi", "de", "craft", "card", "env"]);

/** Every id and alias with the words it answers to. */
const NAMES = namedSizes.flatMap(({ kind, id, aliases, name }) => [
  { kind, text: id, words: `${id}-${sizeKey(name)}`.split("-") },
  ...aliases.map((alias) => ({ kind, text: alias, words: alias.split("-") })),
]);

/**
 * Suggests names of sizes for a text that is none. Where the text is part of names, these: `a2` gives the US
 * card, the ISO sheet and the US envelope, for whoever wrote it to choose. Else those
 * of which it is part but for its namespace (`us-a4`), and then those that are the fewest letters away
 * (`us-leter`), at most one letter in three. Gives ids and aliases that `findNamedSize` knows, the shortest
 * way first; none where nothing is near.
 *
 * @example
 * nearestNames("us-leter") // => ["us-letter"]
 * nearestNames("a2") // => ["us-a2", "iso-a2", "env-us-a2"]
 * nearestNames("us-a4", { limit: 1 }) // => ["iso-a4"]
 * nearestNames("a7", { kind: "envelope" }) // => ["env-us-a7"]
 * nearestNames("papyrus") // => []
 */
export function nearestNames(text: string, options: NearestNamesOptions = {}): readonly string[] {
  const { kind, limit = 3 } = options;
  const key = sizeKey(text);
  if (key === "" || key.length > LONGEST_NAME) return [];
  const names = NAMES.filter((name) => kind === undefined || name.kind === kind)
    .map((name) => ({ ...name, distance: leven(key, name.text) }))
    .sort((a, b) => a.distance - b.distance);
  const words = key.split("-");
  const bareWords = words.filter((word) => !NAMESPACES.has(word));
  const reach = Math.min(Math.max(1, Math.floor(key.length / 3)), names[0]?.distance ?? 0);
  const holding = (wanted: readonly string[]) =>
    names.filter((name) => wanted.length > 0 && wanted.every((word) => name.words.includes(word)));
  const whole = holding(words);
  const near =
    whole.length > 0 ? whole : [...holding(bareWords), ...names.filter(({ distance }) => distance <= reach)];
  return [...new Set(near.map((name) => name.text))].slice(0, limit);
}
