import type { Ticks } from "./ticks.js";

/** A rectangle's width and height, in ticks. Width comes first everywhere; nothing is swapped silently. */
export interface Size {
  readonly width: Ticks;
  readonly height: Ticks;
}
