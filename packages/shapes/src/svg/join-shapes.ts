/** Makes outlines of the closed lines of a drawing: crossings judged, fill rules applied, parts joined, specks dropped. */

import { ArcBook } from "../clip/arc-book.js";
import { type ClipRule, clip } from "../clip/clip.js";
import { outlinesOf } from "../clip/combine.js";
import { withoutSpikes } from "../clip/without-spikes.js";
import type { FlatOutline, Polygon } from "../flatten/flatten.js";
import { signedAreaOf } from "../measure/area.js";
import { lengthOf } from "../outline/arc.js";
import { type Outline, type Ring, spansOf } from "../outline/outline.js";
import { type Contact, findContacts } from "./find-contacts.js";
import { type ContactKind, judgePair, judgeSelf, polygonsOf, signedAreaOfPolygons } from "./judge-contact.js";
import { fatal, type OutlinePlace, WHOLE_FILE } from "./outline-read-error.js";
import { SIMPLIFY } from "./read-budget.js";
import { inMm, type ReadState, saidPoint } from "./rings-of-path.js";

/**
 * A shape of a drawing, its lines in ticks from the corner of the page.
 *
 * @internal
 */
export interface DrawnShape {
  readonly rings: readonly Ring[];
  readonly fillRule: "nonzero" | "evenodd";
  /** Whether it has a fill; else it is lines to be cut along. */
  readonly isFilled: boolean;
  readonly place: OutlinePlace;
}

/** One closed line with its corners. */
interface Line {
  readonly polygon: Polygon;
  readonly shape: number;
  readonly place: OutlinePlace;
}

/** Corners of lines that are clipped with each other to judge where they meet. */
const MOST_JUDGED = 200_000;

/** Shapes that overlap by less than this part of what they cover do so by rounding. */
const OVERLAP = 1e-4;

/**
 * The outlines of shapes. Where any is filled, the material is what the fills cover; where none is, the lines are cut lines, and
 * one inside another is a window.
 *
 * @internal
 */
export function joinShapes(drawn: readonly DrawnShape[], state: ReadState): readonly Outline[] {
  const { settings, budget, faults, notes } = state;
  const areFilled = drawn.some(({ isFilled }) => isFilled);
  const shapes = drawn.filter((shape) => {
    if (!areFilled || shape.isFilled) return true;
    notes.add(
      "lines-left-out",
      shape.place,
      "A line without a fill was left out, since other shapes of the drawing are filled.",
    );
    return false;
  });
  const book = new ArcBook();
  let corners = 0;
  const lines = shapes.flatMap(({ rings, place }, shape) =>
    rings.flatMap((ring): readonly Line[] => {
      const polygon = withoutSpikes(book.flattenRing(spansOf(ring)));
      corners += polygon.length;
      budget.checkCorners(corners, place);
      if (polygon.length > 2 && reachOf(polygon) >= settings.specks) return [{ polygon, shape, place }];
      dropSpeck(state, place);
      return [];
    }),
  );
  const isSameSubject = (one: number, other: number) =>
    !areFilled || (lines[one] as Line).shape === (lines[other] as Line).shape;
  const contacts = findContacts(
    lines.map(({ polygon }) => polygon),
    isSameSubject,
  );
  if (contacts === "too-intricate") {
    throw fatal("over-limit", WHOLE_FILE, {
      wrong: "The lines lie over each other too densely to be read in a reasonable time.",
      found: "too many lines side by side",
      expected: "a drawing for cutting",
      help: SIMPLIFY,
    });
  }
  const regions = areFilled
    ? filledRegions(lines, shapes, contacts, state)
    : cutRegions(lines, contacts, state);
  faults.throwAny();
  const found = outlinesOf(regions, book);
  return found.flatMap((outline) => withoutSpecks(outline, state));
}

function filledRegions(
  lines: readonly Line[],
  shapes: readonly DrawnShape[],
  contacts: readonly Contact[],
  state: ReadState,
): readonly FlatOutline[] {
  if (!state.settings.mergeCrossings) judgeAll(lines, contacts, state, refuseCrossing);
  const regions = shapes.map(({ fillRule }, shape) => {
    const polygons = lines.filter((line) => line.shape === shape).map(({ polygon }) => polygon);
    return clip("union", polygons, [], fillRule);
  });
  const [only] = regions;
  if (regions.length === 1 && only !== undefined) return only;
  const all = regions.flatMap(polygonsOf);
  const joined = clip("union", all);
  const covered = signedAreaOfPolygons(polygonsOf(joined));
  if (signedAreaOfPolygons(all) - covered > OVERLAP * covered) {
    state.notes.add(
      "overlap-joined",
      WHOLE_FILE,
      "Shapes that overlap were joined; one that lies wholly on another, such as a background, leaves no line. Where it is to be a window, subtract it in the drawing program.",
    );
  }
  return joined;
}

