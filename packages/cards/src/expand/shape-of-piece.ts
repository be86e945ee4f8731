/**
 * What is cut out of a piece, by the words for the piece: `the shape of the 3b star die blank`, or `the 3b star shape` where it
 * is called a shape itself.
 *
 * @internal
 */
export function shapeOfPiece(words: string): string {
  return / shape$/.test(words) ? words : `the shape of ${words}`;
}
