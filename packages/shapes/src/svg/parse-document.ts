/**
 * Reads a file into its elements by the strict XML reader saxes. Nothing is resolved, fetched or run: entities that XML does
 * not define itself are refused, scripts and stylesheets of other files are left out.
 */

import { SaxesParser } from "saxes";
import type { Notes } from "./outline-note.js";
import { fatal, type OutlinePlace, WHOLE_FILE } from "./outline-read-error.js";
import { quoted } from "./quoted.js";
import { ReadBudget } from "./read-budget.js";
import type { ReadLimits } from "./read-options.js";
import type { SvgElement } from "./svg-element.js";

const SVG_NAMESPACE = "http://www.w3.org/2000/svg";
const XLINK_NAMESPACE = "http://www.w3.org/1999/xlink";

/** Of one element. */
const MOST_ATTRIBUTES = 500;

/**
 * What a file holds.
 *
 * @internal
 */
export interface SvgDocument {
  readonly root: SvgElement;
  /** The first element of each id. */
  readonly ids: ReadonlyMap<string, SvgElement>;
  /** The text of all `style` elements, in order. */
  readonly style: string;
}

/** An element whose end has not come. */
interface OpenElement extends SvgElement {
  readonly attributes: Map<string, string>;
}

/** Throws an OutlineReadError where the file is not well-formed, no SVG, or over a limit. @internal */
export function parseDocument(text: string, limits: ReadLimits, notes: Notes): SvgDocument {
  if (text.length > limits.characters) {
    throw fatal("over-limit", WHOLE_FILE, {
      wrong: `The file has ${text.length} characters; at most ${limits.characters} are read.`,
      found: `${text.length} characters`,
      expected: `at most ${limits.characters}`,
      help: "Take out pictures and parts that are not needed, and simplify the paths.",
    });
  }
  const parser = new SaxesParser({ xmlns: true });
  // Only what XML itself defines; the table of the parser would know `&constructor;`.
  parser.ENTITIES = Object.assign(Object.create(null) as Record<string, string>, {
    amp: "&",
    gt: ">",
    lt: "<",
    quot: '"',
    apos: "'",
  });
  const here = (element = ""): OutlinePlace => ({ line: parser.line, element });
  const open: (OpenElement | null)[] = [];
  const ids = new Map<string, SvgElement>();
  const budget = new ReadBudget(limits);
  let root: SvgElement | null = null;
  let style = "";

  parser.on("error", (error) => {
    const said = error.message.replace(/^\d+:\d+: /, "").replace(/\.$/, "");
    throw fatal("not-well-formed", here(), {
      wrong: `The file is not well-formed XML: ${clipped(said)}.`,
      found: clipped(said),
      expected: "well-formed XML",
      help: "Save it again as SVG from the program that made it.",
    });
  });
  parser.on("doctype", (doctype) => {
    if (!doctype.includes("[")) return;
    throw fatal("doctype", here(), {
      wrong: "The document type declares entities or other things of its own, which are never taken in.",
      found: quoted(doctype.trim()),
      expected: "no declarations",
      help: "Save the file again as plain SVG.",
    });
  });
  parser.on("processinginstruction", ({ target }) => {
    if (target === "xml-stylesheet") {
      notes.add("external-left-out", here(), "A stylesheet in another file was not fetched.");
    }
  });
  let attributeCount = 0;
  let startLine = 1;
  parser.on("opentagstart", () => {
    attributeCount = 0;
    // One character after the name has been read, which may be the end of its line.
    startLine = parser.columnIndex === 0 ? parser.line - 1 : parser.line;
  });
  parser.on("attribute", () => {
    attributeCount += 1;
    if (attributeCount <= MOST_ATTRIBUTES) return;
    throw fatal("over-limit", here(), {
      wrong: `An element has more than ${MOST_ATTRIBUTES} attributes.`,
      found: `more than ${MOST_ATTRIBUTES} attributes`,
      expected: `at most ${MOST_ATTRIBUTES}`,
      help: "Save the file again as plain SVG.",
    });
  });
  parser.on("opentag", (tag) => {
    budget.takeElement(here());
    budget.checkDepth(open.length + 1, here());
    const parent = open[open.length - 1];
    if (open.length === 0 && (tag.local !== "svg" || tag.uri !== SVG_NAMESPACE)) {
      const isWithoutNamespace = tag.local === "svg" && tag.uri === "";
      throw fatal("not-svg", here(), {
        wrong: isWithoutNamespace
          ? "The element <svg> does not say that it is SVG."
          : `The file is XML, but no SVG: it starts with <${clipped(tag.name)}>.`,
        found: quoted(tag.name),
        expected: `<svg xmlns="${SVG_NAMESPACE}">`,
        help: isWithoutNamespace
          ? `Write <svg xmlns="${SVG_NAMESPACE}">.`
          : "Save or export the drawing as SVG.",
      });
    }
    if (tag.uri !== SVG_NAMESPACE || parent === null) {
      open.push(null);
      return;
    }
    const attributes = new Map<string, string>();
    for (const { uri, local, value } of Object.values(tag.attributes)) {
      if (uri === "") attributes.set(local, value);
      if (uri === "" && /^on[a-z]/i.test(local)) {
        notes.add(
          "script-left-out",
          here(tag.local),
          "What it would do when clicked or loaded was left out; nothing is run.",
        );
      }
      if (uri === XLINK_NAMESPACE && local === "href" && !attributes.has("href")) {
        attributes.set("href", value);
      }
    }
    const element: OpenElement = { name: tag.local, attributes, children: [], line: startLine };
    if (tag.local === "script") {
      notes.add("script-left-out", here("script"), "A script was left out; nothing is run.");
    }
    const id = attributes.get("id");
    if (id !== undefined && !ids.has(id)) ids.set(id, element);
    if (parent === undefined) root = element;
    else parent.children.push(element);
    open.push(element);
  });
  parser.on("closetag", () => {
    open.pop();
  });
  const takeText = (part: string): void => {
    if (open[open.length - 1]?.name === "style") style += part;
  };
  parser.on("text", takeText);
  parser.on("cdata", takeText);
  parser.write(text).close();
  // Without a root the parser has thrown.
  return { root: root as unknown as SvgElement, ids, style };
}

function clipped(text: string): string {
  return quoted(text).slice(1, -1);
}
