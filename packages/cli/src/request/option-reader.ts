import { faultsOfRest, type RestWords } from "./free-words.js";
import { type OptionKey, PLAN_OPTIONS, type WrittenOptions } from "./plan-options.js";
import { type TableReader, tableReader } from "./table-reader.js";

/** Reads the written options of a plan one by one. */
export type OptionReader = TableReader<OptionKey>;

/**
 * Makes a reader of the written options of a plan.
 *
 * @param rest what stands on the command line beside known options: faults, all of it.
 * @param words how these are told.
 */
export function optionReader(
  written: WrittenOptions,
  rest: readonly string[],
  words?: RestWords,
): OptionReader {
  const reader = tableReader<OptionKey>(PLAN_OPTIONS, written);
  return { ...reader, faults: () => [...faultsOfRest(rest, words), ...reader.faults()] };
}
