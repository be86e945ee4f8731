/** A step into plain data: a key, or an index in a list. */
export type Step = string | number;

const PLAIN_KEY = /^[\p{L}_][\p{L}\p{N}_-]*$/u;
const LONGEST_KEY = 40;

/**
 * Writes where a value stands, such as `cards[2].front[0].border`. A key that is no plain word is put in quotes, and cut
 * to 40 characters.
 */
export function pathOf(steps: readonly Step[]): string {
  return steps.reduce<string>(pathTo, "");
}

/** The path of what stands under a key or index of the value at `path`. */
export function pathTo(path: string, step: Step): string {
  if (typeof step === "number") return `${path}[${step}]`;
  if (!PLAIN_KEY.test(step) || step.length > LONGEST_KEY) {
    const shown = step.length > LONGEST_KEY ? `${step.slice(0, LONGEST_KEY - 1)}…` : step;
    return `${path}[${JSON.stringify(shown)}]`;
  }
  return path === "" ? step : `${path}.${step}`;
}

/** Whether `path` is `ancestor` or stands below it. The empty path is above all. */
export function isWithin(path: string, ancestor: string): boolean {
  if (ancestor === "" || path === ancestor) return true;
  return path.startsWith(ancestor) && /[.[]/.test(path.charAt(ancestor.length));
}

const LAST_STEP = /(?:\["(?:[^"\\]|\\.)*"\]|\[\d+\]|\.?[^.[\]"]+)$/;

/** The path one step up; the empty path where there is none, and for what is no path. */
export function parentOf(path: string): string {
  const parent = path.replace(LAST_STEP, "");
  return parent === path ? "" : parent;
}
