/**
 * The part of CSS that drawing programs write into files: rules for an element's name, class or id, and declarations in
 * `style` attributes. Of the properties only those are kept that decide what is an outline.
 */

import type { Notes } from "./outline-note.js";
import { fatal, WHOLE_FILE } from "./outline-read-error.js";
import type { SvgElement } from "./svg-element.js";

const PROPERTIES = [
  "clip-path",
  "display",
  "fill",
  "fill-opacity",
  "fill-rule",
  "filter",
  "mask",
  "opacity",
  "overflow",
  "stroke",
  "stroke-opacity",
  "stroke-width",
  "transform",
  "transform-origin",
  "visibility",
] as const;

/** @internal */
export type StyleProperty = (typeof PROPERTIES)[number];

const KNOWN: ReadonlySet<string> = new Set(PROPERTIES);

interface Declaration {
  readonly property: StyleProperty;
  readonly value: string;
  readonly isImportant: boolean;
}

interface Selector {
  readonly name: string | null;
  readonly id: string | null;
  readonly classes: readonly string[];
}

interface Rule extends Selector {
  readonly declarations: readonly Declaration[];
  /** How much it counts against others: ids, then classes, then names, then the order (CSS Cascade). */
  readonly weight: readonly [ids: number, classes: number, names: number, order: number];
}

/** Far more than any program writes. */
const MOST_RULES = 1000;

/** No program writes more classes into a selector. */
const MOST_CLASSES = 10;

