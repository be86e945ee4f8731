/** Checks a place for pieces: the shares of a run, their forms and turns, and the window in them. */

import type { Rectangle, Size } from "../model.js";
import type { NodeFields } from "./check-tree.js";
import { shown } from "./finding.js";
import type { FormFacts, KindFacts } from "./read-problem.js";
import { readFields, readFlag, readList, readText, readWhole } from "./read-value.js";
import type { Part, Walk } from "./walk.js";

/** A share of a place, as read, with the form that it names. */
interface Host {
  readonly kind: KindFacts;
  readonly form: FormFacts;
  readonly turned: boolean;
  readonly count: bigint;
}

/** Checks a piece leaf, counts its copies, and puts the tree of its window on the walk's waiting list. */
export function checkPiece(walk: Walk, part: Part, node: NodeFields): void {
  const { report, tally } = walk;
  const { path, ground } = part;
  if (part.lastTrim !== null) part.lastTrim.pieces += 1;
  const items = readList(report, node.shares, `${path}.shares`);
  if (items?.length === 0) {
    const message = `${path} is a place for a piece without shares. Name a kind, or make it an offcut or waste.`;
    report("no-shares", `${path}.shares`, message, 0);
  }
  const hosts: Host[] = [];
  for (const [index, item] of (items ?? []).entries()) {
    const host = readShare(walk, item, `${path}.shares[${index}]`);
    if (host === undefined) continue;
    hosts.push(host);
    checkShare(walk, part, host, `${path}.shares[${index}]`);
    tally.placed.set(host.kind.id, (tally.placed.get(host.kind.id) ?? 0n) + host.count);
    if (host.kind.together !== null) {
      const layouts = tally.togetherIn.get(host.kind.together);
      if (layouts === undefined) tally.togetherIn.set(host.kind.together, new Set([walk.layout]));
      else layouts.add(walk.layout);
    }
  }
  if (items === undefined || hosts.length < items.length) tally.isWhole = false;
  const copies = hosts.reduce((sum, host) => sum + host.count, 0n);
  if (ground.run !== null && copies > ground.run) {
    const message =
      `The shares of ${path} count ${copies}, but the ${ground.name} they are cut from is there ${ground.run} times. ` +
      "Cut more sheets like this, or share fewer copies.";
    report("shares-exceed-run", `${path}.shares`, message, copies, ground.run);
  }
  if (hosts.length > 0) {
    const sizes = hosts.map(lyingSize);
    ground.pieces.push({
      path,
      x: part.x,
      y: part.y,
      width: Math.max(...sizes.map((size) => size.width)),
      height: Math.max(...sizes.map((size) => size.height)),
    });
  }
  if (node.window !== undefined) checkWindow(walk, part, node.window, hosts, copies);
}

function readShare(walk: Walk, value: unknown, path: string): Host | undefined {
  const { report, facts } = walk;
  const fields = readFields<"kind" | "form" | "turned" | "count">(report, value, path);
  if (fields === undefined) return undefined;
  const id = readText(report, fields.kind, `${path}.kind`);
  const index = readWhole(report, fields.form, `${path}.form`, 0);
  const turned = readFlag(report, fields.turned, `${path}.turned`);
  const count = readWhole(report, fields.count, `${path}.count`, 1);
  if (id === undefined || index === undefined || turned === undefined || count === undefined)
    return undefined;
  const kind = facts.kinds.get(id);
  if (kind === undefined) {
    const message = `${path}.kind is ${shown(id)}, but the problem has no such kind. Name one of the problem's kinds.`;
    report("unknown-kind", `${path}.kind`, message, id);
    return undefined;
  }
  const form = kind.forms[index];
  if (form === undefined) {
    const last = kind.forms.length - 1;
    const message = `${path}.form is ${index}, but the forms of kind ${shown(id)} end with ${last}. Count them from 0.`;
    report("unknown-form", `${path}.form`, message, index, last);
    return undefined;
  }
  return { kind, form, turned, count: BigInt(count) };
}

