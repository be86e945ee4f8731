import { createRequire } from "node:module";
// biome-ignore lint/correctness/useImportExtensions: JSON keeps its own extension.
import bench from "../../package.json" with { type: "json" };
import type { Peer } from "../peers/peer.js";

/** Versions of what is measured, by package: ours, and those of peers, which the bench pins exactly. */
export function versionsOf(peers: readonly Peer[]): Readonly<Record<string, string>> {
  // Of another package the bundler would leave the import without its attribute.
  const packing = createRequire(import.meta.url)("@sheetwright/packing/package.json") as {
    readonly version: string;
  };
  return {
    "@sheetwright/packing": packing.version,
    ...Object.fromEntries(peers.map((peer) => [peer, bench.dependencies[peer]])),
  };
}
