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

/** True where the straight line from (x1, y1) to (x2, y2) runs through the inside of the box. */
export function segmentCrossesBox(x1: number, y1: number, x2: number, y2: number, box: Box): boolean {
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  if (Math.max(x1, x2) <= box.x || Math.min(x1, x2) >= right) return false;
  if (Math.max(y1, y2) <= box.y || Math.min(y1, y2) >= bottom) return false;
  if (x1 === x2 || y1 === y2) return true;
  // Some share of the way lies between the box's sides, and some between its top and bottom; inside it where both do.
  const left = (box.x - x1) / (x2 - x1);
  const far = (right - x1) / (x2 - x1);
  const upper = (box.y - y1) / (y2 - y1);
  const lower = (bottom - y1) / (y2 - y1);
  const enter = Math.max(0, Math.min(left, far), Math.min(upper, lower));
  const leave = Math.min(1, Math.max(left, far), Math.max(upper, lower));
  return enter < leave;
}
