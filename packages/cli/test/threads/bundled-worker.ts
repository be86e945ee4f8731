import { copyFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

/** Bundles the worker from its source into a folder, since threads load no TypeScript, and gives its path. */
export async function bundleWorker(folder: string): Promise<string> {
  const worker = join(folder, "start-worker.mjs");
  await build({
    entryPoints: [fileURLToPath(new URL("../../src/start-worker.ts", import.meta.url))],
    outfile: worker,
    bundle: true,
    platform: "node",
    format: "esm",
    conditions: ["@sheetwright/source"],
    logLevel: "error",
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
  });
  // HiGHS looks for its other half beside itself.
  copyFileSync(createRequire(import.meta.url).resolve("highs/runtime"), join(folder, "highs.wasm"));
  return worker;
}
