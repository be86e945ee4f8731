import {
  type EnvelopeSize,
  findNamedSize,
  nearestNames,
  type Size,
  tryParseSize,
} from "@sheetwright/measure";
import type { EnvelopeWish } from "../project.js";
import type { Written } from "./check-structure.js";
import { readDecimal } from "./read-decimal.js";
import { readPlainSize, sayNamed, writeNamed } from "./read-measures.js";
import { LONGEST_NAME } from "./read-paper-design.js";
import { readWeight } from "./read-weight.js";
import { type Reading, readText } from "./reading.js";
import { listWords, quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenEnvelope = Written<NonNullable<ProjectFile["cards"][number]["envelope"]>>;

/** Reads the envelope of a card: a name, a size, or keys with either and the weight of its paper. */
export function readEnvelope(
  envelope: WrittenEnvelope | undefined,
  path: string,
  reading: Reading,
): EnvelopeWish | null {
  if (envelope === undefined) return null;
  if (typeof envelope === "string") {
    // What begins with a digit is a size.
    if (/^\s*[\d.]/.test(envelope))
      return { id: null, size: readPlainSize(envelope, path, reading), weight: null };
    const found = readName(envelope, path, reading);
    return { id: found?.id ?? null, size: found === null ? null : sizeOf(found), weight: null };
  }
  const at = (key: keyof typeof envelope) => pathTo(path, key);
  const { name, size, weight } = envelope;
  const cost = readDecimal(envelope.cost, at("cost"), "envelopeCost", reading);
  if (name !== undefined && size !== undefined) {
    const message =
      "The envelope has a name and a size, and either says how large it is. Leave one of the two out.";
    const expected = "name or size";
    reading.faults.report({ code: "contradiction", path: at("size"), found: size, expected, message });
  }
  if (Object.keys(envelope).length === 0) {
    const message =
      "Nothing is said of the envelope. Name one, such as { name: us-a7 }, or leave the key out for the usual one.";
    reading.faults.report({
      code: "missing",
      path,
      found: envelope,
      expected: "name, size, weight or cost",
      message,
    });
  }
  const text = readText(name, at("name"), reading, LONGEST_NAME);
  const named = text === null ? null : readName(text, at("name"), reading);
  const own = readPlainSize(size, at("size"), reading);
  return {
    id: named?.id ?? null,
    size: named === null ? own : sizeOf(named),
    weight: readWeight(readText(weight, at("weight"), reading, LONGEST_NAME), at("weight"), reading),
    ...(cost === null ? {} : { cost }),
  };
}

function sizeOf({ width, height }: Size): Size {
  return { width, height };
}

/** Finds a named envelope: by its id, by the id without `env-`, or by its number, as in `#10` and `No. 6 3/4`. */
function readName(text: string, path: string, { faults, unit }: Reading): EnvelopeSize | null {
  const number = /^(?:#|no\.? ?)(\d.*)$/i.exec(text.trim())?.[1];
  const ways = number === undefined ? [text, `env-${text.trim()}`] : [`env-us-${number}`];
  for (const way of ways) {
    const found = findNamedSize(way, "envelope");
    if (found !== undefined) return found;
  }
  const near = [
    ...nearestNames(text, { kind: "envelope" }),
    ...nearestNames(`env-${text}`, { kind: "envelope" }),
  ];
  const ends = nearestEnds(text);
  const suggestions = [...new Set([...ends, ...near])].slice(0, 3);
  const other = findNamedSize(text);
  const what =
    other === undefined
      ? `${quote(text)} is not the name of an envelope`
      : `${sayNamed(other)}, and an envelope is needed here`;
  const meant = suggestions.map((id) => {
    const size = findNamedSize(id, "envelope");
    return size === undefined ? id : `${id} (${writeNamed(size)})`;
  });
  const help =
    meant.length === 0
      ? "Write a name such as us-a7, iso-c6 or No. 10, or a size such as 5 1/4 x 7 1/4."
      : `Did you mean ${listWords(meant, "or")}?`;
  const size = tryParseSize(text, { unit });
  faults.report({
    code: "not-a-size",
    path,
    found: text,
    expected: "the name of an envelope, or width x height",
    message:
      size.ok && size.id === undefined
        ? `${quote(text)} is a size. Write size: ${text.trim()}.`
        : `${what}. ${help}`,
    suggestion: suggestions[0] ?? null,
  });
  return null;
}

/** Envelopes whose id ends as the text does: of `a7` the US one, of `c6` the ISO one. */
function nearestEnds(text: string): readonly string[] {
  const key = text.trim().toLowerCase();
  return ["env-us-", "env-iso-"].flatMap((start) => {
    const found = findNamedSize(`${start}${key}`, "envelope");
    return found === undefined ? [] : [found.id];
  });
}
