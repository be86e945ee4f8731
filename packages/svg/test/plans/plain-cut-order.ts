import type { CutNode, Rectangle } from "@sheetwright/packing";
import type { Cut, CutOrder, CutPart } from "../../../packing/src/cutting.js";
import type { Plan } from "./build.js";

/**
 * A working order for drawings made by hand: trims first, then every cut of a part before those of its children, each
 * measured from the left or top. It follows the shape of a cut order, not the care of the real one.
 */
export function plainCutOrder({ problem, packing }: Plan, index: number): CutOrder {
  const layout = packing.layouts[index];
  const sheet = problem.sheets.find(({ id }) => id === layout?.sheet);
  if (layout === undefined || sheet === undefined) throw new RangeError(`No layout ${index}.`);
  const kerf = problem.kerf ?? 0;
  const parts: CutPart[] = [];
  const cuts: Cut[] = [];
  let setting = "";
  let settings = 0;

  function part(rectangle: Rectangle, what: CutPart["what"]): number {
    parts.push({ id: parts.length, what, ...rectangle });
    return parts.length - 1;
  }

  function cut(
    from: number,
    edge: Cut["edge"],
    distance: number,
    held: Rectangle,
    off: Rectangle | null,
    purpose: Cut["purpose"],
    whats: readonly [CutPart["what"], CutPart["what"]],
  ): readonly [number, number] {
    const lying = parts[from] as CutPart;
    const upright = edge === "left" || edge === "right";
    const at =
      edge === "left"
        ? lying.x + distance
        : edge === "right"
          ? lying.x + lying.width - distance
          : edge === "top"
            ? lying.y + distance
            : lying.y + lying.height - distance;
    const newSetting = setting !== `${distance}`;
    setting = `${distance}`;
    if (newSetting) settings += 1;
    const heldId = part(held, whats[0]);
    const offId = off === null ? -1 : part(off, whats[1]);
    cuts.push({
      number: cuts.length + 1,
      part: from,
      edge,
      distance,
      held: heldId,
      off: off === null ? null : offId,
      line: upright
        ? { x1: at, y1: lying.y, x2: at, y2: lying.y + lying.height }
        : { x1: lying.x, y1: at, x2: lying.x + lying.width, y2: at },
      purpose,
      newSetting,
      tooNarrow: false,
    });
    return [heldId, offId];
  }

  let whole: Rectangle = { x: 0, y: 0, width: sheet.width, height: sheet.height };
  let current = part(whole, "sheet");
  for (const edge of ["left", "right", "top", "bottom"] as const) {
    const depth = sheet.trim?.[edge] ?? 0;
    if (depth === 0) continue;
    const upright = edge === "left" || edge === "right";
    const first = edge === "left" || edge === "top";
    const { x, y, width, height } = whole;
    const trim = upright
      ? { x: first ? x : x + width - depth, y, width: depth, height }
      : { x, y: first ? y : y + height - depth, width, height: depth };
    whole = upright
      ? { x: first ? x + depth : x, y, width: width - depth, height }
      : { x, y: first ? y + depth : y, width, height: height - depth };
    const far = { left: "right", right: "left", top: "bottom", bottom: "top" } as const;
    const kept = upright ? whole.width : whole.height;
    [current] = cut(current, far[edge], kept, whole, trim, "trim", ["part", "trim"]);
  }

  function whatOf(node: CutNode): CutPart["what"] {
    return node.type === "split" || node.type === "stopped" ? "part" : node.type;
  }

  function walk(node: CutNode, id: number): void {
    if (node.type !== "split") return;
    const children: (readonly [CutNode, number])[] = [];
    let rest = id;
    node.parts.forEach(({ size, node: child }, i) => {
      const lying = parts[rest] as CutPart;
      const x = node.axis === "x";
      const beyond = (x ? lying.width : lying.height) - size - kerf;
      const last = i === node.parts.length - 1;
      if (last && beyond === -kerf) {
        children.push([child, rest]);
        return;
      }
      const held = x
        ? { x: lying.x, y: lying.y, width: size, height: lying.height }
        : { x: lying.x, y: lying.y, width: lying.width, height: size };
      const off =
        beyond <= 0
          ? null
          : x
            ? { x: lying.x + size + kerf, y: lying.y, width: beyond, height: lying.height }
            : { x: lying.x, y: lying.y + size + kerf, width: lying.width, height: beyond };
      const nextIsLast = i === node.parts.length - 2;
      const offWhat = nextIsLast ? whatOf((node.parts[i + 1] as { node: CutNode }).node) : "part";
      const edge = x ? "left" : "top";
      const [heldId, offId] = cut(rest, edge, size, held, off, "cut", [whatOf(child), offWhat]);
      children.push([child, heldId]);
      rest = offId;
    });
    for (const [child, childId] of children) walk(child, childId);
  }

  walk(layout.tree, current);
  return { parts, cuts, settings };
}
