import type { FaultList } from "./fault-list.js";
import { pathTo } from "./value-path.js";

/** Whether a key that is missing is so because of a fault that is told already: it is misspelt, or came from elsewhere. */
export function isExcused(key: string, path: string, holder: object, faults: FaultList): boolean {
  const unread = pathTo(path, "<<");
  return faults.faults().some((fault) => {
    if (fault.path === unread) return true;
    const isMisspelt = fault.code === "unknown-key" && fault.suggestion === key;
    return isMisspelt && Object.keys(holder).some((other) => pathTo(path, other) === fault.path);
  });
}