function checkShare(walk: Walk, part: Part, host: Host, path: string): void {
  const { report, sheet } = walk;
  const size = lyingSize(host);
  const name = shown(host.kind.id);
  if (size.width !== part.width || size.height !== part.height) {
    const found = `${part.width} x ${part.height}`;
    const expected = `${size.width} x ${size.height}`;
    const way = host.turned ? "turned" : "upright";
    const message =
      `The part of ${path} is ${found}, but kind ${name} lying ${way} is ${expected}. ` +
      "Cut the part to the size of the piece.";
    report("piece-size", path, message, found, expected);
  }
  const turns = host.form.turnsOn(sheet.id);
  if (turns === null) {
    const message =
      `${path} cuts kind ${name} from sheet ${shown(sheet.id)}, but its form may not be cut from that. ` +
      "Use a sheet that the form lists.";
    report("sheet-not-allowed", path, message, sheet.id);
  } else if (turns !== "both" && turns !== (host.turned ? "turned" : "upright")) {
    const message =
      `${path} has kind ${name} ${host.turned ? "turned" : "upright"}, but on sheet ${shown(sheet.id)} its form may ` +
      `only lie ${turns}. Lay it the other way.`;
    report("turn-not-allowed", `${path}.turned`, message, host.turned, turns === "turned");
  }
}

function lyingSize({ form, turned }: Host): Size {
  return turned ? { width: form.height, height: form.width } : { width: form.width, height: form.height };
}

/** A window is there on as many sheets as its place yields pieces. */
function checkWindow(walk: Walk, part: Part, value: unknown, hosts: readonly Host[], copies: bigint): void {
  const { report, tally } = walk;
  const path = `${part.path}.window`;
  const fields = readFields<"x" | "y" | "width" | "height" | "tool" | "tree">(report, value, path);
  const x = fields && readWhole(report, fields.x, `${path}.x`, 0);
  const y = fields && readWhole(report, fields.y, `${path}.y`, 0);
  const width = fields && readWhole(report, fields.width, `${path}.width`, 1);
  const height = fields && readWhole(report, fields.height, `${path}.height`, 1);
  const tool = fields && readText(report, fields.tool, `${path}.tool`);
  if (
    fields === undefined ||
    x === undefined ||
    y === undefined ||
    width === undefined ||
    height === undefined ||
    tool === undefined
  ) {
    tally.isWhole = false;
    return;
  }
  const opening = { x, y, width, height };
  for (const host of hosts) checkOpening(walk, path, opening, tool, host);
  const bounds = { x: part.x + x, y: part.y + y, width, height };
  const run = part.ground.run === null || hosts.length === 0 ? null : copies;
  const ground = { bounds, name: "window" as const, run, pieces: [] };
  walk.grounds.push(ground);
  const tree = { node: fields.tree, path: `${path}.tree`, ...bounds, ground };
  walk.waiting.push({ ...tree, axis: null, level: 0, lastTrim: null });
}

function checkOpening(walk: Walk, path: string, opening: Rectangle, tool: string, host: Host): void {
  const name = shown(host.kind.id);
  const hidden = lyingHidden(host);
  const found = `${opening.width} x ${opening.height} at ${opening.x}, ${opening.y}`;
  if (hidden === null) {
    const message = `${path} opens kind ${name}, whose form has no hidden part. Leave the piece whole.`;
    walk.report("window-not-hidden", path, message, found);
    return;
  }
  const isInside =
    opening.x >= hidden.x &&
    opening.y >= hidden.y &&
    opening.x + opening.width <= hidden.x + hidden.width &&
    opening.y + opening.height <= hidden.y + hidden.height;
  if (!isInside) {
    const expected = `${hidden.width} x ${hidden.height} at ${hidden.x}, ${hidden.y}`;
    const message =
      `${path} opens ${found} in kind ${name}, but as the piece lies its hidden part is ${expected}. ` +
      "Keep the window within that.";
    walk.report("window-not-hidden", path, message, found, expected);
  }
  const wanted = host.form.hidden?.tool;
  if (tool !== wanted) {
    const message = `${path} is opened by ${shown(tool)}, but kind ${name} is opened by ${shown(wanted)}. Use that tool.`;
    walk.report("window-tool", `${path}.tool`, message, tool, wanted);
  }
}

/** A quarter turn is clockwise: the point (x, y) of an upright piece of height h comes to (h - y, x). */
function lyingHidden({ form, turned }: Host): Rectangle | null {
  const { hidden } = form;
  if (hidden === null || !turned) return hidden;
  return {
    x: form.height - (hidden.y + hidden.height),
    y: hidden.x,
    width: hidden.height,
    height: hidden.width,
  };
}
