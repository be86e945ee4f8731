import { basename } from "node:path";
import { fileURLToPath } from "node:url";
import { defaultClientConditions, defaultServerConditions } from "vite";
import { defineConfig } from "vitest/config";
import { workspacePackages } from "./.ci/workspace.mjs";

// Tests run on src: no build stands between a change and its test.
const source = "@sheetwright/source";

export default defineConfig({
  test: {
    reporters: ["default", "./.ci/closing-line.mjs"],
    maxWorkers: "100%",
    coverage: { include: ["packages/*/src/**", "bench/src/**"] },
    projects: workspacePackages().map(({ folder }) => ({
      resolve: { conditions: [source, ...defaultClientConditions] },
      ssr: { resolve: { conditions: [source, ...defaultServerConditions] } },
      test: {
        name: basename(folder),
        root: folder,
        include: ["test/**/*.test.ts"],
        // Files of one project share what they import, which saves a fifth of the time. Only the command's tests put
        // stand-ins in the place of modules, and those must not reach other files.
        isolate: basename(folder) === "cli",
        setupFiles: [fileURLToPath(new URL(".ci/test-setup.ts", import.meta.url))],
        // Time is never what a test judges; the limit only ends one that hangs.
        testTimeout: 120_000,
        hookTimeout: 120_000,
      },
    })),
  },
});
