import { edgesData, type PlaceOf } from "../writer/path-data.js";
import type { CutPath, Point } from "./cut-path.js";

/** Path data of a path of the blade in ticks. `scale` is how many user units a tick is. */
export function cutData({ points, closed, through }: CutPath, scale: number): string {
  const [start, ...rest] = points;
  if (start === undefined) return "";
  const toPoint = ([x, y]: Point) => ({ x, y });
  const placeOf: PlaceOf = ({ x, y }) => [x * scale, y * scale];
  const edges = (closed ? [...rest, start] : rest).map((to, index) => {
    const by = through?.[index] ?? null;
    return { to: toPoint(to), through: by === null ? null : toPoint(by) };
  });
  return edgesData({ start: toPoint(start), edges, closed }, placeOf);
}
