import type { BandParts, BandShares, Choice, InnerBands, Run } from "../project.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import type { WrittenLayer } from "./read-layers.js";
import { readLength } from "./read-measures.js";
import { readSeam } from "./read-seam.js";
import { BAND_WORDS } from "./schema/band-schema.js";
import { pathTo } from "./value-path.js";

type WrittenPaper = NonNullable<WrittenLayer["papers"]>[number];
type WrittenInner = Exclude<NonNullable<WrittenPaper>, string | readonly unknown[]>;

/** How deep bands may divide bands. */
const DEEPEST = 8;
const NO_CHOICE: Choice = { faces: [], text: "" };
const OTHER: Readonly<Record<Run, Run>> = { across: "upright", upright: "across" };

/** Reads how something is divided into bands, and bands that divide one of them. */
export function readBandParts(
  written: Pick<WrittenLayer, "bands" | "papers" | "runs" | "seam">,
  path: string,
  reading: ChoiceReading,
  usual: Run = "across",
  depth = 1,
): BandParts {
  const at = (key: "bands" | "papers" | "seam") => pathTo(path, key);
  const { bands, papers = [], runs = usual } = written;
  const shares = readShares(bands, at("bands"), reading);
  const count = shares.by === "ratio" ? shares.ratios.length : shares.widths.length;
  const isKnown = bands !== undefined && reading.faults.isSound(at("bands"));
  if (isKnown && written.papers !== undefined && count !== papers.length) {
    const message = `There are ${count} bands and ${papers.length === 1 ? "1 paper" : `${papers.length} papers`}. Name one paper for each band; a list inside the list gives one band a choice.`;
    reading.faults.report({
      code: "contradiction",
      path: at("papers"),
      found: papers,
      expected: `${count} papers`,
      message,
    });
  }
  return {
    runs,
    shares,
    papers: papers.map((paper, index) => {
      const own = pathTo(at("papers"), index);
      return isInner(paper)
        ? readInner(paper, own, reading, OTHER[runs], depth)
        : (readChoice(paper, own, reading) ?? NO_CHOICE);
    }),
    seam: readSeam(written.seam, at("seam"), reading),
  };
}

function isInner(paper: WrittenPaper): paper is WrittenInner {
  return typeof paper === "object" && !Array.isArray(paper);
}

function readInner(
  inner: WrittenInner,
  path: string,
  reading: ChoiceReading,
  usual: Run,
  depth: number,
): InnerBands | Choice {
  if (depth < DEEPEST) return { path, ...readBandParts(inner, path, reading, usual, depth + 1) };
  const message = `Bands divide bands more than ${DEEPEST} deep here. Lay panels or strips on some of them instead.`;
  reading.faults.report({
    code: "too-many",
    path,
    found: inner,
    expected: `at most ${DEEPEST} levels`,
    message,
  });
  return NO_CHOICE;
}

type WrittenShares = Exclude<WrittenLayer["bands"], string | undefined>;

function isRatios(bands: WrittenShares): bands is Extract<WrittenShares, readonly unknown[]> {
  return Array.isArray(bands);
}

function readShares(bands: WrittenLayer["bands"], path: string, reading: ChoiceReading): BandShares {
  if (bands === undefined) return { by: "ratio", ratios: [] };
  if (typeof bands === "string") return { by: "ratio", ratios: BAND_WORDS[bands] };
  if (isRatios(bands)) return { by: "ratio", ratios: bands.map((ratio) => ratio ?? 1) };
  const widthsPath = pathTo(path, "widths");
  const widths = (bands.widths ?? []).map((width, index) =>
    typeof width === "string" && width.trim().toLowerCase() === "rest"
      ? ("rest" as const)
      : (readLength(width, pathTo(widthsPath, index), reading) ?? 1),
  );
  const rests = widths.flatMap((width, index) => (width === "rest" ? [index] : []));
  for (const index of rests.slice(1)) {
    const message =
      "Another band is the rest already, so that nobody could tell how wide each is. Give this one a width.";
    reading.faults.report({
      code: "contradiction",
      path: pathTo(widthsPath, index),
      found: "rest",
      expected: "rest once",
      message,
    });
  }
  return { by: "width", widths };
}
