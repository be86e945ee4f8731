import leven from "leven";

/** Longer text is no word; the limit keeps the work on hostile input small. */
const LONGEST = 60;

/**
 * The word that was probably meant: the same but for case, spaces and hyphens, or the fewest letters away, at most one
 * letter in three; the first of equals. `null` where none is near.
 */
export function nearestWord(text: string, words: readonly string[]): string | null {
  if (text.length > LONGEST) return null;
  const wanted = plain(text);
  if (wanted === "") return null;
  let best: string | null = null;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const word of words) {
    const distance = leven(wanted, plain(word));
    if (distance >= least || distance >= plain(word).length) continue;
    best = word;
    least = distance;
  }
  return best;
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[\s_-]+/g, "");
}
