import type { Box } from "./box.js";

/**
 * Hatching for a box: the parts of rising 45 degree lines inside it, `spacing` apart across, as path data. The lines lie
 * on one grid for the whole page, so that neighbours hatch alike. Written out, since patterns are lost in some readers.
 */
export function hatchLines(box: Box, spacing: number, format: (value: number) => string): string {
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  // A line is x + y = c; its grid step along x is the spacing times the diagonal of the unit square.
  const step = spacing * Math.sqrt(2);
  let path = "";
  for (let i = Math.floor((box.x + box.y) / step) + 1; i * step < right + bottom; i += 1) {
    const c = i * step;
    const x1 = Math.max(box.x, c - bottom);
    const x2 = Math.min(right, c - box.y);
    if (x2 - x1 < 0.05) continue;
    path += `M${format(x1)} ${format(c - x1)}L${format(x2)} ${format(c - x2)}`;
  }
  return path;
}
