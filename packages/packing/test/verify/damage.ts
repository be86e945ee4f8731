/** Ways into a plan, to damage it. */
import fc from "fast-check";
import { expect } from "vitest";
import type { CutNode, Packing, PieceLeaf, Problem, Split, StoppedCuts } from "../../src/model.js";
import type { Finding, FindingCode } from "../../src/verify/finding.js";
import { verify } from "../../src/verify/verify.js";
import { usableSize } from "../identity-bound.js";
import type { ValidPlan, validPlans } from "../valid-plan.js";

/** The same data, free to be changed. */
export type Mutable<T> = T extends readonly (infer Item)[]
  ? Mutable<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Mutable<T[Key]> }
    : T;

export interface DamagedPlan {
  readonly problem: Mutable<Problem>;
  readonly packing: Mutable<Packing>;
}

/** Many properties copy the same plans, and text is quicker to copy from. */
const textOf = new WeakMap<ValidPlan, string>();

/** A copy to damage. */
export function copyOf(plan: ValidPlan): DamagedPlan {
  const text = textOf.get(plan) ?? JSON.stringify(plan);
  textOf.set(plan, text);
  return JSON.parse(text) as DamagedPlan;
}

/** A node with its part, its place, and what holds it. */
export interface Site<Node = Mutable<CutNode>> {
  readonly node: Node;
  readonly path: string;
  readonly layout: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly isInWindow: boolean;
  /** The split above, if any, and the index in it. */
  readonly above: { readonly split: Site<Mutable<Split>>; readonly index: number } | null;
  /** Puts another node in its place. */
  readonly replace: (node: Mutable<CutNode>) => void;
}

/** Every node of a plan in reading order, with coordinates from the top left corner of the usable part. */
export function sitesOf({ problem, packing }: DamagedPlan): readonly Site[] {
  const sites: Site[] = [];
  const kerf = problem.kerf ?? 0;
  for (const [layout, entry] of packing.layouts.entries()) {
    const sheet = problem.sheets.find((sheet) => sheet.id === entry.sheet);
    if (sheet === undefined) continue;
    visit({
      node: entry.tree,
      path: `layouts[${layout}].tree`,
      layout,
      x: 0,
      y: 0,
      ...usableSize(sheet),
      isInWindow: false,
      above: null,
      replace: (node) => {
        entry.tree = node;
      },
    });
  }
  return sites;

  function visit(site: Site): void {
    sites.push(site);
    const { node, path, layout, x, y, width, height, isInWindow } = site;
    if (node.type === "split") {
      const split = site as Site<Mutable<Split>>;
      const isAlongX = node.axis === "x";
      let offset = 0;
      for (const [index, part] of node.parts.entries()) {
        visit({
          node: part.node,
          path: `${path}.parts[${index}].node`,
          layout,
          x: isAlongX ? x + offset : x,
          y: isAlongX ? y : y + offset,
          width: isAlongX ? part.size : width,
          height: isAlongX ? height : part.size,
          isInWindow,
          above: { split, index },
          replace: (child) => {
            part.node = child;
          },
        });
        offset += part.size + kerf;
      }
    } else if (node.type === "piece" && node.window !== undefined) {
      const { window } = node;
      visit({
        node: window.tree,
        path: `${path}.window.tree`,
        layout,
        x: x + window.x,
        y: y + window.y,
        width: window.width,
        height: window.height,
        isInWindow: true,
        above: null,
        replace: (child) => {
          window.tree = child;
        },
      });
    } else if (node.type === "stopped") {
      visitBlocks(site, node);
    }
  }

  function visitBlocks(site: Site, node: Mutable<StoppedCuts>): void {
    const { x1, x2, y1, y2 } = node;
    const { width: w, height: h } = site;
    const k = kerf;
    const places =
      node.hand === "clockwise"
        ? {
            top: [0, 0, x2, y1],
            right: [x2 + k, 0, w, y2],
            bottom: [x1 + k, y2 + k, w, h],
            left: [0, y1 + k, x1, h],
          }
        : {
            top: [x1 + k, 0, w, y1],
            right: [x2 + k, y1 + k, w, h],
            bottom: [0, y2 + k, x2, h],
            left: [0, 0, x1, y2],
          };
    const all = { ...places, centre: [x1 + k, y1 + k, x2, y2] };
    for (const name of ["top", "right", "bottom", "left", "centre"] as const) {
      const [left = 0, top = 0, right = 0, bottom = 0] = all[name];
      visit({
        ...site,
        node: node[name],
        path: `${site.path}.${name}`,
        x: site.x + left,
        y: site.y + top,
        width: right - left,
        height: bottom - top,
        above: null,
        replace: (child) => {
          node[name] = child;
        },
      });
    }
  }
}

