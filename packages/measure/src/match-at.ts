/**
 * Matches a sticky expression at a position of the text. A sticky expression keeps its position between
 * calls, so it is always set first.
 *
 * @internal
 */
export function matchAt(sticky: RegExp, text: string, at: number): RegExpExecArray | undefined {
  sticky.lastIndex = at;
  return sticky.exec(text) ?? undefined;
}
