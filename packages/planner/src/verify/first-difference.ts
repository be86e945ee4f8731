/** Where two pieces of plain data first differ, and what stands there. */
export interface Difference {
  readonly path: string;
  /** As short JSON, or `nothing`. */
  readonly found: string;
  readonly expected: string;
}

/**
 * Compares plain data, whatever the order of keys; a key that is absent is the same as one that is undefined. `null` where
 * both are the same.
 */
export function firstDifference(found: unknown, expected: unknown, path: string): Difference | null {
  if (Array.isArray(found) && Array.isArray(expected)) {
    const length = Math.max(found.length, expected.length);
    for (let i = 0; i < length; i++) {
      const difference = firstDifference(found[i], expected[i], `${path}[${i}]`);
      if (difference !== null) return difference;
    }
    return null;
  }
  if (isFields(found) && isFields(expected)) {
    for (const key of new Set([...Object.keys(expected), ...Object.keys(found)])) {
      const difference = firstDifference(found[key], expected[key], path === "" ? key : `${path}.${key}`);
      if (difference !== null) return difference;
    }
    return null;
  }
  return Object.is(found, expected) ? null : { path, found: shown(found), expected: shown(expected) };
}

/** A value of any type as JSON of at most 80 letters, for a sentence. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  const text = inText(value);
  return text.length <= 80 ? text : `${text.slice(0, 79)}…`;
}

/** As JSON; what JSON cannot hold, or nests too deep, is named by its type. */
function inText(value: unknown): string {
  try {
    return JSON.stringify(value) ?? typeof value;
  } catch {
    return typeof value;
  }
}

function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
