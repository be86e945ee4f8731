import { describe, expect, it } from "vitest";
import { nearestWord } from "../../src/project-file/nearest-word.js";

describe("the word that was probably meant", () => {
  it.each([
    ["boarder", ["border", "bands"], "border"],
    ["Border", ["border"], "border"],
    ["one way", ["two-way", "one-way"], "one-way"],
    ["longestcut", ["longest-cut"], "longest-cut"],
    ["nigth", ["night", "nine"], "night"],
    ["pda", ["pad"], "pad"],
    ["colr", ["color", "colour"], "color"],
    ["gatefold", ["side", "gate"], "gate"],
    ["stripes-all-over", ["strip", "stripes"], "stripes"],
    ["topmost of all", ["top"], null],
    ["x", ["size", "mat"], null],
    ["", ["mat"], null],
    ["a", ["b"], null],
    ["nothing like it", ["mat", "panel"], null],
    ["mat".repeat(50), ["mat"], null],
  ])("for %s of %j is %s", (text, words, meant) => {
    expect(nearestWord(text, words)).toBe(meant);
  });
});
