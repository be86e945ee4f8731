import type { FaultList } from "./fault-list.js";
import { isExcused } from "./is-excused.js";
import { listWords, quote } from "./say-value.js";
import { type Kinds, keysOfKind } from "./schema/kinds.js";
import { pathTo } from "./value-path.js";
import { WORDINGS, type WordingName } from "./wording.js";

/**
 * Finds the kind of a thing by the key that names it, such as `mat` for a layer, and reports what goes against it: no such
 * key or several, a key of another kind, a key that the kind needs. Gives `null` where the kind is not clear.
 */
export function checkKind<Name extends string>(
  thing: Readonly<Record<string, unknown>>,
  kinds: Readonly<Record<Name, Kinds[string]>>,
  what: "paper" | "card" | "layer",
  path: string,
  faults: FaultList,
): Name | null {
  const names = Object.keys(kinds) as Name[];
  const [name, ...others] = names.filter((key) => key in thing);
  if (name === undefined) {
    reportNone(thing, names, what, path, faults);
    return null;
  }
  for (const other of others) {
    const message = `A ${what} has one of the keys ${listWords(names, "or")}, and here are ${name} and ${other}. Leave one of the two out${what === "layer" ? ", or make two layers of them" : ""}.`;
    faults.report({
      code: "contradiction",
      path: pathTo(path, other),
      found: other,
      expected: `one of ${listWords(names, "and")}`,
      message,
    });
  }
  const kind = kinds[name];
  for (const key of kind.required) {
    if (key in thing || isExcused(key, path, thing, faults)) continue;
    const expected = name === "shape" && key === "size" ? WORDINGS.shapeSize.expected : expectedOf(key, what);
    const message = `The key ${quote(key)} is missing: ${kind.noun} ${name === "bands" ? "need" : "needs"} it. Write ${expected}.`;
    faults.report({ code: "missing", path: pathTo(path, key), expected, message });
  }
  if (others.length === 0) reportForeign(thing, name, kinds, path, faults);
  return others.length === 0 ? name : null;
}

function reportNone(
  thing: Readonly<Record<string, unknown>>,
  names: readonly string[],
  what: string,
  path: string,
  faults: FaultList,
): void {
  if (names.some((name) => isExcused(name, path, thing, faults))) return;
  const expected = `one of the keys ${listWords(names, "or")}`;
  const message = `This ${what} has none of the keys ${listWords(names, "and")}. Give it one of them${what === "layer" ? ", such as mat: copper" : ""}.`;
  faults.report({ code: "missing", path, expected, message });
}

function reportForeign<Name extends string>(
  thing: Readonly<Record<string, unknown>>,
  name: Name,
  kinds: Readonly<Record<Name, Kinds[string]>>,
  path: string,
  faults: FaultList,
): void {
  const own = keysOfKind(name, kinds[name]);
  for (const key of Object.keys(thing)) {
    const takers = (Object.keys(kinds) as Name[]).filter((other) =>
      keysOfKind(other, kinds[other]).includes(key),
    );
    if (own.includes(key) || takers.length === 0) continue;
    const { noun } = kinds[name];
    const nouns = listWords(
      takers.map((taker) => kinds[taker].noun),
      "or",
    );
    const message = `${quote(key)} does not go with ${noun}: it belongs to ${nouns}. Leave it out, or change ${name}.`;
    faults.report({
      code: "contradiction",
      path: pathTo(path, key),
      found: key,
      expected: `only ${listWords(own, "and")}`,
      message,
    });
  }
}

function expectedOf(key: string, what: string): string {
  const wordings: Readonly<Record<string, WordingName>> = {
    papers: "bandPapers",
    paper: "choice",
    width: "length",
    size: "size",
    designs: "designs",
    base: "base",
    fold: "fold",
    name: "text",
  };
  return WORDINGS[wordings[key] ?? (what === "card" ? "card" : "text")].expected;
}
