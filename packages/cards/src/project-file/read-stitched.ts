import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import type { Stitched } from "../project.js";
import type { Written } from "./check-structure.js";
import { readLength } from "./read-measures.js";
import type { Reading } from "./reading.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenStitched = Written<NonNullable<ProjectFile["cards"][number]["front"]>[number]>["stitched"];

/** From the edge to a line of stitches: common practice, no source, 2 to 3 mm or about 1/8 in. */
const INSET: Readonly<Record<Unit, Ticks>> = { in: inches(1 / 8), mm: millimetres(3) };

/** Reads a line of stitches; `null` where there is to be none, or its faults are told. */
export function readStitched(
  written: WrittenStitched,
  by: Stitched["by"],
  path: string,
  reading: Reading,
): Stitched | null {
  if (written === undefined || written === false) return null;
  const usual: Stitched = { by, inset: INSET[reading.unit], marks: "dashes" };
  if (written === true) return usual;
  if (typeof written !== "object") {
    const inset = readLength(written, path, reading);
    return inset === null ? null : { ...usual, inset };
  }
  const at = (key: keyof typeof written) => pathTo(path, key);
  const inset = readLength(written.inset, at("inset"), reading) ?? usual.inset;
  const dash = readLength(written.dash, at("dash"), reading);
  const gap = readLength(written.gap, at("gap"), reading);
  const perInch = written["per-inch"] ?? null;
  if (!reading.faults.isSound(path)) return null;
  if (dash !== null && gap !== null && perInch !== null) {
    const message =
      "A stitch, the gap to the next one and the stitches to the inch say the same twice. Leave one of the three out.";
    const found = written["per-inch"];
    reading.faults.report({
      code: "contradiction",
      path: at("per-inch"),
      found,
      expected: "two of dash, gap and per-inch",
      message,
    });
    return null;
  }
  return {
    ...usual,
    inset,
    marks: written.marks ?? "dashes",
    ...(dash === null ? {} : { dash }),
    ...(gap === null ? {} : { gap }),
    ...(perInch === null ? {} : { perInch }),
  };
}
