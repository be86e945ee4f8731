/** Made-up families, small enough to be solved by hand; never a measure of anything. */

/**
 * Fixed: `pair` needs 2 sheets of 10 x 10, since 6 x 6 and 6 x 5 do not lie on one; `quad` fills one sheet with four
 * quarters. `bar` has a piece of 4 x 10 and one of 10 x 6: on one sheet only where pieces may be turned.
 */
export const TILES = {
  family: "tiles",
  instances: [
    {
      id: "pair",
      class: 1,
      n: 2,
      sheet: [10, 10],
      pieces: [
        [6, 6, 1],
        [6, 5, 1],
      ],
      lbOG: 2,
      optOG: 2,
      lbRG: 2,
    },
    { id: "quad", class: 1, n: 4, sheet: [10, 10], pieces: [[5, 5, 4]], lbOG: 1, lbRG: 1, optRG: 1 },
    {
      id: "bar",
      class: 2,
      n: 2,
      sheet: [10, 10],
      pieces: [
        [4, 10, 1],
        [10, 6, 1],
      ],
      lbOG: 1,
      lbRG: 1,
      optRG: 1,
    },
  ],
};

/** Two strips that are cut without waste. */
export const RIBBONS = {
  family: "ribbons",
  instances: [
    {
      id: "halves",
      sheet: [10, 8],
      pieces: [[5, 8, 2]],
      optHeight: 8,
      guillotineOG: true,
      guillotineRG: true,
    },
    { id: "rows", sheet: [10, 6], pieces: [[10, 2, 3]], optHeight: 6, guillotineOG: true },
  ],
};

/** One sheet of 10 x 10: the piece of 10 x 4 is worth most for its room, so two of them and the small one give 21. */
export const MEDALS = {
  family: "medals",
  instances: [
    {
      id: "gold",
      sheet: [10, 10],
      pieces: [
        [10, 4, 2],
        [10, 2, 1],
        [9, 9, 1],
      ],
      values: [10, 1, 12],
      optOG: 21,
    },
  ],
};

/** Any number of 5 x 2 from 7 x 5: two lie above each other; three stand side by side, and four are too much by area. */
export const STAMPS = {
  family: "stamps",
  instances: [
    { id: "roll", sheet: [7, 5], pieces: [[5, 2, 1]], unconstrainedOptOG: 20, unconstrainedOptRG: 30 },
  ],
};

/** Two sizes in stock; the pieces fill one of each. */
export const MIXED = {
  family: "mixed",
  instances: [
    {
      id: "two",
      sheets: [
        [10, 10, 1],
        [6, 5, 3, 30],
      ],
      pieces: [
        [10, 10, 1],
        [6, 5, 1],
      ],
    },
  ],
};

/** Files of a folder, as JSON by path. */
export function filesOf(
  folder: string,
  families: readonly { readonly family: string }[],
): Readonly<Record<string, string>> {
  return Object.fromEntries(families.map((each) => [`${folder}/${each.family}.json`, JSON.stringify(each)]));
}
