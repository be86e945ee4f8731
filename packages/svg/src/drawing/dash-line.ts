/** A stretch of a line, in millimetres from its start. */
export type Dash = readonly [from: number, to: number];

/**
 * Divides a line into dashes that begin and end it: of the number that fits best, and all stretched alike. With dash c,
 * gap g and length L these are n = max(1, round((L + g) / (c + g))) dashes, scaled by L / (n c + (n - 1) g). Real segments,
 * since many readers draw or cut a dash pattern solid.
 */
export function dashLine(length: number, dash: number, gap: number): readonly Dash[] {
  const count = Math.max(1, Math.round((length + gap) / (dash + gap)));
  const scale = length / (count * dash + (count - 1) * gap);
  return Array.from({ length: count }, (_, i): Dash => {
    const from = i * (dash + gap) * scale;
    return [from, i === count - 1 ? length : from + dash * scale];
  });
}
