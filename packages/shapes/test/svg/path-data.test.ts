import { describe, expect, test } from "vitest";
import { parsePath } from "../../src/svg/path-data.js";

const commandsOf = (text: string) => parsePath(text, 1000).commands;
const faultOf = (text: string) => parsePath(text, 1000).fault;

/** The end points of the commands. */
const endsOf = (text: string) =>
  commandsOf(text)?.map((command) => ("to" in command ? [command.to.x, command.to.y] : "close"));

describe("path data", () => {
  test.each([
    [
      "M1 2L3 4",
      [
        [1, 2],
        [3, 4],
      ],
    ],
    [
      "M1,2,3,4 5 6",
      [
        [1, 2],
        [3, 4],
        [5, 6],
      ],
    ],
    [
      "m1 2 3 4l1 1",
      [
        [1, 2],
        [4, 6],
        [5, 7],
      ],
    ],
    [
      " \n\tM.5.5-1-2.e1+3e-1.25 ",
      [
        [0.5, 0.5],
        [-1, -20],
        [0.3, 0.25],
      ],
    ],
    ["M1e3 1E+2", [[1000, 100]]],
    [
      "M10 10h5 5v2H0V1",
      [
        [10, 10],
        [15, 10],
        [20, 10],
        [20, 12],
        [0, 12],
        [0, 1],
      ],
    ],
    ["M10 10h5zl1 1", [[10, 10], [15, 10], "close", [11, 11]]],
    ["m10 10h5zm1 1", [[10, 10], [15, 10], "close", [11, 11]]],
    [
      "M0 0a1 2 30 01.5.5 1 2 30 1 0 3 3",
      [
        [0, 0],
        [0.5, 0.5],
        [3.5, 3.5],
      ],
    ],
    ["M007 0", [[7, 0]]],
    ["", []],
  ])("%j ends at %j", (text, ends) => expect(endsOf(text)).toEqual(ends));

  test("smooth curves mirror the control point before them, and start flat after anything else", () => {
    expect(commandsOf("M0 0C1 2 3 4 5 5S8 8 9 9")?.[2]).toMatchObject({
      kind: "cubic",
      first: { x: 7, y: 6 },
    });
    expect(commandsOf("M0 0L5 5S8 8 9 9")?.[2]).toMatchObject({ kind: "cubic", first: { x: 5, y: 5 } });
    expect(commandsOf("M0 0Q1 3 4 4t4 0 4 0")?.slice(2)).toEqual([
      { kind: "quadratic", control: { x: 7, y: 5 }, to: { x: 8, y: 4 } },
      { kind: "quadratic", control: { x: 9, y: 3 }, to: { x: 12, y: 4 } },
    ]);
    expect(commandsOf("M0 0C1 1 2 2 3 3T5 3")?.[2]).toMatchObject({ control: { x: 3, y: 3 } });
    expect(commandsOf("M1 1q2 0 2 2zt3 3")?.[3]).toMatchObject({
      control: { x: 1, y: 1 },
      to: { x: 4, y: 4 },
    });
  });

  test("arcs keep their flags, and radii below nothing lose their sign", () => {
    expect(commandsOf("M0 0A-5 6 7 1 0 8 9")?.[1]).toEqual({
      kind: "arc",
      radiusX: 5,
      radiusY: 6,
      turned: 7,
      isLarge: true,
      isSweeping: false,
      to: { x: 8, y: 9 },
    });
  });

  test.each([
    ["L1 1", 1, "M or m, since path data begin with a move"],
    ["x", 1, "M or m"],
    ["M1", 3, "a number"],
    ["M1 1L", 6, "a number"],
    ["M1 1 2", 7, "a number"],
    ["M1 1,L2 2", 6, "a number after the comma"],
    ["M1 1,,2 2", 6, "a number after the comma"],
    ["M,1 1", 2, "a number"],
    ["M1 1X", 5, "a command letter or a number"],
    ["M1 1a1 1 0 2 1 1 1", 12, "a flag, 0 or 1"],
    ["M1 1z2 2", 6, "a command letter or a number"],
    ["M1 1Lé", 6, "a number"],
    ["M1 1L1e 5", 7, "a number"],
    ["M--1 1", 2, "a number"],
    ["M1 1r5 5 6 6", 5, "a command letter or a number"],
  ])("%j fails at character %d: %s", (text, at, expected) => {
    expect(faultOf(text)).toMatchObject({ at, expected, isTooLarge: false });
  });

  test("numbers that cannot be held are told apart", () => {
    expect(faultOf("M1 1e400")).toMatchObject({ at: 4, isTooLarge: true });
  });

  test("no more commands are read than wanted", () => {
    expect(parsePath("M0 0 1 1 2 2 3 3", 4).fault).toBeNull();
    expect(parsePath("M0 0 1 1 2 2 3 3 4 4", 4).fault).toBe("too-many");
    expect(parsePath("M0 0zzzzzzz", 4).fault).toBe("too-many");
  });
});
