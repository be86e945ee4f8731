import type { OutlinePlace } from "./outline-read-error.js";
import { printable } from "./quoted.js";

/**
 * An element of the SVG namespace; all others are left out with what is in them.
 *
 * @internal
 */
export interface SvgElement {
  readonly name: string;
  /** Those without a namespace; `href` is also what `xlink:href` says. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: SvgElement[];
  /** The line, from 1, at which its tag starts. */
  readonly line: number;
}

/** @internal */
export function placeOf({ name, attributes, line }: SvgElement): OutlinePlace {
  const id = attributes.get("id");
  return { line, element: id === undefined ? name : `${name}#${printable(id)}` };
}
