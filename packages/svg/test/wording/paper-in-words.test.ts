import { expect, test } from "vitest";
import { paperInWords } from "../../src/wording/paper-in-words.js";
import { paper } from "../card/build.js";
import { papers } from "../card/example-papers.js";

const pad = paper({
  id: "dunes",
  colour: "#d8c7a0",
  name: "Dunes",
  material: "pad",
  designs: [{ id: "ripples", colour: "#d8c7a0" }],
});

test("papers are called by their names, designs of a pad after it, even where there is one only", () => {
  const words = (...faces: readonly string[]) => paperInWords({ faces }, [...papers, pad]);
  expect(words("night")).toBe("Night blue");
  expect(words("stars.comets")).toBe("Star pad: Comets");
  expect(words("dunes.ripples")).toBe("Dunes: ripples");
  expect(words("stars.comets", "stars.dots", "night")).toBe("Star pad: Comets or Dots or Night blue");
  expect(words("stars.comets", "stars.dots", "stars.plain-sky")).toBe("any of Star pad");
});

test("faces that no paper has are left out", () => {
  expect(paperInWords({ faces: ["elsewhere"] }, papers)).toBe("");
});
