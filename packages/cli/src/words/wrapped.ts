/** As wide as a page of plain text prints. */
const COLUMNS = 100;

/**
 * Breaks a text at its spaces into lines of at most 100 columns less those `taken` on its left, if no word is longer; later
 * lines begin with `indent`.
 */
export function wrapped(text: string, indent = "", taken = 0): readonly string[] {
  const lines: string[] = [];
  // Spaces at the start and between columns stay; only a single one between words is a place to break.
  const lead = /^ */.exec(text)?.[0] ?? "";
  let line = lead;
  for (const word of text.slice(lead.length).split(/(?<=\S) (?=\S)/)) {
    const isStart = line.trim() === "";
    const longer = isStart ? line + word : `${line} ${word}`;
    if (!isStart && [...longer].length > COLUMNS - taken) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  return [...lines, line];
}
