/** Columns of the headings of a summary. */
export const LABEL = 11;

/** A line of a summary: its heading, or none, and what is said. */
export function row(heading: string, text: string): string {
  return `${heading.padEnd(LABEL)}${text}`;
}

/** Several lines under one heading. */
export function block(heading: string, texts: readonly string[]): readonly string[] {
  return texts.map((text, index) => row(index === 0 ? heading : "", text));
}
