import type { Point } from "../outline/point.js";
import { Scan } from "./scan.js";

/**
 * A command of path data, its points absolute and the shorthands written out.
 *
 * @internal
 */
export type PathCommand =
  | { readonly kind: "move" | "line"; readonly to: Point }
  | { readonly kind: "quadratic"; readonly control: Point; readonly to: Point }
  | { readonly kind: "cubic"; readonly first: Point; readonly second: Point; readonly to: Point }
  | {
      readonly kind: "arc";
      readonly radiusX: number;
      readonly radiusY: number;
      /** Of the ellipse's first axis from x towards y, in degrees. */
      readonly turned: number;
      readonly isLarge: boolean;
      readonly isSweeping: boolean;
      readonly to: Point;
    }
  | { readonly kind: "close" };

/**
 * Where and why path data stop making sense.
 *
 * @internal
 */
interface PathFault {
  /** The column, from 1. */
  readonly at: number;
  readonly found: string;
  readonly expected: string;
  /** Whether it is a number that cannot be held. */
  readonly isTooLarge: boolean;
}

/** @internal */
export type PathResult =
  | { readonly commands: readonly PathCommand[]; readonly fault: null }
  | { readonly commands: null; readonly fault: PathFault | "too-many" };

const FLAG = /[01]/y;
const LETTER = /[MmLlHhVvCcSsQqTtAaZz]/y;
const NUMBER_START = /[+\-.\d]/;
const ORIGIN: Point = { x: 0, y: 0 };

/**
 * Reads path data by the grammar of SVG 1.1 and 2, all of it or nothing (a browser would draw up to the mistake): numbers may
 * follow each other without space where that is clear (`.5.5`, `1-2`), and so may the flags of arcs (`a1 1 0 01.5.5`).
 *
 * @internal
 */
export function parsePath(text: string, mostCommands: number): PathResult {
  const scan = new Scan(text);
  const commands: PathCommand[] = [];
  let at = ORIGIN;
  let start = ORIGIN;
  // The last control point, from which the next smooth curve goes on; `null` where none did come before.
  let control: { readonly of: "cubic" | "quadratic"; readonly point: Point } | null = null;
  let fault: PathFault | null = null;

  const fail = (expected: string): null => {
    fault ??= { at: scan.at + 1, found: scan.text.slice(scan.at, scan.at + 12), expected, isTooLarge: false };
    return null;
  };
  const number = (): number => {
    const from = scan.at;
    const value = scan.number();
    if (value === null) {
      fail("a number");
      return 0;
    }
    if (!Number.isFinite(value)) {
      const found = scan.text.slice(from, from + 12);
      fault ??= { at: from + 1, found, expected: "a number that can be held", isTooLarge: true };
    }
    if (scan.skipComma() && !NUMBER_START.test(scan.here)) fail("a number after the comma");
    return value;
  };
  const flag = (): boolean => {
    const found = scan.match(FLAG);
    if (found === null) fail("a flag, 0 or 1");
    scan.skipComma();
    return found === "1";
  };
  const point = (isRelative: boolean): Point => {
    const x = number();
    const y = number();
    return isRelative ? { x: at.x + x, y: at.y + y } : { x, y };
  };
  const mirroredControl = (of: "cubic" | "quadratic"): Point =>
    control?.of === of ? { x: 2 * at.x - control.point.x, y: 2 * at.y - control.point.y } : at;

  const read = (letter: string): PathCommand => {
    const isRelative = letter >= "a";
    switch (letter.toLowerCase()) {
      case "m":
        return { kind: "move", to: point(isRelative) };
      case "l":
        return { kind: "line", to: point(isRelative) };
      case "h":
        return { kind: "line", to: { x: number() + (isRelative ? at.x : 0), y: at.y } };
      case "v":
        return { kind: "line", to: { x: at.x, y: number() + (isRelative ? at.y : 0) } };
      case "c":
        return { kind: "cubic", first: point(isRelative), second: point(isRelative), to: point(isRelative) };
      case "s":
        return {
          kind: "cubic",
          first: mirroredControl("cubic"),
          second: point(isRelative),
          to: point(isRelative),
        };
      case "q":
        return { kind: "quadratic", control: point(isRelative), to: point(isRelative) };
      case "t":
        return { kind: "quadratic", control: mirroredControl("quadratic"), to: point(isRelative) };
      default:
        return {
          kind: "arc",
          radiusX: Math.abs(number()),
          radiusY: Math.abs(number()),
          turned: number(),
          isLarge: flag(),
          isSweeping: flag(),
          to: point(isRelative),
        };
    }
  };

  scan.skipSpace();
  while (!scan.isAtEnd && fault === null) {
    const letter = scan.match(LETTER);
    if (letter === null) fail(commands.length === 0 ? "M or m" : "a command letter or a number");
    else if (commands.length === 0 && letter !== "M" && letter !== "m") {
      scan.at -= 1;
      fail("M or m, since path data begin with a move");
    } else if (letter === "Z" || letter === "z") {
      if (commands.length >= mostCommands) return { commands: null, fault: "too-many" };
      commands.push({ kind: "close" });
      at = start;
      control = null;
      scan.skipSpace();
    } else {
      let repeated = letter;
      scan.skipSpace();
      do {
        if (commands.length >= mostCommands) return { commands: null, fault: "too-many" };
        const command = read(repeated);
        if (fault !== null) break;
        commands.push(command);
        if (command.kind === "close") break;
        at = command.to;
        if (command.kind === "move") start = at;
        if (command.kind === "cubic") control = { of: "cubic", point: command.second };
        else if (command.kind === "quadratic") control = { of: "quadratic", point: command.control };
        else control = null;
        // More numbers after a move are lines.
        if (repeated === "M") repeated = "L";
        if (repeated === "m") repeated = "l";
      } while (NUMBER_START.test(scan.here));
    }
  }
  return fault === null ? { commands, fault: null } : { commands: null, fault };
}
