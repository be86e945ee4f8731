import { SaxesParser } from "saxes";
import { type INode, parseSync } from "svgson";

/** An element as read back: text joined, children in order. */
export interface ReadElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly ReadElement[];
  readonly text: string;
}

/** Parses strictly: anything that is not well-formed XML throws. */
export function readStrictly(xml: string): ReadElement {
  interface Open {
    readonly name: string;
    readonly attributes: Record<string, string>;
    readonly children: Open[];
    text: string;
  }
  const parser = new SaxesParser();
  const stack: Open[] = [];
  let root: Open | undefined;
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", (tag) => {
    const open: Open = {
      name: tag.name,
      attributes: Object.fromEntries(
        Object.entries(tag.attributes).map(([name, value]) => [name, String(value)]),
      ),
      children: [],
      text: "",
    };
    stack.at(-1)?.children.push(open);
    root ??= open;
    stack.push(open);
  });
  parser.on("text", (text) => {
    const open = stack.at(-1);
    if (open !== undefined) open.text += text;
  });
  parser.on("closetag", () => stack.pop());
  parser.write(xml).close();
  if (root === undefined) throw new Error("The document has no element.");
  return root;
}

/** Parses with svgson, whose parser leaves entities as they are, after the strict check that it lacks. */
export function readWithSvgson(xml: string): INode {
  readStrictly(xml);
  return parseSync(xml, { transformNode: decoded });
}

function decoded(node: INode): INode {
  return {
    ...node,
    value: decodeEntities(node.value),
    attributes: Object.fromEntries(
      Object.entries(node.attributes).map(([name, value]) => [name, decodeEntities(value)]),
    ),
    children: node.children.map(decoded),
  };
}

const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function decodeEntities(text: string): string {
  return text.replace(/&(#x?[0-9a-fA-F]+|\w+);/g, (whole, entity: string) => {
    if (!entity.startsWith("#")) return NAMED[entity] ?? whole;
    const code = entity.startsWith("#x")
      ? Number.parseInt(entity.slice(2), 16)
      : Number.parseInt(entity.slice(1), 10);
    return String.fromCodePoint(code);
  });
}

/** The text of a node that svgson read. */
export function textOf(node: INode): string {
  return node.type === "text" ? node.value : node.children.map(textOf).join("");
}

/** All elements of a tree in document order, the root first. */
export function everyElement(root: ReadElement): readonly ReadElement[] {
  return [root, ...root.children.flatMap(everyElement)];
}

/** An attribute as text, or the empty text. */
export function attributeOf(element: Pick<ReadElement, "attributes">, name: string): string {
  return element.attributes[name] ?? "";
}

/** An attribute as a number, NaN where it is none. */
export function numberOf(element: Pick<ReadElement, "attributes">, name: string): number {
  const text = element.attributes[name];
  return text === undefined ? Number.NaN : Number(text);
}

/** The element with an id. */
export function byId(root: ReadElement, id: string): ReadElement {
  const found = everyElement(root).filter((element) => attributeOf(element, "id") === id);
  if (found.length !== 1) throw new Error(`${found.length} elements have the id ${id}.`);
  return found[0] as ReadElement;
}
