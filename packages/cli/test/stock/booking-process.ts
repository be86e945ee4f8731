// A process that books one plan after another into the same stock file as fast as it can, until it is killed. Bundled and
// started by killed.test.ts with the folder, the number of the round and the plan to book as its arguments.

import { readFileSync, writeSync } from "node:fs";
import { FaultsFound } from "../../src/fault.js";
import { sha256 } from "../../src/folder/seal.js";
import type { Io } from "../../src/io.js";
import { nodeFiles } from "../../src/node-files.js";
import { bookCutPlan } from "../../src/stock/book-cut-plan.js";
import { changeStock } from "../../src/stock/change-stock.js";
import { nodeHolder } from "../../src/stock/node-holder.js";
import type { CutPlan } from "../../src/stock/read-cut-plan.js";

const [folder = "", round = "", planFile = ""] = process.argv.slice(2);
const cut: CutPlan = JSON.parse(readFileSync(planFile, "utf8"));
const silent = { write: () => true };
const io: Io = {
  stdout: silent,
  stderr: silent,
  env: {},
  cwd: folder,
  files: nodeFiles,
  holder: nodeHolder(),
};

writeSync(1, "ready\n");
for (let number = 0; ; number++) {
  const identity = sha256(`${round}, ${number}`);
  try {
    await changeStock(
      "stock.json",
      (stock) => {
        if (stock === null) throw new Error("the stock file is gone");
        return bookCutPlan(
          stock,
          { ...cut, identity },
          { done: null, spoiled: new Map() },
          null,
          "stock.json",
        ).data;
      },
      io,
    );
    writeSync(1, `${identity}\n`);
  } catch (error) {
    // The other process was first, or would not let this one in for long.
    const codes = error instanceof FaultsFound ? error.faults.map(({ code }) => code) : [];
    if (codes.length === 0 || codes.some((code) => code !== "booked-already" && code !== "in-use")) {
      writeSync(1, `fault ${String(error).replaceAll("\n", " ")}\n`);
      break;
    }
  }
}
