import { randomUUID } from "node:crypto";
import { hostname } from "node:os";
import { systemCode } from "../io.js";
import type { Holder } from "./holder.js";

/** This process on this machine, for locks. */
export function nodeHolder(): Holder {
  return {
    host: hostname().replace(/[^A-Za-z0-9.-]/g, "-") || "here",
    process: process.pid,
    mark: randomUUID().replaceAll("-", ""),
    isRunning: (number) => {
      try {
        // Signal 0 only asks whether there is such a process.
        process.kill(number, 0);
        return true;
      } catch (error) {
        // A process of somebody else may not be asked, and runs.
        return systemCode(error) !== "ESRCH";
      }
    },
    wait: (milliseconds) => new Promise((done) => setTimeout(done, milliseconds)),
  };
}
