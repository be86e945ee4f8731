import fc from "fast-check";
import { type Expansion, expandProject, type Project } from "../src/index.js";
import type { FileObject } from "./random-draw.js";
import { projectOf, randomProject } from "./random-project.js";

/** A project made at random, and what it was worked out to be. */
export interface RandomExpansion {
  readonly file: FileObject;
  readonly project: Project;
  readonly expansion: Expansion;
}

// Every property is checked on the same projects, so each is read and worked out once for all of them.
const KNOWN = new Map<string, RandomExpansion>();

/**
 * Checks a property of projects made at random.
 *
 * @param times the usual number of projects times so many, for what few of them have.
 */
export function checkProjects(check: (random: RandomExpansion) => void, times = 1): void {
  fc.assert(
    fc.property(randomProject(), (file) => {
      const key = JSON.stringify(file);
      let known = KNOWN.get(key);
      if (known === undefined) {
        const project = projectOf(file);
        known = { file, project, expansion: expandProject(project) };
        KNOWN.set(key, known);
      }
      check(known);
    }),
    { numRuns: times * (fc.readConfigureGlobal().numRuns ?? 100) },
  );
}
