/**
 * Counts work and says when to pause. A search that yields whenever {@link Meter.isDue} is true pauses after fixed
 * amounts of work, the same on every machine.
 */
export interface Meter {
  /** Places looked at so far. */
  work: number;
  /** Work at which the next pause is due. */
  nextPause: number;
  /** Set from outside during a pause: give up the present start. */
  stopped: boolean;
}

/** Places looked at between two pauses: about a millisecond. */
const WORK_PER_PAUSE = 20_000;

export function newMeter(): Meter {
  return { work: 0, nextPause: WORK_PER_PAUSE, stopped: false };
}

/** True once the work since the last pause is done; sets the next one. */
export function isDue(meter: Meter): boolean {
  if (meter.work < meter.nextPause) return false;
  meter.nextPause = meter.work + WORK_PER_PAUSE;
  return true;
}
