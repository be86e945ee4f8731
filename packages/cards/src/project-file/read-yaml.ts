// Reads the text of a project file into plain data, and keeps where each value stands.
//
// What makes YAML more than a notation for plain data gets a fault of its own: aliases (which can blow a small file up),
// tags, merge keys, keys that are no words. The text is split into tokens first, which takes no recursion, so that a file
// nested thousands deep is refused before the recursive part sees it.

import {
  Composer,
  type Document,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  Parser,
  visit,
  type YAMLMap,
} from "yaml";
import type { FaultList, FilePlace } from "./fault-list.js";
import { printable, quote } from "./say-value.js";
import { parentOf, pathTo } from "./value-path.js";
import { type ErrorAt, sayYamlError } from "./yaml-error.js";

/** The data of a text, and where it stands. */
export interface ReadYaml {
  /** Objects without prototype, lists, scalars; a refused value is `undefined`. */
  readonly data: unknown;
  /** Whether the text could be read so far that its data tell something. */
  readonly isReadable: boolean;
  /** Where a value stands, or the nearest that there is above it; `null` where the file holds none. */
  readonly placeOf: (path: string) => FilePlace | null;
  /** Where the key of a value stands; else as `placeOf`. */
  readonly keyPlaceOf: (path: string) => FilePlace | null;
  /** How a number or another bare word was written, such as `007`; `null` where none stands. */
  readonly writtenAt: (path: string) => string | null;
}

/** The longest text that is read, in characters; a large project has some 20,000. */
const LONGEST_FILE = 1_000_000;

/** How deep lists and keys may lie in each other: twelve layers take some 30. */
const DEEPEST = 64;

/**
 * Reads YAML 1.2, of which JSON is a part, and reports what cannot be read. `isJson` only changes how a fault is said.
 */
export function readYaml(text: string, faults: FaultList, isJson: boolean): ReadYaml {
  const lines = new LineCounter();
  const walk: Walk = { faults, lines, places: new Map(), keyPlaces: new Map(), written: new Map() };
  const document = compose(text.startsWith("\ufeff") ? text.slice(1) : text, isJson, walk);
  const placeOf = (path: string): FilePlace | null => {
    const offset = walk.places.get(path);
    if (offset !== undefined) return placeAt(walk, offset);
    return path === "" ? null : placeOf(parentOf(path));
  };
  const keyPlaceOf = (path: string) => {
    const offset = walk.keyPlaces.get(path);
    return offset === undefined ? placeOf(path) : placeAt(walk, offset);
  };
  return {
    data: document === null ? undefined : toData(document.contents, "", walk),
    isReadable: document !== null,
    placeOf,
    keyPlaceOf,
    writtenAt: (path) => walk.written.get(path) ?? null,
  };
}

/** What is gathered on the way through a document. Filled as the walk goes. */
interface Walk {
  readonly faults: FaultList;
  readonly lines: LineCounter;
  readonly places: Map<string, number>;
  readonly keyPlaces: Map<string, number>;
  readonly written: Map<string, string>;
}

function placeAt({ lines }: Walk, offset: number): FilePlace {
  const { line, col } = lines.linePos(offset);
  return { line, column: col };
}

function compose(text: string, isJson: boolean, walk: Walk): Document.Parsed | null {
  const { faults, lines } = walk;
  if (text.length > LONGEST_FILE) {
    refuse(
      walk,
      0,
      "at most 1,000,000 characters",
      "The file is far longer than any project. Is it the right one?",
    );
    return null;
  }
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const deep = tooDeep(tokens);
  if (deep !== null) {
    const message = `Lists and keys lie more than ${DEEPEST} deep in each other here. Is a closing bracket missing?`;
    refuse(walk, deep, `at most ${DEEPEST} levels`, message);
    return null;
  }
  // The schema is named so that no directive of the file brings in the booleans and numbers of YAML 1.1.
  const composer = new Composer({
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: "silent",
    schema: "core",
  });
  const [document, second] = [...composer.compose(tokens, true, text.length)];
  if (document === undefined) return null;
  for (const errors of errorsByLine(document, walk).values()) {
    const [first] = errors;
    if (first === undefined) continue;
    const { offset, ...said } = sayYamlError(first, text, isJson, errors);
    faults.report({ code: "not-readable", path: "", place: placeAt(walk, offset), ...said });
  }
  if (second !== undefined) {
    const message =
      "A second document begins here. Keep one project a file, and leave out lines of --- or ...";
    refuse(walk, second.range[0], "one project", message);
  }
  return document.errors.length > 0 ? null : document;
}

