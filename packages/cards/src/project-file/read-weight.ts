import { type PaperGrade, paperGrades } from "@sheetwright/measure";
import type { PaperWeight } from "../project.js";
import { nearestWord } from "./nearest-word.js";
import type { Reading } from "./reading.js";
import { listWords, quote } from "./say-value.js";

const GRADES: readonly PaperGrade[] = ["bond", "text", "cover", "index", "bristol", "tag"];
const METRIC = /^(\d{1,4}(?:\.\d{1,2})?) ?(?:g\/m2|g\/m²|gsm)$/i;
const POUNDS = /^(\d{1,4}(?:\.\d{1,2})?) ?(?:lbs?\.?|#)(?: ([a-z]+)(?: (?:weight|stock|paper))?)?$/i;
/** Words on labels that say what a paper is, and nothing of its grade. */
const NO_GRADE = /^(?:cardstock|card|paper|weight)$/;

/** Reads a weight as a paper's label states it: `216 gsm`, `216 g/m2`, `80 lb`, `80 lb cover`, `60 lb offset`. */
export function readWeight(text: string | null, path: string, { faults }: Reading): PaperWeight | null {
  if (text === null) return null;
  const grammage = Number(METRIC.exec(text)?.[1] ?? 0);
  if (grammage > 0) return { unit: "g/m2", grammage, text };
  const pounds = POUNDS.exec(text);
  const word = pounds?.[2];
  const label = word?.toLowerCase() ?? "";
  const grade =
    paperGrades.find(({ id, alsoCalled }) => id === label || alsoCalled.includes(label))?.id ?? null;
  const weight = Number(pounds?.[1] ?? 0);
  if (weight > 0 && (word === undefined || grade !== null || NO_GRADE.test(label)))
    return { unit: "lb", pounds: weight, grade, text };
  const suggestion = word === undefined ? null : nearestWord(word, GRADES);
  const meant = suggestion === null ? "" : ` Did you mean ${suggestion}?`;
  faults.report({
    code: "wrong-type",
    path,
    found: text,
    expected: "a weight with its unit",
    message: `${quote(text)} is not a weight.${meant} Write it as the label does, such as 216 gsm, 80 lb or 80 lb cover; after lb may come ${listWords(GRADES, "or")}.`,
    suggestion,
  });
  return null;
}
