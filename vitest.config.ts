import { basename } from "node:path";
import { fileURLToPath } from "node:url";
import { defaultClientConditions, defaultServerConditions } from "vite";
import { defineConfig } from "vitest/config";
import { workspacePackages } from "./.ci/workspace.mjs";

// Tests run on src: no build stands between a change and its test.
const source = "@sheetwright/source";

// Files of one project share what they import, which halves the time of the smaller ones. Tests that put stand-ins in the
// place of modules would reach other files, so they have an end of their own.
const ISOLATED = "test/**/*.isolated.test.ts";

function project(
  folder: string,
  name: string,
  files: { readonly include: string[]; readonly exclude?: string[]; readonly isolate: boolean },
) {
  return {
    resolve: { conditions: [source, ...defaultClientConditions] },
    ssr: { resolve: { conditions: [source, ...defaultServerConditions] } },
    test: {
      name,
      root: folder,
      ...files,
      setupFiles: [fileURLToPath(new URL(".ci/test-setup.ts", import.meta.url))],
      // Time is never what a test judges; the limit only ends one that hangs.
      testTimeout: 120_000,
      hookTimeout: 120_000,
    },
  };
}

export default defineConfig({
  test: {
    reporters: ["default", "./.ci/closing-line.mjs"],
    maxWorkers: "100%",
    coverage: { include: ["packages/*/src/**", "bench/src/**"] },
    projects: workspacePackages().flatMap(({ folder }) => {
      const name = basename(folder);
      const together = project(folder, name, {
        include: ["test/**/*.test.ts"],
        exclude: [ISOLATED],
        isolate: false,
      });
      const alone = project(folder, `${name}-isolated`, { include: [ISOLATED], isolate: true });
      return name === "cli" ? [together, alone] : [together];
    }),
  },
});
