import { z } from "zod";
import { oddChecks } from "../../checks/odd-checks.js";
import { says } from "../wording.js";
import { textOf } from "./scalars.js";

/** The codes that can be silenced are there for editors that offer them. */
const code = z.union(
  [z.enum(oddChecks.filter(({ severity }) => severity !== "error").map((check) => check.code)), z.string()],
  says("silencedCheck"),
);

const silence = z.strictObject(
  {
    check: code.describe("The code of the warning or note, such as bare-seam."),
    at: z
      .string(says("silencedAt"))
      .optional()
      .describe(
        "The name of a card, or a place such as cards[0].front[1] or papers.ember. Default: everywhere.",
      ),
    because: textOf("silenceReason").describe("The reason, for those who read the file later."),
  },
  says("silence"),
);

/** The most silences of a project. */
const MOST_SILENCES = 200;

/** What the maker does not want to be told. */
export const silencesSchema = z
  .array(silence, says("silences"))
  .max(MOST_SILENCES, says("silences"))
  .optional()
  .describe("Warnings and notes that are known and meant, each with its reason.");

/** Groups of keys by their wording. */
export const SILENCE_GROUPS = { silence };