/** The errors of each line in their order: all but the first are nearly always its echo. */
function errorsByLine(document: Document.Parsed, walk: Walk): ReadonlyMap<number, readonly ErrorAt[]> {
  const lines = new Map<number, ErrorAt[]>();
  const quotes = document.errors.some(({ message }) => isOpenQuote(message)) ? openings(document) : null;
  const errors = document.errors
    .map(({ code, message, pos: [end] }) => {
      const offset = isOpenQuote(message) ? (quotes?.get(end) ?? end) : end;
      return { code, message, offset };
    })
    .sort((a, b) => a.offset - b.offset);
  for (const error of errors) {
    const { line } = placeAt(walk, error.offset);
    const known = lines.get(line);
    if (known === undefined) lines.set(line, [error]);
    else known.push(error);
  }
  return lines;
}

function isOpenQuote(message: string): boolean {
  return message.startsWith("Missing closing");
}

/** Where each text in quotes begins, by where it ends. */
function openings(document: Document.Parsed): ReadonlyMap<number, number> {
  const starts = new Map<number, number>();
  visit(document, {
    Scalar(_, { type, range }) {
      if (range && type?.startsWith("QUOTE")) starts.set(range[1], range[0]);
    },
  });
  return starts;
}

function refuse(walk: Walk, offset: number, expected: string, message: string, path = ""): undefined {
  const place = placeAt(walk, offset);
  walk.faults.report({ code: "not-readable", path, place, expected, message });
}

type Token = ReturnType<Parser["parse"]> extends Generator<infer T> ? T : never;

/** Where collections lie too deep; `null` where they do not. Works level by level, without recursion. */
function tooDeep(tokens: readonly Token[]): number | null {
  let level: Token[] = tokens.flatMap((token) =>
    token.type === "document" && token.value ? [token.value] : [],
  );
  for (let depth = 1; level.length > 0; depth++) {
    if (depth > DEEPEST) return level[0]?.offset ?? 0;
    level = level.flatMap((token) =>
      "items" in token
        ? token.items.flatMap(({ key, value }) => [key, value].filter((inner) => inner != null))
        : [],
    );
  }
  return null;
}

function toData(node: unknown, path: string, walk: Walk): unknown {
  if (node === null || node === undefined) return null;
  if (isMap(node) || isSeq(node) || isScalar(node)) {
    const start = node.range?.[0] ?? 0;
    if (!walk.places.has(path)) walk.places.set(path, start);
    if (node.tag !== undefined) {
      const message = `The tag ${printable(node.tag.replace("tag:yaml.org,2002:", "!!"))} is not read. Leave it out; quotes make a text of a number.`;
      return refuse(walk, start, "a value without a tag", message, path);
    }
    if (isMap(node)) return toObject(node, path, walk);
    if (isSeq(node)) return node.items.map((item, index) => toData(item, pathTo(path, index), walk));
    if (typeof node.value !== "string" && node.source) walk.written.set(path, node.source);
    return node.value;
  }
  const start = offsetOf(node);
  const message = "An alias (a word after *) is not read. Write the value out once more.";
  return refuse(walk, start, "the value itself", message, path);
}

function toObject(map: YAMLMap, path: string, walk: Walk): unknown {
  const object: Record<string, unknown> = Object.create(null);
  for (const { key, value } of map.items) {
    const start = offsetOf(key);
    const name = isScalar(key) ? (typeof key.value === "string" ? key.value : (key.source ?? "")) : null;
    if (name === null) {
      refuse(
        walk,
        start,
        "a word as key",
        "A key must be a plain word. Is a quote mark or a value missing?",
        path,
      );
      continue;
    }
    const at = pathTo(path, name);
    if (name === "<<") {
      refuse(
        walk,
        start,
        "keys written out",
        "The merge key << is not read. Write the keys out once more.",
        at,
      );
      continue;
    }
    if (name === "__proto__") {
      refuse(walk, start, "another key", `${quote(name)} cannot be a key. Choose another one.`, at);
      continue;
    }
    const first = walk.keyPlaces.get(at);
    if (first !== undefined && name in object) {
      const message = `The key ${quote(name)} is here already, in line ${placeAt(walk, first).line}. Keep one of the two.`;
      walk.faults.report({
        code: "twice",
        path: at,
        place: placeAt(walk, start),
        found: name,
        expected: "each key once",
        message,
      });
      continue;
    }
    walk.keyPlaces.set(at, start);
    // A single value stands where it stands; a group of values begins with its key.
    if (!isScalar(value) || !value.source) walk.places.set(at, start);
    object[name] = toData(value, at, walk);
  }
  return object;
}

function offsetOf(node: unknown): number {
  const range: unknown =
    typeof node === "object" && node !== null && "range" in node ? node.range : undefined;
  return Array.isArray(range) && typeof range[0] === "number" ? range[0] : 0;
}
