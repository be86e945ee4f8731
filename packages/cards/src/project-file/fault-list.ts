import type { ProjectFault } from "../project-fault.js";
import { sayValue } from "./say-value.js";
import { isWithin } from "./value-path.js";

/** A place in the text of a file, both from 1. */
export interface FilePlace {
  readonly line: number;
  readonly column: number;
}

/** A fault as it is found. */
export interface Mistake extends Pick<ProjectFault, "code" | "path" | "expected" | "message"> {
  /** The value found; it is said in short. */
  readonly found?: unknown;
  readonly suggestion?: string | null;
  /** Where it stands, if that is not the place of its path. */
  readonly place?: FilePlace;
}

/** Collects the faults of a project, each once. */
export interface FaultList {
  readonly report: (mistake: Mistake) => void;
  /** Adds a fault that is complete but for its place. */
  readonly add: (fault: ProjectFault) => void;
  /** Whether nothing is wrong at this path or below. */
  readonly isSound: (path: string) => boolean;
  readonly faults: () => readonly ProjectFault[];
}

/** An empty list of faults. */
export function faultList(): FaultList {
  const faults: ProjectFault[] = [];
  const known = new Set<string>();
  const add = (fault: ProjectFault) => {
    const key = JSON.stringify([fault.code, fault.path, fault.line, fault.column]);
    if (known.has(key)) return;
    known.add(key);
    faults.push(fault);
  };
  return {
    report: ({ code, path, expected, message, found, suggestion = null, place }) => {
      const { line = null, column = null } = place ?? {};
      add({ code, path, line, column, found: sayValue(found), expected, message, suggestion });
    },
    add,
    isSound: (path) => !faults.some((fault) => isWithin(fault.path, path)),
    faults: () => faults,
  };
}
