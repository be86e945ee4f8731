import leven from "leven";

/** Longer text is no word; the limit keeps the work on hostile input small. */
const LONGEST = 60;
/** Shorter words begin too many others. */
const SHORTEST_START = 4;

/**
 * The word that was probably meant: the same but for case, spaces and hyphens, or the fewest letters away, at most one
 * letter in three, where two letters that changed places count as one; the first of equals. Where none is near, the longest
 * of four letters and more that the text begins with, as gate in gatefold; else `null`.
 */
export function nearestWord(text: string, words: readonly string[]): string | null {
  if (text.length > LONGEST) return null;
  const wanted = plain(text);
  if (wanted === "") return null;
  let best: string | null = null;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const word of words) {
    const known = plain(word);
    const distance = isSwapped(wanted, known) ? 1 : leven(wanted, known);
    if (distance >= least || distance >= known.length) continue;
    best = word;
    least = distance;
  }
  return best ?? longestStart(wanted, words);
}

function longestStart(wanted: string, words: readonly string[]): string | null {
  const starts = words.filter(
    (word) => plain(word).length >= SHORTEST_START && wanted.startsWith(plain(word)),
  );
  return starts.reduce<string | null>(
    (best, word) => (best !== null && plain(best).length >= plain(word).length ? best : word),
    null,
  );
}

/** Whether two neighbouring letters of a word changed places: the commonest slip, and two letters to an edit distance. */
function isSwapped(text: string, word: string): boolean {
  if (text.length !== word.length) return false;
  const at = [...text].findIndex((letter, index) => letter !== word[index]);
  if (at < 0 || text[at] !== word[at + 1] || text[at + 1] !== word[at]) return false;
  return text.slice(at + 2) === word.slice(at + 2);
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[\s_-]+/g, "");
}
