import type { LayerJoin } from "../project.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import type { WrittenLayer } from "./read-layers.js";
import { readSeamKeys } from "./read-seam.js";
import { listWords } from "./say-value.js";
import { pathTo } from "./value-path.js";

const WAYS = ["ends", "parts", "hide"] as const;

/** Keys that say something of one way alone. */
const OF_ENDS = ["at"] as const;
const OF_SEAMS = ["cover", "ribbon", "tape", "bare", "width", "gap", "colour"] as const;

/** Reads how a layer is made up where its paper is smaller; nothing where the file says nothing of it. */
export function readJoin(
  join: WrittenLayer["join"],
  path: string,
  reading: ChoiceReading,
): { readonly join?: LayerJoin } {
  if (join === undefined) return {};
  const [way, other] = WAYS.filter((key) => key in join);
  const expected = "one of the keys ends, parts and hide";
  if (way === undefined) {
    const message = `This join does not say how. Write ${listWords(["ends: cream", "parts: 2", "hide: below the layer"], "or")}.`;
    reading.faults.report({ code: "missing", path, found: join, expected, message });
    return {};
  }
  if (other !== undefined) {
    const message = `A layer is made up in one way, and here are ${way} and ${other}. Leave one of the two out.`;
    reading.faults.report({
      code: "contradiction",
      path: pathTo(path, other),
      found: other,
      expected,
      message,
    });
  }
  if (way !== "ends") refuse(join, OF_ENDS, "says where ends of another paper are", path, reading);
  if (way === "hide") {
    refuse(join, OF_SEAMS, "is for seams, and what is cut short has none", path, reading);
    return { join: { by: "hide" } };
  }
  const { ends, at, parts, hide: _, ...keys } = join;
  const seam = OF_SEAMS.some((key) => key in join) ? readSeamKeys(keys, path, reading) : null;
  if (way === "parts") return { join: { by: "parts", parts: parts === 3 ? 3 : 2, seam } };
  const paper = readChoice(ends, pathTo(path, "ends"), reading) ?? { faces: [], text: "" };
  return { join: { by: "ends", paper, at: at === "one end" ? "one" : "both", seam } };
}

function refuse(
  join: NonNullable<WrittenLayer["join"]>,
  keys: readonly (keyof NonNullable<WrittenLayer["join"]>)[],
  why: string,
  path: string,
  { faults }: ChoiceReading,
): void {
  for (const key of keys) {
    if (!(key in join)) continue;
    faults.report({
      code: "contradiction",
      path: pathTo(path, key),
      found: join[key],
      expected: `no ${key}`,
      message: `The key ${key} ${why}. Leave it out.`,
    });
  }
}
