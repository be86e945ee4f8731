/** How text is broken into lines. */
export interface LineBreaking {
  /** Whether a line is short enough; a part of a line that fits fits too. */
  readonly fits: (line: string) => boolean;
  /** Most lines (default: any number). */
  readonly lines?: number;
  /**
   * What happens to text that is too long: `refuse` gives `null`; `shorten` ends the last line in an ellipsis; words too
   * long for a line are broken with `shorten` and `anywhere` only.
   */
  readonly overflow: "refuse" | "shorten" | "anywhere";
}

/** No-break space: holds the parts of a size together, and comes out of {@link breakLines} as a space. */
const HELD = "\u00a0";

/** Makes a text that lines are not broken in, such as `4 1/4 x 5 1/2 in`. */
export function unbroken(text: string): string {
  return text.replaceAll(" ", HELD);
}

/** Breaks words into lines that fit, or gives `null` where that is refused or not even a letter fits. */
export function breakLines(words: readonly string[], breaking: LineBreaking): readonly string[] | null {
  const { lines: most = Number.POSITIVE_INFINITY, overflow } = breaking;
  const fits = (text: string) => breaking.fits(spaced(text));
  const lines: string[] = [];
  let line = "";

  for (const word of words) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = word;
    if (fits(word)) continue;
    if (overflow === "refuse") return null;
    const chunks = breakWord(word, fits);
    if (chunks === null) return null;
    lines.push(...chunks.slice(0, -1));
    line = chunks.at(-1) ?? "";
  }
  lines.push(line);
  if (lines.length <= most) return lines.map(spaced);
  if (overflow !== "shorten") return null;

  const last = shortenLine(lines.slice(most - 1).join(" "), fits);
  return last === null ? null : [...lines.slice(0, most - 1), last].map(spaced);
}

/** A text made by {@link unbroken} with plain spaces again. */
export function spaced(text: string): string {
  return text.replaceAll(HELD, " ");
}

function breakWord(word: string, fits: (text: string) => boolean): readonly string[] | null {
  const chunks: string[] = [];
  let chunk = "";
  for (const character of word) {
    if (fits(chunk + character)) {
      chunk += character;
    } else {
      if (chunk === "") return null;
      chunks.push(chunk);
      chunk = character;
    }
  }
  if (!fits(chunk)) return null;
  return [...chunks, chunk];
}

/** Cuts a line so that it fits with an ellipsis; fewer than three characters say nothing, so it gives `null` there. */
function shortenLine(line: string, fits: (text: string) => boolean): string | null {
  let kept = "";
  let count = 0;
  for (const character of line) {
    if (!fits(`${kept}${character}…`)) break;
    kept += character;
    count += 1;
  }
  return count < 3 ? null : `${kept.trimEnd()}…`;
}
