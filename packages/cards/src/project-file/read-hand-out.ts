import type { Kits } from "../project.js";
import type { Written } from "./check-structure.js";
import type { Reading } from "./reading.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

/** How a paper or an item is handed out. */
export interface HandOut {
  /** Bags that its sheets go into whole; `null` where it is cut for all. */
  readonly bags: number | null;
  /** Bags that a number of its sheets is told for: 1 where it is told for all together. */
  readonly countsFor: number;
}

const IN_ONE_PILE: HandOut = { bags: null, countsFor: 1 };

/** Reads how a paper or an item is handed out; both keys say something only of kits, and are a fault in a class. */
export function readHandOut(
  paper: Pick<Written<ProjectFile["papers"][string]>, "hand-out" | "count-for">,
  path: string,
  kits: Kits | null,
  { faults }: Reading,
  all: "papers" | "items" = "papers",
): HandOut {
  if (kits === null) {
    for (const key of ["hand-out", "count-for"] as const) {
      const found = paper[key];
      if (found === undefined) continue;
      const message = `In a class all ${all} lie in one pile, so ${key} says nothing. Leave it out, or write share: kits beside the title to pack a bag for each guest.`;
      const expected = "share: kits, or no such key";
      faults.report({ code: "contradiction", path: pathTo(path, key), found, expected, message });
    }
    return IN_ONE_PILE;
  }
  const isWhole = (paper["hand-out"] ?? "whole") === "whole";
  const isForBag = (paper["count-for"] ?? (isWhole ? "bag" : "all")) === "bag";
  return { bags: isWhole ? kits.bags : null, countsFor: isForBag ? kits.bags : 1 };
}
