import type { Files } from "../src/io.js";
import { nodeFiles } from "../src/node-files.js";

/** The files of this machine, without any way to change them; notes the path of every attempt. */
export function readOnly(attempts: string[]): Files {
  const refuse = (path: string): Promise<never> => {
    attempts.push(path);
    return Promise.reject(Object.assign(new Error(`EROFS: ${path}`), { code: "EROFS" }));
  };
  const { read, list, look, follow } = nodeFiles;
  return {
    read,
    list,
    look,
    follow,
    write: refuse,
    makeFolder: refuse,
    rename: refuse,
    sync: refuse,
    removeFile: refuse,
    removeFolder: refuse,
  };
}
