/** What `verify` finds, and every code that it may find it under. */

/**
 * Every code of a {@link Finding}, with what it means.
 *
 * @example
 * findingCodes.overlap // => "Two pieces lie on each other."
 */
export const findingCodes = {
  // The data.
  "bad-problem": "The problem itself is malformed, so no plan can be judged against it.",
  "missing-value": "A value that a packing must have is absent.",
  "wrong-type": "A value is of another type than the packing needs there.",
  "unknown-word": "A text is none of the words that are known there.",
  "out-of-range": "A number is not whole, too small, or beyond 2^53.",
  "unknown-sheet": "A layout names a sheet that the problem does not have.",
  "unknown-kind": "A share or a count names a kind that the problem does not have.",
  "unknown-form": "A share names a form that its kind does not have.",
  "too-large": "The packing has more nodes than are checked.",
  "more-findings": "There are more findings than are listed.",
  "wrong-version": "The packing is of another version of the format.",
  "wrong-mode": "The packing was made for another mode than the problem's.",
  "wrong-aim": "The packing, or its bound, was made for another aim than the problem's.",
  // Where the pieces lie, by absolute rectangles.
  overlap: "Two pieces lie on each other.",
  "too-close": "Two pieces lie closer than the kerf of the cut between them.",
  outside: "A piece reaches out of the usable part of its sheet, or out of its window.",
  // How the pieces are cut, by the cut tree.
  "parts-too-large":
    "The parts of a split, with the kerfs between them, need more than the part that is cut.",
  "parts-too-small": "The parts of a split leave more of the part that is cut than one kerf.",
  "no-cut": "A split makes no cut.",
  "cut-too-long": "A cut is longer than the tool's longest.",
  "too-many-stages": "There are more levels of parallel cuts than the problem allows.",
  "not-shelf": "The cuts are not strips, pieces from the strips, and one last trim a piece.",
  "stopped-cuts": "Cuts stop inside a part where every cut must go from edge to edge.",
  "wrong-lines": "The lines of four stopped cuts leave no room for the five blocks.",
  "stopped-run": "A layout with stopped cuts is cut from more than one sheet at a time.",
  // What is cut.
  "piece-size": "The part of a piece has another size than the piece's form.",
  "sheet-not-allowed": "A piece is cut from a sheet that its form may not be cut from.",
  "turn-not-allowed": "A piece lies in a way that its form may not lie on that sheet.",
  "no-shares": "A place for a piece names no piece.",
  "shares-exceed-run": "A place yields more pieces than sheets are cut.",
  "wrong-leftover": "A leftover is called waste though it is an offcut, or the other way round.",
  "window-not-hidden": "A window reaches out of the part of a piece that no one will see.",
  "window-tool": "A window is opened by another tool than the piece allows.",
  "too-many-placed": "More copies of a kind are placed than may be.",
  "over-stock": "More sheets are used than there are.",
  "together-split": "Kinds that belong together are cut from more than one sheet.",
  // What the packing says of itself.
  "wrong-placed": "The list of placed copies is not what the layouts hold.",
  "wrong-missing": "The list of missing copies is not what is asked for less what is placed.",
  "wrong-sheets": "The number of sheets is not the sum of the runs.",
  "wrong-cost": "The cost is not that of the sheets used.",
  "wrong-value": "The value is not that of the copies placed.",
  "wrong-outcome": "The outcome is not what the layouts and the bound amount to.",
  "wrong-proven": "The plan is called proven though it is not, or the other way round.",
  // The bound.
  "bound-not-proven": "The bound states more than its certificate proves.",
  "bound-understated": "The bound states less than its certificate proves.",
  "not-dual-feasible": "A function of the certificate is not dual-feasible with the parameters given.",
  "certificate-wrong-mode":
    "The certificate holds for edge-to-edge cuts alone, and the problem allows others.",
  "certificate-too-large": "Proving the certificate again takes longer than is tried.",
  "certificate-sheet-missing": "The certificate gives no weights for a sheet that pieces can be cut from.",
  "certificate-sheet-extra": "The certificate gives weights for a sheet that no piece can be cut from.",
  "certificate-sheet-twice": "The certificate gives weights for a sheet more than once.",
  "certificate-fits": "The certificate says that a kind fits no sheet, but it does, or none is wanted.",
} as const;

/** A code of a {@link Finding}; what each means is in {@link findingCodes}. */
export type FindingCode = keyof typeof findingCodes;

/** What a finding shows of a value: plain JSON; large whole numbers as decimal text. */
export type FindingValue = string | number | boolean | null;

/** One thing that is wrong, and where. */
export interface Finding<Code extends string = FindingCode> {
  readonly code: Code;
  /**
   * Place of the value, such as `layouts[2].tree.parts[0].size`; `packing` for the whole; values of the problem start
   * with `problem`.
   */
  readonly path: string;
  /** Full sentences: what is wrong, where, what was found and expected, and what would help. */
  readonly message: string;
  readonly found?: FindingValue;
  readonly expected?: FindingValue;
}

/** Takes one thing that is wrong. Values that JSON cannot hold are shown as text. */
export type Report<Code extends string = FindingCode> = (
  code: Code,
  path: string,
  message: string,
  found?: unknown,
  expected?: unknown,
) => void;

/** So many findings are listed; a plan that is wrong in more places is not read any better with all of them. */
const mostFindings = 1000;

/** A list of findings that grows, and what adds to it. */
export interface Findings {
  readonly list: readonly Finding[];
  readonly report: Report;
}

/** Starts an empty list. After 1,000 findings one `more-findings` closes it. */
export function startFindings(): Findings {
  const list: Finding[] = [];
  const report: Report = (code, path, message, found, expected) => {
    if (list.length < mostFindings) {
      list.push({
        code,
        path,
        message,
        ...(found === undefined ? {} : { found: findingValue(found) }),
        ...(expected === undefined ? {} : { expected: findingValue(expected) }),
      });
    } else if (list.length === mostFindings) {
      const message = `More than ${mostFindings} things are wrong; the rest is left out. Correct these first.`;
      list.push({ code: "more-findings", path: "packing", message });
    }
  };
  return { list, report };
}

function findingValue(value: unknown): FindingValue {
  if (value === null || typeof value === "boolean") return value;
  if (typeof value === "string") return value.length <= 200 ? value : `${value.slice(0, 199)}…`;
  if (typeof value === "number" && Number.isFinite(value)) return value;
  return shown(value);
}

/** Words a value of any type for a sentence: text quoted and cut after 40 characters, lists and objects by their kind. */
export function shown(value: unknown): string {
  if (typeof value === "string") return JSON.stringify(value.length <= 40 ? value : `${value.slice(0, 39)}…`);
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  if (typeof value === "object") return "an object";
  if (typeof value === "function") return "a function";
  return String(value);
}
