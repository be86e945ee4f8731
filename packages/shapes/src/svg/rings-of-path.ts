import { LONGEST_LENGTH, type Ticks } from "@sheetwright/measure";
import { fitArcs } from "../curve/fit-arcs.js";
import type { Edge, Ring } from "../outline/outline.js";
import { distance, isSame, type Point, rounded } from "../outline/point.js";
import { ellipticArc } from "./elliptic-arc.js";
import { type Matrix, mapPoint } from "./matrix.js";
import type { Notes } from "./outline-note.js";
import type { Faults, OutlinePlace } from "./outline-read-error.js";
import type { PathCommand } from "./path-data.js";
import type { ReadBudget } from "./read-budget.js";
import type { ReadSettings } from "./read-options.js";

/** Ends that lie so near are one point, whatever `closeGaps` says: both were rounded. */
const SAME: Ticks = 2;

/**
 * What reading collects on the way.
 *
 * @internal
 */
export interface ReadState {
  readonly settings: ReadSettings;
  readonly budget: ReadBudget;
  readonly faults: Faults;
  readonly notes: Notes;
}

/**
 * The closed lines of a path, mapped to ticks. Those that are not closed become a fault or a note.
 *
 * @internal
 */
export function ringsOfPath(
  commands: readonly PathCommand[],
  matrix: Matrix,
  place: OutlinePlace,
  { settings, budget, faults, notes }: ReadState,
): readonly Ring[] {
  const { tolerance, closeGaps, leaveOut } = settings;
  const rings: Ring[] = [];
  let edges: Edge[] = [];
  let from: Point = { x: 0, y: 0 };
  let first: Point = from;
  let start: Point = from;
  let at: Point = start;

  const lineTo = (to: Point): void => {
    if (isSame(at, to)) return;
    edges.push({ to });
    at = to;
  };
  const tickOf = (point: Point): Point => {
    const { x, y } = mapPoint(matrix, point);
    if (!(Math.abs(x) <= LONGEST_LENGTH && Math.abs(y) <= LONGEST_LENGTH)) throw new RangeError();
    return rounded(x, y);
  };
  const follow = (curve: (part: number) => Point, breaks: readonly number[]): void => {
    const fit = fitArcs((part) => mapPoint(matrix, curve(part)), { breaks, tolerance });
    // An arc becomes two chords at least.
    budget.takeCorners(
      fit.edges.reduce((count, edge) => count + ("through" in edge ? 2 : 1), 0),
      place,
    );
    edges.push(...fit.edges);
    at = fit.edges[fit.edges.length - 1]?.to ?? at;
  };

  /** Ends a line whose ends meet, or nearly so. */
  const join = (): void => {
    const gap = distance(at, start);
    if (gap > 0 && gap <= SAME && edges.length > 1) moveEnd(edges, start);
    else lineTo(start);
    if (edges.length > 1) rings.push(edges);
  };
  const end = (isClosed: boolean): void => {
    if (edges.length > 0) {
      const gap = distance(at, start);
      if (isClosed || gap <= Math.max(SAME, closeGaps)) {
        if (!isClosed && gap > tolerance) {
          notes.add("gap-closed", place, `A gap of ${inMm(gap)} mm between its ends was closed.`);
        }
        join();
      } else if (leaveOut.includes("open-paths")) {
        notes.add("open-path-left-out", place, "A line that is not closed was left out.");
      } else {
        const ends = `${saidPoint(start)} and ${saidPoint(at)} mm`;
        faults.add("open-path", place, {
          wrong: `The line is not closed: its ends at ${ends} lie ${inMm(gap)} mm apart.`,
          found: `a gap of ${inMm(gap)} mm`,
          expected: "a closed line",
          help: "Close the line in the drawing.",
        });
      }
    }
    edges = [];
  };

  try {
    for (const command of commands) {
      if (command.kind === "close") {
        end(true);
        from = first;
        at = start;
        continue;
      }
      const { to } = command;
      if (command.kind === "move") {
        end(false);
        first = to;
        start = tickOf(to);
        at = start;
      } else if (command.kind === "line") lineTo(tickOf(to));
      else if (command.kind === "cubic") follow(cubic(from, command), [0, 1]);
      else if (command.kind === "quadratic") follow(quadratic(from, command), [0, 1]);
      else if (command.kind === "arc" && (from.x !== to.x || from.y !== to.y)) {
        const arc = ellipticArc(from, command);
        const parts = Math.max(1, Math.ceil(Math.abs(arc?.turn ?? 0) / Math.PI - 1e-9));
        const breaks = Array.from({ length: parts + 1 }, (_, index) => index / parts);
        if (arc === null) lineTo(tickOf(to));
        else follow(arc.curve, breaks);
      }
      from = to;
    }
    end(false);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    faults.add("too-far", place, {
      wrong: "It reaches more than 10 m from the corner of the page.",
      found: "a point beyond 10 m",
      expected: "points within 10 m",
      help: "Check the numbers, the transforms and the unit of the drawing.",
    });
    return [];
  }
  return rings;
}

/** Moves the end of a line by the little that it lies off its start. */
function moveEnd(edges: Edge[], start: Point): void {
  const last = edges.pop() as Edge;
  const before = (edges[edges.length - 1] as Edge).to;
  if (!isSame(before, start)) edges.push({ ...last, to: start });
}

function cubic(from: Point, { first, second, to }: Extract<PathCommand, { kind: "cubic" }>) {
  return (t: number): Point => {
    const s = 1 - t;
    const a = s * s * s;
    const b = 3 * s * s * t;
    const c = 3 * s * t * t;
    const d = t * t * t;
    return {
      x: a * from.x + b * first.x + c * second.x + d * to.x,
      y: a * from.y + b * first.y + c * second.y + d * to.y,
    };
  };
}

function quadratic(from: Point, { control, to }: Extract<PathCommand, { kind: "quadratic" }>) {
  return (t: number): Point => {
    const s = 1 - t;
    return {
      x: s * s * from.x + 2 * s * t * control.x + t * t * to.x,
      y: s * s * from.y + 2 * s * t * control.y + t * t * to.y,
    };
  };
}

/** A length in millimetres to a hundredth, for a sentence. @internal */
export function inMm(ticks: number): string {
  return String(Math.round(ticks / 16) / 100 + 0);
}

/** A place in millimetres from the corner of the page. @internal */
export function saidPoint({ x, y }: Point): string {
  return `${inMm(x)}, ${inMm(y)}`;
}
