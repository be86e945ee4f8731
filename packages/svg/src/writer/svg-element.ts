import { escapeAttribute, escapeText } from "./escape-xml.js";
import { formatNumber } from "./format-number.js";

/** Attributes in the order they are written; numbers get three decimals, absent values are left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** An element of a drawing as plain data. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly (SvgElement | string)[];
}

// The ASCII part of an XML name without colons: all that SVG and data attributes need.
const NAME = /^[A-Za-z_][A-Za-z0-9_.-]*$/;

/** Makes an element. Throws a TypeError where a name is not a plain ASCII XML name. */
export function element(
  name: string,
  attributes: Attributes = {},
  children: readonly (SvgElement | string)[] = [],
): SvgElement {
  for (const found of [name, ...Object.keys(attributes)]) {
    if (!NAME.test(found)) throw new TypeError(`Expected an ASCII XML name, found ${JSON.stringify(found)}.`);
  }
  return { name, attributes, children };
}

/**
 * Writes an element as an XML document without declaration: one element a line, indented, ending in a line feed. `text`
 * elements and others that hold text stay on one line, so that no white space is added to the text. Same element, same
 * bytes.
 */
export function writeDocument(root: SvgElement): string {
  const lines: string[] = [];
  writeInto(lines, root, "");
  return `${lines.join("\n")}\n`;
}

function writeInto(lines: string[], node: SvgElement, indent: string): void {
  if (node.children.length === 0) {
    lines.push(`${indent}${openTag(node, true)}`);
  } else if (node.name === "text" || node.children.some((child) => typeof child === "string")) {
    lines.push(indent + inline(node));
  } else {
    lines.push(indent + openTag(node, false));
    for (const child of node.children as readonly SvgElement[]) writeInto(lines, child, `${indent}  `);
    lines.push(`${indent}</${node.name}>`);
  }
}

function inline(node: SvgElement): string {
  if (node.children.length === 0) return openTag(node, true);
  const content = node.children.map((child) =>
    typeof child === "string" ? escapeText(child) : inline(child),
  );
  return `${openTag(node, false)}${content.join("")}</${node.name}>`;
}

function openTag(node: SvgElement, closed: boolean): string {
  let tag = `<${node.name}`;
  for (const [name, value] of Object.entries(node.attributes)) {
    if (value === undefined) continue;
    tag += ` ${name}="${typeof value === "number" ? formatNumber(value) : escapeAttribute(value)}"`;
  }
  return `${tag}${closed ? "/>" : ">"}`;
}
