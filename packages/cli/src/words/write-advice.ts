import type { Advice, NoPaper } from "@sheetwright/cards";

/**
 * Writes advice on a project, a line each. What is advised of a piece that no paper can give is left out: it is told as
 * what it is.
 *
 * @param place writes where a value stands in the project file.
 */
export function writeAdvice(
  advice: readonly Advice[],
  noPaper: readonly NoPaper[],
  place: (path: string) => string,
): readonly string[] {
  const told = new Set(noPaper.map(({ message }) => message));
  return advice
    .filter(({ message }) => !told.has(message))
    .map(({ path, message }) => `${place(path)}: Note: ${message}`);
}