export const isPiece = (site: Site): site is Site<Mutable<PieceLeaf>> => site.node.type === "piece";
export const isSplit = (site: Site): site is Site<Mutable<Split>> => site.node.type === "split";
export const isStopped = (site: Site): site is Site<Mutable<StoppedCuts>> => site.node.type === "stopped";
/** The form that a share names. */
export function formOf(plan: DamagedPlan, share: { readonly kind: string; readonly form: number }) {
  const form = plan.problem.kinds.find((kind) => kind.id === share.kind)?.forms[share.form];
  if (form === undefined) throw new RangeError("No such form.");
  return form;
}

/** What verify finds in a damaged plan. */
export function findingsOf(plan: DamagedPlan): readonly Finding[] {
  return verify(plan.problem as Problem, plan.packing as Packing);
}

/** Expects one finding of a code at a place; others may follow from it. */
export function expectFinding(plan: DamagedPlan, code: FindingCode, path: string): void {
  const found = findingsOf(plan).map((finding) => `${finding.code} at ${finding.path}`);
  expect(found).toContain(`${code} at ${path}`);
}

/** Corrects what the packing says of itself, so that only the damage is left to be found. */
export function correctTotals(plan: DamagedPlan, counts: ReadonlyMap<string, number>): void {
  const { problem, packing } = plan;
  for (const entry of packing.placed) entry.count = counts.get(entry.kind) ?? 0;
  packing.value = String(
    problem.kinds.reduce((sum, kind) => {
      const form = kind.forms[0];
      const worth = kind.value ?? (form === undefined ? 0 : form.width * form.height);
      return sum + BigInt(worth) * BigInt(counts.get(kind.id) ?? 0);
    }, 0n),
  );
}

/** The copies placed, by kind, as the packing states them. */
export function statedCounts(plan: DamagedPlan): Map<string, number> {
  return new Map(plan.packing.placed.map(({ kind, count }) => [kind, count]));
}

/** Damages plans at a place that is chosen among those where the damage can be done. */
export function expectRefusal<Place>(
  plans: ReturnType<typeof validPlans>,
  placesIn: (plan: DamagedPlan) => readonly Place[],
  damage: (plan: DamagedPlan, place: Place, choice: number) => void,
): void {
  fc.assert(
    fc.property(plans, fc.nat(0xffff), fc.nat(0xffff), (valid, which, choice) => {
      const plan = copyOf(valid);
      const places = placesIn(plan);
      fc.pre(places.length > 0);
      damage(plan, places[which % places.length] as Place, choice);
    }),
  );
}

export const piecesOf = (plan: DamagedPlan) => sitesOf(plan).filter(isPiece);
export const splitsOf = (plan: DamagedPlan) => sitesOf(plan).filter(isSplit);
export const layoutsOf = (plan: DamagedPlan) =>
  plan.packing.layouts.map((layout, index) => ({ layout, index }));

/** Makes a piece larger than its part by lengthening its form, as the piece lies. */
export function lengthenForm(plan: DamagedPlan, site: Site, axis: "x" | "y"): void {
  if (site.node.type !== "piece") throw new TypeError("Not a piece.");
  for (const share of site.node.shares) {
    const form = formOf(plan, share);
    if ((axis === "x") !== share.turned) form.width += 1;
    else form.height += 1;
  }
}

/** Two pieces side by side in a split. */
export const neighbours = (plan: DamagedPlan) =>
  splitsOf(plan).flatMap((site) =>
    site.node.parts.flatMap((part, index) => {
      const next = site.node.parts[index + 1];
      return part.node.type === "piece" && next?.node.type === "piece" ? [{ site, index }] : [];
    }),
  );

/** A column of the example. */
export const exampleSplit = (plan: DamagedPlan, index: number) => {
  const root = plan.packing.layouts[0]?.tree;
  const column = root?.type === "split" ? root.parts[index]?.node : undefined;
  if (column?.type !== "split") throw new TypeError("The example has changed.");
  return column;
};

/** What verify finds, as short text. */
export const codesOf = (plan: DamagedPlan) => findingsOf(plan).map(({ code, path }) => `${code} at ${path}`);
