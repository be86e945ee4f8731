/**
 * Fronts of usual folded cards, width x height in sixteenths of an inch, the short side first. Source: common practice, no
 * published source.
 */
export const CARD_FRONTS: readonly (readonly [width: number, height: number])[] = [
  [48, 48], // 3 x 3
  [48, 96], // 3 x 6
  [56, 78], // 3 1/2 x 4 7/8
  [56, 136], // 3 1/2 x 8 1/2
  [64, 64], // 4 x 4
  [64, 96], // 4 x 6
  [68, 88], // 4 1/4 x 5 1/2
  [72, 100], // 4 1/2 x 6 1/4
  [80, 80], // 5 x 5
  [80, 112], // 5 x 7
  [84, 126], // 5 1/4 x 7 7/8
  [88, 136], // 5 1/2 x 8 1/2
];
