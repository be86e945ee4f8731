import { expect, test } from "vitest";
import { readPublishedResults } from "../../src/instances/published-results.js";

const document = {
  algorithms: { ABC: "A, B & C 2001" },
  binSums: [
    {
      class: 1,
      n: 20,
      OG: { lb: 70, proven: 9, best: 71, ABC: 72, DEF: 71 },
      RG: { lb: 60, best: 60, ABC: 60 },
    },
  ],
  utilisation2VSBP_OG: { ortmann: { Nice: { ABC: 90 }, average: { ABC: 91.5, DEF: 92.25 } } },
};

test("sums and utilisations are found by family, class, pieces and turns", () => {
  const read = readPublishedResults(document, "p.json");
  if ("faults" in read) throw new Error("faults");
  expect(read.sumsOf("bw-mv", { class: 1, n: 20 }, false)).toEqual({
    best: 71,
    bound: 70,
    byMethod: new Map([
      ["ABC", 72],
      ["DEF", 71],
    ]),
  });
  expect(read.sumsOf("bw-mv", { class: 1, n: 20 }, true)?.best).toBe(60);
  expect(read.sumsOf("bw-mv", { class: 1, n: 40 }, false)).toBeNull();
  expect(read.sumsOf("tiles", { class: 1, n: 20 }, false)).toBeNull();
  expect(read.utilisationOf("ortmann-vs", false)).toEqual({ percent: 92.25, method: "DEF" });
  expect([read.utilisationOf("ortmann-vs", true), read.utilisationOf("hopper-turton-m", false)]).toEqual([
    null,
    null,
  ]);
  expect(read.methods.get("ABC")).toBe("A, B & C 2001");
});

test("what is no published result is refused with its place", () => {
  const read = readPublishedResults({ binSums: [{ class: "one" }] }, "p.json");
  expect("faults" in read && read.faults.map(({ where }) => where)).toContain("p.json, binSums.0.class");
});
