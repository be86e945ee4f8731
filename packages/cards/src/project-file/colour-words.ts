/**
 * Colours that the names of papers and ribbons say, as muted tints that are light enough to be read with dark ink on
 * them. Our own choice; that a name ends in its colour (`Night blue`, `Fir green`) is common practice, no source.
 */
const SAID: Readonly<Record<string, string>> = {
  white: "#f7f6f2",
  snow: "#f4f5f4",
  chalk: "#f1f0ea",
  ivory: "#f6f0de",
  cream: "#f4ead0",
  vanilla: "#f3e9c8",
  sand: "#e5d5b0",
  kraft: "#cfae85",
  brown: "#c6a68c",
  grey: "#c6c9cb",
  gray: "#c6c9cb",
  silver: "#c5cad0",
  slate: "#b0bac4",
  black: "#a3a4a8",
  red: "#e2a49d",
  coral: "#efb7a4",
  pink: "#efc6d1",
  rose: "#e6b8bf",
  orange: "#f0c096",
  copper: "#d8a878",
  bronze: "#c9ab7c",
  gold: "#dcc46a",
  yellow: "#f2e4a2",
  green: "#b3cfac",
  moss: "#bdc79b",
  olive: "#c7c899",
  sage: "#c4d1bd",
  mint: "#c3e4d2",
  teal: "#a4cdca",
  turquoise: "#a8dad6",
  blue: "#aec4e4",
  navy: "#a5b4d4",
  purple: "#cbb7dd",
  violet: "#c8b9e4",
  lilac: "#d8c8e6",
  lavender: "#d3cdec",
  plum: "#cbabc8",
};

/** The tint that a name says, by its last word for a colour; `null` where it says none. */
export function colourSaid(name: string): string | null {
  const words = name.toLowerCase().split(/[^\p{L}]+/u);
  for (let at = words.length - 1; at >= 0; at--) {
    const word = words[at] ?? "";
    if (Object.hasOwn(SAID, word)) return SAID[word] ?? null;
  }
  return null;
}
