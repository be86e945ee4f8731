/** A rectangle in millimetres. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** True where two boxes share some area once each side of the first is moved out by `gap`. */
export function boxesOverlap(a: Box, b: Box, gap = 0): boolean {
  return (
    a.x - gap < b.x + b.width &&
    b.x < a.x + a.width + gap &&
    a.y - gap < b.y + b.height &&
    b.y < a.y + a.height + gap
  );
}

/** A box with each side moved in by `inset`; never less than nothing. */
export function insetBox(box: Box, inset: number): Box {
  return {
    x: box.x + inset,
    y: box.y + inset,
    width: Math.max(0, box.width - 2 * inset),
    height: Math.max(0, box.height - 2 * inset),
  };
}

/** True where the straight line from (x1, y1) to (x2, y2) runs through the inside of the box. */
export function segmentCrossesBox(x1: number, y1: number, x2: number, y2: number, box: Box): boolean {
  // Liang & Barsky (1984): the part of the segment inside every side is what is left between enter and leave.
  let enter = 0;
  let leave = 1;
  const sides: readonly (readonly [number, number])[] = [
    [x1 - x2, x1 - box.x],
    [x2 - x1, box.x + box.width - x1],
    [y1 - y2, y1 - box.y],
    [y2 - y1, box.y + box.height - y1],
  ];
  for (const [slope, room] of sides) {
    if (slope === 0) {
      if (room <= 0) return false;
    } else if (slope < 0) {
      enter = Math.max(enter, room / slope);
    } else {
      leave = Math.min(leave, room / slope);
    }
  }
  return enter < leave;
}
