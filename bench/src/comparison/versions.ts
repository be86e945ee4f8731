import { createRequire } from "node:module";

/** Versions of what is measured, by package. */
export function versionsOf(names: readonly string[]): Readonly<Record<string, string>> {
  const load = createRequire(import.meta.url);
  return Object.fromEntries(
    names.map((name) => [name, (load(`${name}/package.json`) as { version: string }).version]),
  );
}
