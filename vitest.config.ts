import { defineConfig } from "vitest/config";

const projects = ["measure", "packing", "svg", "cli", "bench"];
const source = ["@sheetwright/source"];

export default defineConfig({
  test: {
    reporters: ["default", "./.ci/closing-line.mjs"],
    coverage: { include: ["packages/*/src/**", "bench/src/**"] },
    projects: projects.map((name) => ({
      // Tests run on src: no build stands between a change and its test.
      resolve: { conditions: [...source, "module", "node", "development|production"] },
      ssr: { resolve: { conditions: [...source, "module", "node", "development|production"] } },
      test: {
        name,
        root: name === "bench" ? "bench" : `packages/${name}`,
        include: ["test/**/*.test.ts"],
        setupFiles: [new URL(".ci/fast-check.setup.ts", import.meta.url).pathname],
        // Time is never what a test judges; the limit only ends one that hangs.
        testTimeout: 120_000,
        hookTimeout: 120_000,
      },
    })),
  },
});
