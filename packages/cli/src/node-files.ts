import {
  mkdir,
  open,
  readdir,
  readFile,
  realpath,
  rename,
  rm,
  rmdir,
  stat,
  writeFile,
} from "node:fs/promises";
import { type Files, systemCode } from "./io.js";

/** The files of this machine. */
export const nodeFiles: Files = {
  read: (path) => readFile(path),
  // `wx` refuses a file that is there: only files of a new, empty folder are ever written to.
  write: (path, content) => writeFile(path, content, { encoding: "utf8", flag: "wx" }),
  makeFolder: async (path) => {
    await mkdir(path);
  },
  list: (path) => readdir(path),
  look: async (path) => {
    try {
      const found = await stat(path);
      return found.isFile() ? "file" : found.isDirectory() ? "folder" : "other";
    } catch (error) {
      const code = systemCode(error);
      if (code === "ENOENT" || code === "ENOTDIR") return null;
      throw error;
    }
  },
  rename: (from, to) => rename(from, to),
  sync: async (path) => {
    // Some systems flush only what is open for writing, which no folder can be.
    const file = await open(path, (await stat(path)).isDirectory() ? "r" : "r+");
    try {
      await file.sync();
    } finally {
      await file.close();
    }
  },
  follow: async (path) => {
    try {
      return await realpath(path);
    } catch (error) {
      if (systemCode(error) === "ENOENT") return path;
      throw error;
    }
  },
  removeFile: (path) => rm(path),
  removeFolder: (path) => rmdir(path),
};
