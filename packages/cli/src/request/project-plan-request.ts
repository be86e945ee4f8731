import { type Fault, quote } from "../fault.js";
import { freeWords, ONE_NAME } from "./free-words.js";
import { optionReader } from "./option-reader.js";
import {
  OPTION_KEYS,
  type OptionKey,
  PLAN_OPTIONS,
  suggestOption,
  type WrittenOptions,
} from "./plan-options.js";
import { readSharedOptions, type SharedOptions } from "./shared-options.js";

/** What `sheetwright plan FILE` is asked, read and checked. */
export interface ProjectPlanRequest extends SharedOptions {
  /** Path of the project file, as given. */
  readonly file: string;
  /** Path of the folder, as given. */
  readonly out: string;
  /** Path of the stock file, as given; `null`: counts and offcuts are those of the project. */
  readonly stock: string | null;
  /** Path of the folder of a plan that is booked in the stock and gone on from, as given; `null`: all is cut anew. */
  readonly after: string | null;
}

/** A request as far as it could be read, so that what it names can be looked at even where something else is wrong. */
export interface ReadProjectPlanRequest {
  /** `null` where there are faults. */
  readonly request: ProjectPlanRequest | null;
  readonly faults: readonly Fault[];
  readonly file: string | null;
  readonly out: string | null;
  readonly force: boolean;
}

/** True for the name of a file that is more likely a project than a list of pieces. */
export function isProjectName(name: string): boolean {
  return /\.(ya?ml|json)$/i.test(name);
}

/** True where a plan is asked from a list of pieces: `--pieces` says so, or without a file an option that only it has. */
export function asksForList(written: WrittenOptions, rest: readonly string[]): boolean {
  if (written.pieces !== undefined) return true;
  return projectFileOf(rest) === undefined && listOptions(written).length > 0;
}

/** The project file among the words beside known options: the first, or else what follows an unknown option. */
function projectFileOf(rest: readonly string[]): string | undefined {
  return freeWords(rest).words[0] ?? rest.find((word) => !word.startsWith("-") && isProjectName(word));
}

/**
 * Reads the options of a plan from a project and collects every fault.
 *
 * @param rest what stands on the command line beside known options: the project file, and faults.
 */
export function readProjectPlanRequest(
  written: WrittenOptions,
  rest: readonly string[],
): ReadProjectPlanRequest {
  const file = projectFileOf(rest) ?? null;
  const others = rest.filter((_, index) => index !== rest.indexOf(file ?? ""));
  const reader = optionReader(written, others, {
    suggest: suggestOption,
    help: `One project file is planned at a time. ${ONE_NAME}`,
  });
  const out = reader.required("out");
  const stock = written.stock === undefined ? null : reader.required("stock");
  const after = written.after === undefined ? null : reader.required("after");
  if (after !== null && written.stock === undefined) {
    const message =
      "this has no meaning without --stock, the stock that the plan is booked in. Give that too.";
    reader.report("after", "no-meaning", message);
  }
  const shared = readSharedOptions(written, reader);
  for (const key of listOptions(written)) {
    const { inProject } = PLAN_OPTIONS[key];
    const message = `this option is for a list of pieces. A project says it in its file: ${inProject}.`;
    reader.report(key, "other-form", message);
  }
  const faults = [...faultsOfName(file), ...reader.faults()];
  const read = { faults, file, out, force: shared.force };
  if (faults.length > 0 || file === null || out === null) return { ...read, request: null };
  return { ...read, request: { file, out, stock, after, ...shared } };
}

function faultsOfName(file: string | null): readonly Fault[] {
  const place = { option: "sheetwright plan" };
  if (file === null) {
    const message =
      "the project file is missing. Give its name, such as sheetwright plan cards.yaml --out plan; " +
      "for a list of pieces give --pieces and --sheet.";
    return [{ code: "option-missing", place, message }];
  }
  if (!/\.(csv|tsv|txt)$/i.test(file)) return [];
  const message =
    `${quote(file)} is no project file by its name, expected one that ends in .yaml or .json. ` +
    `For a list of pieces give --pieces ${file} and --sheet.`;
  return [{ code: "not-a-project", place, message }];
}

type ListOption = {
  [Key in OptionKey]: (typeof PLAN_OPTIONS)[Key] extends { readonly inProject: string } ? Key : never;
}[OptionKey];

/** The options given that only a list of pieces has. */
function listOptions(written: WrittenOptions): readonly ListOption[] {
  const isListOption = (key: OptionKey): key is ListOption => "inProject" in PLAN_OPTIONS[key];
  return OPTION_KEYS.filter(isListOption).filter((key) => written[key] !== undefined);
}
