import { expect } from "vitest";
import { attributeOf, byId, everyElement, type ReadElement } from "../read-svg.js";

export type Point = readonly [number, number];
export interface Subpath {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

const NUMBER = "(?:0|[1-9]\\d*)(?:\\.\\d{0,2}[1-9])?";
const PAIR = `${NUMBER} ${NUMBER}`;
const GRAMMAR = new RegExp(`^(?:M${PAIR}(?:L${PAIR}|C${PAIR} ${PAIR} ${PAIR})+Z?)+$`);

/** The points of each subpath; of a curve its end alone, and where a closed one ends in its start, not that. */
export function subpathsOf(path: ReadElement): readonly Subpath[] {
  const data = attributeOf(path, "d");
  expect(data).toMatch(GRAMMAR);
  return [...data.matchAll(/M([^MZ]+)(Z?)/g)].map(([, steps = "", z]) => {
    const points = steps
      .split(/[LC]/)
      .map((step) => step.split(" ").slice(-2).map(Number) as unknown as Point);
    const endsInCurve = /C[^L]*$/.test(steps) && String(points[0]) === String(points.at(-1));
    return { points: endsInCurve ? points.slice(0, -1) : points, closed: z === "Z" };
  });
}

export function pathsOf(root: ReadElement, operation: string): readonly ReadElement[] {
  return byId(root, operation).children.filter(({ name }) => name === "path");
}

/** The rules for every cutter file. */
export function expectCutterRules(root: ReadElement): void {
  const elements = everyElement(root);
  const names = new Set(elements.map(({ name }) => name));
  for (const name of names) expect(["svg", "title", "g", "path"]).toContain(name);
  const allowed: Readonly<Record<string, readonly string[]>> = {
    svg: ["xmlns", "width", "height", "viewBox"],
    title: [],
    g: ["id"],
    path: ["d", "fill", "stroke", "stroke-width"],
  };
  const faults: string[] = [];
  for (const { name, attributes } of elements) {
    for (const attribute of Object.keys(attributes)) {
      if (allowed[name]?.includes(attribute) !== true) faults.push(`${name} has ${attribute}`);
    }
  }
  expect(faults).toEqual([]);
  const groups = root.children.filter(({ name }) => name === "g");
  expect(root.children.filter(({ name }) => name === "path")).toEqual([]);
  expect(new Set(groups.map((group) => attributeOf(group, "id"))).size).toBe(groups.length);

  const [left, top, width = 0, height = 0] = attributeOf(root, "viewBox").split(" ").map(Number);
  expect([left, top]).toEqual([0, 0]);
  for (const group of groups) {
    expect(group.children[0]?.name).toBe("title");
    for (const path of group.children.slice(1)) {
      expect(attributeOf(path, "fill")).toBe("none");
      for (const { points, closed } of subpathsOf(path)) {
        for (const [x, y] of points) {
          if (!(x >= 0 && y >= 0 && x <= width && y <= height)) faults.push(`${x} ${y} is outside`);
        }
        points.slice(1).forEach(([x, y], i) => {
          const before = points[i] as Point;
          if (before[0] === x && before[1] === y) faults.push("a step has no length");
        });
        if (closed && String(points[0]) === String(points.at(-1)))
          faults.push("a closed path repeats its start");
      }
    }
  }
  expect(faults).toEqual([]);
}
