import { type PackAsyncOptions, type Packing, type Problem, packAsync } from "@sheetwright/packing";
import type { PlanProgress, Search } from "./group-search.js";

/** Packs one problem as `packAsync` does, such as `packSpread` with threads at hand. */
export type Packer = (problem: Problem, options: PackAsyncOptions) => Promise<Packing>;

/** How the packings that a search asks for are made. */
export interface DriveOptions {
  /** Ends the search early once `aborted` is true; the best so far is returned. */
  readonly signal?: { readonly aborted: boolean } | undefined;
  /** Gives way to other work between steps, such as `() => new Promise((done) => setTimeout(done))`. */
  readonly pause?: (() => Promise<void>) | undefined;
  readonly onProgress?: ((progress: PlanProgress) => void) | undefined;
  /** What packs the problems (default `packAsync`); the same bytes must come out, wherever it does its work. */
  readonly packer?: Packer | undefined;
}

/** Runs a search to its end, pausing between steps. */
export async function driveSearch<Found>(
  requests: Search<Found>,
  { signal, pause, onProgress, packer = packAsync }: DriveOptions,
): Promise<Found> {
  let request = requests.next();
  while (!request.done) {
    const { problem, options: own, ...place } = request.value;
    const packing = await packer(problem, {
      ...own,
      signal,
      pause,
      onProgress: (progress) => onProgress?.({ ...place, progress }),
    });
    // A packing may take fewer steps than there are between two pauses.
    await pause?.();
    request = requests.next({ packing, stopped: signal?.aborted ?? false });
  }
  return request.value;
}
