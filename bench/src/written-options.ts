/** Reads the values of options as they were written; whatever is wrong is told to `report`. */
import type { Effort } from "@sheetwright/packing";
import { Option } from "commander";

/** Values by the option's name without dashes, each as often as it was given. */
export type WrittenOptions = Readonly<Record<string, readonly string[] | true | undefined>>;

/** Told where a fault is and what it is. */
export type Report = (where: string, message: string) => void;

/** The efforts, from the least work to the most. */
export const EFFORTS: readonly Effort[] = ["quick", "standard", "thorough"];

/** Seeds are unsigned 32-bit numbers. */
export const LARGEST_SEED = 4_294_967_295;

/** An option that keeps all its values, so that one given twice can be refused. */
export function collectingOption(flags: string, help: string): Option {
  return new Option(flags, help).argParser(
    (value: string, earlier: readonly string[] | undefined): readonly string[] => [...(earlier ?? []), value],
  );
}

/** All values of an option that may be given several times; none that is empty or looks like an option. */
export function allOf(written: WrittenOptions, key: string, report: Report): readonly string[] {
  const given = written[key];
  if (given === undefined || given === true) return [];
  for (const value of given) {
    if (value.trim() === "" || value.startsWith("--")) {
      report(`--${key}`, `found "${value}" where its value should be.`);
    }
  }
  return given;
}

/** The value of an option that may be given once. */
export function onceOf(written: WrittenOptions, key: string, report: Report): string | null {
  const given = allOf(written, key, report);
  if (given.length > 1) report(`--${key}`, `given ${given.length} times, expected once. Keep one of them.`);
  return given[0] ?? null;
}

/** A whole number within a range. */
export function wholeNumberOf(
  written: WrittenOptions,
  key: string,
  { least, most, fallback }: { readonly least: number; readonly most: number; readonly fallback: number },
  report: Report,
): number {
  const text = onceOf(written, key, report);
  if (text === null) return fallback;
  const number = /^\d{1,10}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return number;
  report(`--${key}`, `found "${text}", expected a whole number from ${least} to ${most}.`);
  return fallback;
}

/** Efforts, each once, in their order. */
export function effortsOf(
  written: WrittenOptions,
  fallback: readonly Effort[],
  report: Report,
): readonly Effort[] {
  const given = allOf(written, "effort", report).map((text) => text.trim());
  for (const [i, text] of given.entries()) {
    if (!EFFORTS.some((effort) => effort === text)) {
      report("--effort", `found "${text}", expected ${EFFORTS.join(", ")}.`);
    } else if (given.indexOf(text) !== i) {
      report("--effort", `${text} is given twice. Keep one of them.`);
    }
  }
  return given.length === 0 ? fallback : EFFORTS.filter((effort) => given.includes(effort));
}
