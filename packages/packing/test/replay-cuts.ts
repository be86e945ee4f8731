/**
 * Makes the cuts of an order one by one on a sheet of paper that exists only here: every rectangle is worked out from
 * the part, the edge and the distance alone, and compared with what the order says.
 */
import type { Cut, CutOrder, CutPart } from "../src/cutting.js";
import type { Rectangle } from "../src/model.js";

function box({ x, y, width, height }: Rectangle): string {
  return `${x} ${y} ${width} ${height}`;
}

function expectedRectangles(part: Rectangle, { edge, distance }: Cut, kerf: number) {
  const right = part.x + part.width;
  const bottom = part.y + part.height;
  switch (edge) {
    case "left":
      return {
        held: { ...part, width: distance },
        off: { ...part, x: part.x + distance + kerf, width: part.width - distance - kerf },
        line: { x1: part.x + distance, y1: part.y, x2: part.x + distance, y2: bottom },
        kerfTakes: part.width - distance,
      };
    case "right":
      return {
        held: { ...part, x: right - distance, width: distance },
        off: { ...part, width: part.width - distance - kerf },
        line: { x1: right - distance, y1: part.y, x2: right - distance, y2: bottom },
        kerfTakes: part.width - distance,
      };
    case "top":
      return {
        held: { ...part, height: distance },
        off: { ...part, y: part.y + distance + kerf, height: part.height - distance - kerf },
        line: { x1: part.x, y1: part.y + distance, x2: right, y2: part.y + distance },
        kerfTakes: part.height - distance,
      };
    case "bottom":
      return {
        held: { ...part, y: bottom - distance, height: distance },
        off: { ...part, height: part.height - distance - kerf },
        line: { x1: part.x, y1: bottom - distance, x2: right, y2: bottom - distance },
        kerfTakes: part.height - distance,
      };
  }
}

export interface Replay {
  /** Parts that no cut was made on, in the order of their numbers. */
  readonly left: readonly CutPart[];
  readonly settings: number;
  readonly quarterTurns: number;
  readonly narrowHolds: number;
  /** What does not agree with the order; empty when all is right. */
  readonly faults: readonly string[];
}

/** Replays an order on a sheet of this size. */
export function replayCuts(
  sheet: { readonly width: number; readonly height: number },
  order: CutOrder,
  kerf: number,
  narrowestHold: number,
): Replay {
  const faults: string[] = [];
  const there = new Map<number, Rectangle>([[0, { x: 0, y: 0, width: sheet.width, height: sheet.height }]]);
  let fence: number | undefined;
  let blade = "";
  let settings = 0;
  let quarterTurns = 0;
  let narrowHolds = 0;
  const check = (holds: boolean, cut: Cut, what: string): void => {
    if (!holds) faults.push(`cut ${cut.number}: ${what}`);
  };
  for (const [i, cut] of order.cuts.entries()) {
    check(cut.number === i + 1, cut, "number");
    const part = there.get(cut.part);
    if (part === undefined) {
      faults.push(`cut ${cut.number}: part ${cut.part} is not there`);
      break;
    }
    there.delete(cut.part);
    const { held, off, line, kerfTakes } = expectedRectangles(part, cut, kerf);
    check(kerfTakes > 0, cut, "nothing to cut off");
    check(box(order.parts[cut.held]!) === box(held), cut, "held part");
    there.set(cut.held, held);
    if (cut.off === null) check(kerfTakes <= kerf, cut, "the kerf does not take all that comes off");
    else {
      check(box(order.parts[cut.off]!) === box(off) && kerfTakes > kerf, cut, "part that comes off");
      there.set(cut.off, off);
    }
    check(JSON.stringify(cut.line) === JSON.stringify(line), cut, "line");
    const direction = cut.edge === "left" || cut.edge === "right" ? "x" : "y";
    if (blade !== "" && direction !== blade) quarterTurns += 1;
    blade = direction;
    check(cut.newSetting === (cut.distance !== fence), cut, "new setting");
    if (cut.distance !== fence) settings += 1;
    fence = cut.distance;
    check(cut.tooNarrow === cut.distance < narrowestHold, cut, "too narrow");
    if (cut.distance < narrowestHold) narrowHolds += 1;
  }
  if (settings !== order.settings) faults.push(`settings: ${order.settings}, and it takes ${settings}`);
  for (const [i, part] of order.parts.entries())
    if (part.id !== i) faults.push(`part ${i} is numbered ${part.id}`);
  const left = order.parts.filter(({ id }) => there.has(id));
  return { left, settings, quarterTurns, narrowHolds, faults };
}
