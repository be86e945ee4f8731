import { type SaxesAttributeNS, SaxesParser } from "saxes";
import { type INode, parseSync } from "svgson";
import { expect } from "vitest";

/** Reads strictly; throws where the text is no well-formed XML. */
export function read(svg: string): INode {
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ attributes }) => {
    for (const { value } of Object.values<SaxesAttributeNS>(attributes)) {
      expect(value).not.toMatch(/NaN|Infinity|undefined|^[-.\d]+e|\.\d{4}/);
    }
  });
  parser.write(svg).close();
  return parseSync(svg);
}

/** A node and all below it that have a name. */
export function all(node: INode, name: string): readonly INode[] {
  return [...(node.name === name ? [node] : []), ...node.children.flatMap((child) => all(child, name))];
}

/** The text right within a node. */
export function textOf(node: INode | undefined): string {
  return node?.children.map(({ value }) => value).join("") ?? "";
}

/** An attribute as a number. */
export const number = (node: INode, name: string): number => Number(node.attributes[name]);
