import type { Insert } from "../project.js";
import type { Written } from "./check-structure.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import { CLASSIC_BORDER } from "./read-extent.js";
import { readLength } from "./read-measures.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** Reads the insert of a card. */
export function readInsert(
  insert: Written<NonNullable<ProjectFile["cards"][number]["insert"]>>,
  path: string,
  reading: ChoiceReading,
): Insert {
  const border = readLength(insert.border, pathTo(path, "border"), reading, { allowZero: true });
  return {
    path,
    paper: readChoice(insert.paper, pathTo(path, "paper"), reading) ?? { faces: [], text: "" },
    border: border ?? CLASSIC_BORDER[reading.unit],
    grain: insert.grain ?? "prefer",
  };
}
