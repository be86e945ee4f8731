import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("..", import.meta.url));

/**
 * One package of the workspace: its folder, seen from the root with forward slashes, and its package.json.
 * @typedef {{ readonly folder: string, readonly name: string, readonly manifest: Manifest }} Package
 *
 * @typedef {{
 *   name: string, private?: boolean, bin?: Record<string, string>, exports?: Record<string, unknown>,
 *   dependencies?: Record<string, string>, devDependencies?: Record<string, string>,
 *   peerDependencies?: Record<string, string>, tsup?: { entry: string[] },
 * }} Manifest
 */

/** @returns {Package[]} every package, in the order of their names */
export function workspacePackages() {
  const folders = readdirSync(join(root, "packages"))
    .sort()
    .map((name) => `packages/${name}`);
  return [...folders, "bench"]
    .filter((folder) => existsSync(join(root, folder, "package.json")))
    .map((folder) => {
      const manifest = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
      return { folder, name: manifest.name, manifest };
    });
}
