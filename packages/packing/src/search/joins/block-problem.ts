import type { CutNode, Form, SheetTurns, Turns } from "../../model.js";
import { type CompiledProblem, type CompiledSheet, compileProblem } from "../compiled-problem.js";
import { type Draft, draftOf } from "../draft.js";
import type { Branch } from "../trees/branch.js";
import type { LayTable } from "../trees/lay-table.js";
import type { Block } from "./block.js";
import { branchOfBlock, layoutsOfBranches, levelOf } from "./branch-of-block.js";

/** A problem whose pieces are blocks, and the way back. */
export interface BlockProblem {
  readonly problem: CompiledProblem;
  /** The plan of the pieces that a plan of the blocks stands for; undefined where it lacks a block. */
  readonly expand: (draft: Draft) => Draft | undefined;
}

/** States a problem with blocks in place of its pieces; undefined where some block may lie on no sheet. */
export function blockProblem(
  problem: CompiledProblem,
  table: LayTable,
  blocks: readonly Block[],
): BlockProblem | undefined {
  const alike = new Map<string, { readonly form: Form; readonly members: Block[] }>();
  for (const block of blocks) {
    const form = formOf(problem, table, block);
    if (form.sheets?.length === 0) return undefined;
    const key = JSON.stringify(form);
    const known = alike.get(key);
    if (known) known.members.push(block);
    else alike.set(key, { form, members: [block] });
  }
  const kinds = [...alike.values()];
  const own = compileProblem({
    ...problem.source,
    kinds: kinds.map(({ form, members }, i) => ({ id: String(i), quantity: members.length, forms: [form] })),
  });
  const expand = (draft: Draft): Draft | undefined => {
    if (draft.lacking > 0) return undefined;
    const left = kinds.map(({ members }) => [...members]);
    const branchOf = (node: CutNode, sheet: CompiledSheet): Branch | undefined => {
      if (node.type === "split") {
        const parts = node.parts.flatMap((part) => branchOf(part.node, sheet) ?? []);
        return parts.length > 1 ? levelOf(node.axis, parts) : parts[0];
      }
      if (node.type !== "piece") return undefined;
      const share = node.shares[0];
      const block = left[Number(share?.kind)]?.pop();
      return block && branchOfBlock(table, sheet, block, share?.turned === true);
    };
    const sheets = draft.layouts.flatMap(({ sheet, run, tree }) =>
      Array.from({ length: run }, () => ({ sheet, branch: branchOf(tree(), sheet) })),
    );
    const layouts = layoutsOfBranches(problem, table, sheets);
    return layouts && draftOf(problem, layouts);
  };
  return { problem: own, expand };
}

/** The sheets that a block may be cut from, and how it may be turned there. */
function formOf({ sheets }: CompiledProblem, table: LayTable, block: Block): Form {
  const { width, height, mayTurn } = block;
  const uses = sheets.flatMap((sheet): SheetTurns[] => {
    const upright = branchOfBlock(table, sheet, block, false) !== undefined;
    const turned = mayTurn && branchOfBlock(table, sheet, block, true) !== undefined;
    if (!upright && !turned) return [];
    const turns: Turns = upright && turned ? "both" : upright ? "upright" : "turned";
    return [{ sheet: sheet.id, turns }];
  });
  return { width, height, sheets: uses };
}
