import { type Fault, quote } from "../fault.js";
import { suggestOption } from "./plan-options.js";

/** What stands on a command line beside known options and their values. */
export interface FreeWords {
  /** Words that are no option. */
  readonly words: readonly string[];
  /** Options that are not known. */
  readonly unknown: readonly string[];
}

/** Tells words from unknown options. A word after an unknown option is most likely its value: one fault is enough. */
export function freeWords(rest: readonly string[]): FreeWords {
  const isOption = (word: string): boolean => word.startsWith("-") && word.length > 1;
  const words = rest.filter((word, index) => {
    const before = rest[index - 1] ?? "";
    return !isOption(word) && (!before.startsWith("--") || before.includes("="));
  });
  return { words, unknown: rest.filter(isOption) };
}

/** How faults of free words are told. */
export interface RestWords {
  /** The known option that an unknown one was probably meant to be. */
  readonly suggest: (option: string) => string | undefined;
  /** What would help where a word stands that nobody expects. */
  readonly help: string;
}

/** For a list of pieces, which is named by an option. */
const FOR_LIST: RestWords = {
  suggest: suggestOption,
  help: 'A value with spaces in it goes in quotes, such as --sheet "8 1/2 x 11 in".',
};

/** For a command that was given its one file or folder. */
export const ONE_NAME = "A name with spaces in it goes in quotes.";

/** The faults of what stands beside known options, where nothing should. */
export function faultsOfRest(
  rest: readonly string[],
  { suggest, help }: RestWords = FOR_LIST,
): readonly Fault[] {
  const { words, unknown } = freeWords(rest);
  const faults = unknown.map((option): Fault => {
    const known = suggest(option);
    const meant = known === undefined ? "" : ` Did you mean ${known}?`;
    return { code: "unknown-option", place: { option }, message: `this option is not known.${meant}` };
  });
  if (words.length === 0) return faults;
  const message = `nothing was expected here. ${help}`;
  return [...faults, { code: "extra-word", place: { option: quote(words.join(" ")) }, message }];
}
