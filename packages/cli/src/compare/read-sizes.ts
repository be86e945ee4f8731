import type { Unit } from "@sheetwright/measure";
import type { ComparedSize } from "@sheetwright/planner";
import { quote } from "../fault.js";
import { readSheetSize } from "../request/sheet-size.js";

/** Sizes of sheets, or what is wrong with them, one sentence a size. */
export interface ReadSizes {
  readonly sizes: readonly ComparedSize[];
  readonly faults: readonly { readonly code: string; readonly message: string }[];
}

/** More sizes fill no chart that can be read. */
const MOST_SIZES = 60;

/** Reads sizes of sheets with commas between them, each with the cost of a sheet behind `=` where that is known. */
export function readSizes(text: string, unit: Unit): ReadSizes {
  const sizes: ComparedSize[] = [];
  const faults: { code: string; message: string }[] = [];
  const words = text.split(",");
  for (const word of words.slice(0, MOST_SIZES)) {
    const [sizeText = "", costWord, ...more] = word.split("=");
    const read = readSheetSize(sizeText, unit);
    if ("message" in read) {
      faults.push(read);
      continue;
    }
    const cost = costWord?.trim().replace(/^[$€£]\s*/, "") ?? null;
    if (more.length > 0 || (cost !== null && !/^\d{1,9}(\.\d{1,4})?$/.test(cost))) {
      const message = `found ${quote(word.trim())}, expected the cost of a sheet behind =, with a dot and at most four decimals, such as us-letter=0.35.`;
      faults.push({ code: "not-a-cost", message });
      continue;
    }
    if (sizes.some(({ id }) => id === read.id)) {
      faults.push({
        code: "size-twice",
        message: `${quote(read.id)} is there twice. Leave one of the two out.`,
      });
      continue;
    }
    const { id, name, width, height } = read;
    sizes.push({ id, name, width, height, cost });
  }
  if (words.length > MOST_SIZES) {
    const message = `found ${words.length} sizes, expected at most ${MOST_SIZES}. Compare them in several runs.`;
    faults.push({ code: "too-many", message });
  }
  return { sizes, faults };
}