const SIMPLE_SELECTOR = /^(?<name>\*|[A-Za-z][\w-]*)?(?<rest>(?:[.#][A-Za-z_-][\w-]*)*)$/;

/**
 * The rules of a file.
 *
 * @internal
 */
export class StyleRules {
  /** By what an element must have for them to apply: `#id`, `.class`, `name` or `*`; the strongest rule last. */
  readonly #rules = new Map<string, (Rule & { readonly place: number })[]>();

  constructor(css: string, notes: Notes) {
    for (const [place, rule] of parseRules(css, notes).entries()) {
      const { id, classes, name } = rule;
      const key = id !== null ? `#${id}` : classes[0] !== undefined ? `.${classes[0]}` : (name ?? "*");
      const rules = this.#rules.get(key) ?? [];
      rules.push({ ...rule, place });
      this.#rules.set(key, rules);
    }
  }

  /** What rules, attributes and the `style` attribute say of an element, the strongest each. */
  styleOf(element: SvgElement): ReadonlyMap<StyleProperty, string> {
    const { attributes } = element;
    const found = new Map<StyleProperty, string>();
    for (const property of PROPERTIES) {
      const value = attributes.get(property);
      // The attribute `transform` is no presentation attribute in all programs, and is read apart.
      if (value !== undefined && property !== "transform") found.set(property, value.trim());
    }
    const inline = parseDeclarations(attributes.get("style") ?? "");
    const classes = new Set((attributes.get("class") ?? "").split(/[\t\n\f\r ]+/));
    const keys = [
      ...[...classes].map((name) => `.${name}`),
      `#${attributes.get("id") ?? ""}`,
      element.name,
      "*",
    ];
    const rules = keys
      .flatMap((key) => this.#rules.get(key) ?? [])
      .filter((rule) => matches(rule, element, classes))
      .sort((a, b) => a.place - b.place);
    const lists = [...rules.map(({ declarations }) => declarations), inline];
    for (const isImportant of [false, true]) {
      for (const declarations of lists) {
        for (const declaration of declarations) {
          if (declaration.isImportant === isImportant) found.set(declaration.property, declaration.value);
        }
      }
    }
    return found;
  }
}

function matches(rule: Rule, { name, attributes }: SvgElement, classes: ReadonlySet<string>): boolean {
  return (
    (rule.name === null || rule.name === name) &&
    (rule.id === null || rule.id === attributes.get("id")) &&
    rule.classes.every((wanted) => classes.has(wanted))
  );
}

/** In the order in which they count, the strongest last. */
function parseRules(css: string, notes: Notes): readonly Rule[] {
  const text = withoutComments(css);
  const rules: Rule[] = [];
  let at = 0;
  while (at < text.length) {
    const open = text.indexOf("{", at);
    const head = text.slice(at, open < 0 ? text.length : open);
    const statement = head.lastIndexOf(";");
    // Statements such as @import end in a semicolon and may stand before a rule.
    if (/@import/i.test(head.slice(0, statement + 1))) {
      notes.add("external-left-out", WHOLE_FILE, "A stylesheet that a style imports was not fetched.");
    }
    if (open < 0) break;
    const selectors = head.slice(statement + 1).trim();
    const end = endOfBlock(text, open);
    const body = text.slice(open + 1, end);
    at = end + 1;
    if (selectors.startsWith("@")) {
      if (!/^@font-face/i.test(selectors)) leftOut(notes, selectors);
      continue;
    }
    const declarations = parseDeclarations(body);
    if (declarations.length === 0) continue;
    for (const part of selectors.split(",")) {
      const selector = parseSelector(part.trim());
      if (selector === null) {
        leftOut(notes, part.trim());
        continue;
      }
      if (rules.length >= MOST_RULES) {
        throw fatal("over-limit", WHOLE_FILE, {
          wrong: `The file has more than ${MOST_RULES} style rules.`,
          found: `more than ${MOST_RULES}`,
          expected: `at most ${MOST_RULES} style rules`,
          help: "Save it with the styles as attributes of each element.",
        });
      }
      const { name, id, classes } = selector;
      const weight = [id === null ? 0 : 1, classes.length, name === null ? 0 : 1, rules.length] as const;
      rules.push({ ...selector, declarations, weight });
    }
  }
  return rules.sort((a, b) => {
    const place = a.weight.findIndex((part, index) => part !== b.weight[index]);
    return (a.weight[place] ?? 0) - (b.weight[place] ?? 0);
  });
}

function leftOut(notes: Notes, selector: string): void {
  notes.add(
    "style-rule-left-out",
    WHOLE_FILE,
    `A style rule for more than an element's name, class or id was left out: ${selector.slice(0, 40)}.`,
  );
}

function withoutComments(css: string): string {
  const parts: string[] = [];
  let at = 0;
  while (at < css.length) {
    const start = css.indexOf("/*", at);
    parts.push(css.slice(at, start < 0 ? css.length : start));
    if (start < 0) break;
    const end = css.indexOf("*/", start + 2);
    if (end < 0) break;
    at = end + 2;
  }
  return parts.join(" ").replaceAll("<!--", " ").replaceAll("-->", " ");
}

/** Where the block that opens here closes; blocks may lie in it. */
function endOfBlock(text: string, open: number): number {
  const brace = /[{}]/g;
  brace.lastIndex = open;
  let depth = 0;
  for (let found = brace.exec(text); found !== null; found = brace.exec(text)) {
    depth += found[0] === "{" ? 1 : -1;
    if (depth === 0) return found.index;
  }
  return text.length;
}

function parseSelector(text: string): Selector | null {
  const found = SIMPLE_SELECTOR.exec(text)?.groups;
  if (found === undefined || text === "") return null;
  const { name, rest = "" } = found;
  const parts = rest.match(/[.#][^.#]+/g) ?? [];
  const ids = parts.filter((part) => part.startsWith("#")).map((part) => part.slice(1));
  if (ids.length > 1 || parts.length > MOST_CLASSES) return null;
  return {
    name: name === undefined || name === "*" ? null : name,
    id: ids[0] ?? null,
    classes: parts.filter((part) => part.startsWith(".")).map((part) => part.slice(1)),
  };
}

/** The last of each property, and of each that is marked important. */
function parseDeclarations(text: string): readonly Declaration[] {
  const found = new Map<string, Declaration>();
  for (const part of withoutComments(text).split(";")) {
    const colon = part.indexOf(":");
    const property = part.slice(0, Math.max(0, colon)).trim().toLowerCase();
    if (!KNOWN.has(property)) continue;
    const written = part.slice(colon + 1).trim();
    const mark = written.lastIndexOf("!");
    const isImportant =
      mark >= 0 &&
      written
        .slice(mark + 1)
        .trim()
        .toLowerCase() === "important";
    const value = isImportant ? written.slice(0, mark).trim() : written;
    found.set(`${property}${isImportant ? "!" : ""}`, {
      property: property as StyleProperty,
      value,
      isImportant,
    });
  }
  return [...found.values()];
}
