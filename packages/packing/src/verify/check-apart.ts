/**
 * A second proof that pieces lie apart, from their absolute rectangles alone: a sweep from left to right.
 *
 * The pieces that the sweep line crosses lie apart from each other, so they stand in one order from top to bottom, and
 * a new piece meets any of them only if it meets its neighbour above or below. O(n log n) comparisons.
 * Source: the sweep of Shamos & Hoey (1976) for segments, for rectangles here.
 */

import type { Rectangle } from "../model.js";
import type { PlacedPiece } from "./walk.js";

/** Two pieces that lie closer than they may; the first starts further left or, at equal x, further up. */
export interface Meeting {
  readonly first: PlacedPiece;
  readonly second: PlacedPiece;
}

/**
 * Finds pieces that are not `clearance` or more apart along x or along y. With any such pair among the pieces at least
 * one is found; a piece that met another is left out from there on, so not every pair is.
 */
export function findMeetings(pieces: readonly PlacedPiece[], clearance: number): readonly Meeting[] {
  const meetings: Meeting[] = [];
  const crossed: PlacedPiece[] = [];
  const order = [...pieces].sort((a, b) => a.x - b.x || a.y - b.y);
  for (const piece of order) {
    const isPassed = (other: PlacedPiece) => other.x + other.width + clearance <= piece.x;
    let place = placeByTop(crossed, piece.y);
    let above = crossed[place - 1];
    while (above !== undefined && isPassed(above)) {
      place -= 1;
      crossed.splice(place, 1);
      above = crossed[place - 1];
    }
    let below = crossed[place];
    while (below !== undefined && isPassed(below)) {
      crossed.splice(place, 1);
      below = crossed[place];
    }
    if (above !== undefined && above.y + above.height + clearance > piece.y) {
      meetings.push({ first: above, second: piece });
    } else if (below !== undefined && piece.y + piece.height + clearance > below.y) {
      meetings.push({ first: below, second: piece });
    } else {
      crossed.splice(place, 0, piece);
    }
  }
  return meetings;
}

/** Index of the first piece whose top lies below `y`. */
function placeByTop(pieces: readonly PlacedPiece[], y: number): number {
  let low = 0;
  let high = pieces.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((pieces[middle] as PlacedPiece).y <= y) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Tells whether a rectangle lies within another one, edges included. */
export function isWithin(inner: Rectangle, outer: Rectangle): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}
