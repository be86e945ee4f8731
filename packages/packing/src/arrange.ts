import { keepsShelfRule, longestCut, stageDepth } from "./arrange/cut-rules.js";
import { enlargeOffcut } from "./arrange/enlarge-offcut.js";
import { largestOffcut, type NormalFormRules, normalForm } from "./arrange/normal-form.js";
import { cutStripsFromWide } from "./arrange/strips-from-wide.js";
import type { CutNode, PieceLeaf, Size, Split, SplitPart, StoppedCuts } from "./model.js";
import { childrenOf } from "./placements.js";

/** What {@link arrange} has to respect; lengths in the caller's unit. */
export interface ArrangeOptions {
  /** Width lost by each cut (default 0). */
  readonly kerf?: number | undefined;
  /** A leftover counts as an offcut when it is at least this large, in either direction (default: any leftover). */
  readonly smallestOffcut?: Size | undefined;
  /** A cut may become as long as this (default, and at least: the longest cut the tree has anyway). */
  readonly longestCut?: number | null | undefined;
  /** The narrowest width the tool can hold between fence and blade (default 0). */
  readonly narrowestHold?: number | undefined;
}

interface Limits {
  readonly stages: number;
  readonly longestCut: number;
  readonly shelf: boolean;
}

/** A split with what stands above it. */
interface Site {
  readonly split: Split;
  readonly part: Size;
  readonly level: number;
  readonly parentAxis: "x" | "y" | undefined;
  /** The whole tree with this split replaced. */
  readonly rebuild: (replacement: CutNode) => CutNode;
}

function sitesBelow(site: Site, kerf: number): Site[] {
  const { split } = site;
  return childrenOf(split, site.part, kerf).flatMap(({ node, width, height }, i) =>
    node.type !== "split"
      ? []
      : {
          split: node,
          part: { width, height },
          level: site.level + 1,
          parentAxis: split.axis,
          rebuild: (replacement) => {
            const parts: SplitPart[] = [...split.parts];
            parts[i] = { size: parts[i]!.size, node: replacement };
            return site.rebuild({ ...split, parts });
          },
        },
  );
}

/** One improvement, the first from the root down; `undefined` where there is none. */
function improve(tree: CutNode, size: Size, rules: NormalFormRules, limits: Limits): CutNode | undefined {
  if (tree.type !== "split") return undefined;
  const ahead: Site[] = [
    { split: tree, part: size, level: 0, parentAxis: undefined, rebuild: (replacement) => replacement },
  ];
  for (let site = ahead.pop(); site !== undefined; site = ahead.pop()) {
    const { part, level, parentAxis, rebuild } = site;
    let whole: CutNode | undefined;
    const better = enlargeOffcut(site.split, part, rules, (replacement) => {
      if (level + stageDepth(replacement, parentAxis) > limits.stages) return false;
      if (longestCut(replacement, part, rules.kerf) > limits.longestCut) return false;
      whole = normalForm(rebuild(replacement), size, rules);
      return !limits.shelf || keepsShelfRule(whole);
    });
    if (better !== undefined) return whole;
    ahead.push(...sitesBelow(site, rules.kerf).reverse());
  }
  return undefined;
}

/** Rounds of the two steps that change more than the order of parts. */
const MOST_ROUNDS = 40;

function requireLength(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`${name} is ${value}; a whole number from 0 is needed`);
  }
}

/**
 * Brings a cut tree into the form that is best to cut and to look at; the pieces and their sizes stay the same.
 *
 * The parts of one level of parallel cuts may stand in any order, so they are sorted: large ones first, equal ones
 * together, the leftover last. ({@link cutOrder} takes parts off either end, so narrow ones always come off while the
 * rest is still wide.) Nested splits of one axis become one level, the leftovers of a level one leftover with the kerf
 * between them regained, and cuts that serve no piece go. Leftovers are named `offcut` or `waste` by their size. Then
 * neighbours change places where that makes the largest offcut of a level larger (common practice, no source), and
 * small grids are cut the other way round where their strips then come off a part that `narrowestHold` can hold.
 *
 * Guarantees: never more stages, never a longer cut than the tree has or `longestCut` allows, a tree
 * that keeps the shelf rule still keeps it, the largest offcut never gets smaller; the same tree in whatever order of
 * its parts gives the same result, and arranging twice changes nothing. The trees in windows and between stopped cuts
 * are arranged each for itself. It improves step by step, so a still larger offcut may exist.
 *
 * @param size The part the tree divides: the sheet inside its trim.
 * @throws RangeError for an option that is no length, or where the parts of a split need more than the part has.
 *
 * @example
 * const mat = { type: "piece", shares: [{ kind: "mat", form: 0, turned: false, count: 1 }] };
 * const sizes = [[2, { type: "waste" }], [5, mat], [5, mat]];
 * const tree = { type: "split", axis: "x", parts: sizes.map(([size, node]) => ({ size, node })) };
 * const arranged = arrange(tree, { width: 12, height: 7 }, { smallestOffcut: { width: 2, height: 2 } });
 * arranged.parts.map(({ size, node }) => [size, node.type]) // => [[5, "piece"], [5, "piece"], [2, "offcut"]]
 */
export function arrange(tree: CutNode, size: Size, options: ArrangeOptions = {}): CutNode {
  const rules: NormalFormRules = {
    kerf: options.kerf ?? 0,
    smallestOffcut: options.smallestOffcut,
    narrowestHold: options.narrowestHold ?? 0,
  };
  requireLength("kerf", rules.kerf);
  requireLength("narrowestHold", rules.narrowestHold);
  requireLength("longestCut", options.longestCut ?? 0);

  const inside = (node: PieceLeaf | StoppedCuts, part: Size): CutNode => {
    if (node.type === "piece") {
      const { window } = node;
      if (window === undefined) return node;
      return { ...node, window: { ...window, tree: arrange(window.tree, window, options) } };
    }
    const [top, right, bottom, left, centre] = childrenOf(node, part, rules.kerf).map((block) =>
      arrange(block.node, block, options),
    );
    return { ...node, top: top!, right: right!, bottom: bottom!, left: left!, centre: centre! };
  };
  let arranged = normalForm(tree, size, rules, inside);
  const limits: Limits = {
    stages: stageDepth(arranged),
    longestCut: Math.max(options.longestCut ?? 0, longestCut(arranged, size, rules.kerf)),
    shelf: keepsShelfRule(arranged),
  };
  // Either step may open the way for the other; a few rounds are enough, and the limit ends what might go in circles.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    for (
      let next = improve(arranged, size, rules, limits);
      next !== undefined;
      next = improve(arranged, size, rules, limits)
    ) {
      arranged = next;
    }
    const strips = cutStripsFromWide(arranged, size, rules);
    if (strips === undefined) break;
    const wider = normalForm(strips, size, rules);
    if (largestOffcut(wider, size, rules) < largestOffcut(arranged, size, rules)) break;
    if (limits.shelf && !keepsShelfRule(wider)) break;
    arranged = wider;
  }
  return arranged;
}
