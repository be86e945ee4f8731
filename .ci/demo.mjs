/** Plans the invented Lantern Night workshop from its list of pieces, into out/lantern-night. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "./workspace.mjs";

const words = [
  "plan",
  "--pieces",
  "test-fixtures/lantern-night/pieces.csv",
  "--sheet",
  "us-letter",
  "--count",
  "20",
];
const out = ["--out", "out/lantern-night", "--force"];
const { status } = spawnSync(process.execPath, [join(root, "packages/cli/dist/bin.js"), ...words, ...out], {
  cwd: root,
  stdio: "inherit",
});
process.exit(status ?? 1);