function cutRegions(
  lines: readonly Line[],
  contacts: readonly Contact[],
  state: ReadState,
): readonly FlatOutline[] {
  const { settings, notes } = state;
  const doubled = new Set<number>();
  // Lines that cross are one part: each line knows another one of its part, or itself.
  const partOf = lines.map((_, index) => index);
  const firstOf = (line: number): number => {
    let first = line;
    while (partOf[first] !== first) first = partOf[first] as number;
    return first;
  };
  judgeAll(lines, contacts, state, (contact, kind) => {
    if (kind === "same") {
      doubled.add(contact.other);
      notes.add(
        "doubles-left-out",
        (lines[contact.other] as Line).place,
        "A line drawn twice was read once.",
      );
    } else if (!settings.mergeCrossings) refuseCrossing(contact, kind, lines, state);
    else partOf[firstOf(contact.other)] = firstOf(contact.one);
  });
  const kept = lines.flatMap((line, index) => (doubled.has(index) ? [] : [{ ...line, index }]));
  const parts = new Map<number, Polygon[]>();
  for (const { polygon, index } of kept) {
    const part = parts.get(firstOf(index)) ?? [];
    part.push(polygon);
    parts.set(firstOf(index), part);
  }
  const polygons = [...parts.values()].flatMap((part) => {
    if (part.length === 1 && !settings.mergeCrossings) return part;
    // Each line by itself, so that it does not matter which way it runs.
    return polygonsOf(
      clip(
        "union",
        part.flatMap((polygon) => polygonsOf(clip("union", [polygon], [], "nonzero"))),
      ),
    );
  });
  const regions = clip("union", polygons, [], "evenodd" satisfies ClipRule);
  if (regions.some(({ windows }) => windows.length > 0)) {
    notes.add(
      "lines-nested",
      WHOLE_FILE,
      "Nothing is filled, so the lines were read as cut lines: one inside another is a window, and one in that a part again.",
    );
  }
  return regions;
}

type Judgement = (
  contact: Contact,
  kind: Exclude<ContactKind, "touch">,
  lines: readonly Line[],
  state: ReadState,
) => void;

function judgeAll(
  lines: readonly Line[],
  contacts: readonly Contact[],
  state: ReadState,
  tell: Judgement,
): void {
  const { settings } = state;
  let judged = 0;
  for (const contact of contacts) {
    const one = lines[contact.one] as Line;
    const other = lines[contact.other] as Line;
    judged += one.polygon.length + other.polygon.length;
    if (judged > MOST_JUDGED) {
      throw fatal("over-limit", one.place, {
        wrong: "Its lines meet in too many places to be judged in a reasonable time.",
        found: `more than ${MOST_JUDGED} corners of lines that meet`,
        expected: "lines that meet in few places",
        help: "Join the shapes in the program that drew them.",
      });
    }
    const kind =
      contact.one === contact.other
        ? judgeSelf(one.polygon, settings.tolerance)
        : judgePair(one.polygon, other.polygon, settings.tolerance);
    if (kind !== "touch") tell(contact, kind, lines, state);
  }
}

const refuseCrossing: Judgement = ({ one, other, at }, kind, lines, { faults }) => {
  // The same line twice in one path is what its fill rule says.
  if (kind === "same") return;
  const place = (lines[one] as Line).place;
  const second = (lines[other] as Line).place;
  const across = one === other || second === place ? "itself" : `the line of ${second.element}`;
  faults.add("self-crossing", place, {
    wrong: `It crosses ${across} near ${saidPoint(at)} mm.`,
    found: `a crossing near ${saidPoint(at)} mm`,
    expected: "lines that touch at most",
    help: "Join or separate the shapes in the drawing program.",
  });
};

function withoutSpecks({ outer, windows }: Outline, state: ReadState): readonly Outline[] {
  const { specks } = state.settings;
  // What is so thin that its arcs, found again, turn it inside out is a speck as well.
  const isSpeck = (ring: Ring, sign: 1 | -1) => {
    const perimeter = spansOf(ring).reduce((sum, span) => sum + lengthOf(span), 0);
    const area = sign * signedAreaOf(ring);
    return area <= 0 || 4 * area < specks * perimeter;
  };
  if (isSpeck(outer, 1)) {
    dropSpeck(state, WHOLE_FILE);
    return [];
  }
  const kept = windows.filter((window) => {
    if (!isSpeck(window, -1)) return true;
    dropSpeck(state, WHOLE_FILE);
    return false;
  });
  return [{ outer, windows: kept }];
}

function dropSpeck({ notes, settings }: ReadState, place: OutlinePlace): void {
  notes.add(
    "specks-dropped",
    place,
    `A part or window of less than ${inMm(settings.specks)} mm across was dropped.`,
  );
}

/** The larger side of a polygon's box. */
function reachOf(polygon: Polygon): number {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (const { x, y } of polygon) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return Math.max(0, right - left, bottom - top);
}
