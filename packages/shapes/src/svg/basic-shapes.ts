import type { PathCommand } from "./path-data.js";

/** The basic shapes of SVG as path commands, by the equivalent paths of SVG 2, chapter 10. */

/** @internal */
export function rectanglePath(
  x: number,
  y: number,
  width: number,
  height: number,
  rx: number,
  ry: number,
): readonly PathCommand[] {
  const right = x + width;
  const bottom = y + height;
  if (rx === 0 || ry === 0) {
    return polygonPath([x, y, right, y, right, bottom, x, bottom], true);
  }
  const corner = (toX: number, toY: number): PathCommand => arc(rx, ry, toX, toY);
  return [
    { kind: "move", to: { x: x + rx, y } },
    { kind: "line", to: { x: right - rx, y } },
    corner(right, y + ry),
    { kind: "line", to: { x: right, y: bottom - ry } },
    corner(right - rx, bottom),
    { kind: "line", to: { x: x + rx, y: bottom } },
    corner(x, bottom - ry),
    { kind: "line", to: { x, y: y + ry } },
    corner(x + rx, y),
    { kind: "close" },
  ];
}

/** @internal */
export function ellipsePath(cx: number, cy: number, rx: number, ry: number): readonly PathCommand[] {
  return [
    { kind: "move", to: { x: cx + rx, y: cy } },
    arc(rx, ry, cx - rx, cy),
    arc(rx, ry, cx + rx, cy),
    { kind: "close" },
  ];
}

/** Of x and y in turn. @internal */
export function polygonPath(numbers: readonly number[], isClosed: boolean): readonly PathCommand[] {
  const commands: PathCommand[] = [];
  for (let index = 0; index + 1 < numbers.length; index += 2) {
    const to = { x: numbers[index] as number, y: numbers[index + 1] as number };
    commands.push({ kind: index === 0 ? "move" : "line", to });
  }
  return isClosed && commands.length > 0 ? [...commands, { kind: "close" }] : commands;
}

function arc(radiusX: number, radiusY: number, x: number, y: number): PathCommand {
  return { kind: "arc", radiusX, radiusY, turned: 0, isLarge: false, isSweeping: true, to: { x, y } };
}
