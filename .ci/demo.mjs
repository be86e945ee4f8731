/** Plans the invented Lantern Night workshop from its project, into out/lantern-night, and says where to look. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "./workspace.mjs";

const words = [
  "plan",
  "test-fixtures/lantern-night/lantern-night.yaml",
  "--out",
  "out/lantern-night",
  "--force",
];
const { status } = spawnSync(process.execPath, [join(root, "packages/cli/dist/bin.js"), ...words], {
  cwd: root,
  stdio: "inherit",
});
process.exit(status ?? 1);
