/** Turns the plain data of a project file of one version into those of the next. */
export type Migration = (data: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/** The version of the format that this reader knows. */
export const FORMAT_VERSION = 1;

/** For each earlier version the way from it to the next. Version 1 is the first, so there is none yet. */
export const MIGRATIONS: ReadonlyMap<number, Migration> = new Map();

/**
 * Brings data of an earlier version to a later one, one version after the other. Throws a RangeError where a step is
 * missing: a version that was once published must always be readable.
 */
export function migrate(
  data: Readonly<Record<string, unknown>>,
  from: number,
  to: number,
  migrations: ReadonlyMap<number, Migration>,
): Readonly<Record<string, unknown>> {
  let current = data;
  for (let version = from; version < to; version++) {
    const step = migrations.get(version);
    if (step === undefined) throw new RangeError(`Expected a way from version ${version} to ${version + 1}.`);
    current = { ...step(current), sheetwright: version + 1 };
  }
  return current;
}
