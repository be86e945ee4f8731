import { basename, dirname } from "node:path";
import type { Files } from "../src/io.js";

/** One thing done to the files, as `write` or `rename`. */
type Step = Exclude<keyof Files, "read" | "list" | "look" | "follow">;

/** Files in memory that behave like those of an operating system, count what is done, and fail where a test says so. */
export interface MemoryFiles extends Files {
  /** All files by path. Text unless a test put bytes there. */
  readonly all: Map<string, string | Uint8Array>;
  readonly folders: Set<string>;
  /** What was done, in order; each with the path it was done to. */
  readonly steps: { readonly step: Step; readonly path: string }[];
  /** Throws to make a step fail; it has then not been done. A failing write leaves half a file, as a full disk does. */
  failWhen: (step: Step, path: string, number: number) => string | undefined;
  /** Files and folders as one text, to compare whole states. */
  snapshot(): string;
}

export function memoryFiles(initial: Readonly<Record<string, string | Uint8Array>> = {}): MemoryFiles {
  const all = new Map<string, string | Uint8Array>();
  const folders = new Set<string>(["/"]);
  const later =
    <A extends readonly string[], R>(action: (...args: A) => R) =>
    (...args: A): Promise<R> =>
      Promise.resolve().then(() => action(...args));
  const fail = (code: string, path: string): never => {
    throw Object.assign(new Error(`${code}: ${path}`), { code });
  };
  const addFolders = (path: string): void => {
    for (let at = path; at !== "/"; at = dirname(at)) folders.add(at);
  };
  for (const [path, content] of Object.entries(initial)) {
    all.set(path, content);
    addFolders(dirname(path));
  }
  const inside = (folder: string): string[] =>
    [...all.keys(), ...folders]
      .filter((path) => path !== "/" && dirname(path) === folder)
      .map((path) => basename(path));
  const begin = (step: Step, path: string): void => {
    const code = files.failWhen(step, path, files.steps.length);
    files.steps.push({ step, path });
    if (code === undefined) return;
    if (step === "write") all.set(path, "half a f");
    fail(code, path);
  };
  const files: MemoryFiles = {
    all,
    folders,
    steps: [],
    failWhen: () => undefined,
    snapshot: () =>
      [
        ...[...all].map(([path, content]) => `${path}: ${String(content)}`),
        ...[...folders].map((path) => `${path}/`),
      ]
        .sort()
        .join("\n"),
    read: later((path: string) => {
      if (folders.has(path)) return fail("EISDIR", path);
      const content = all.get(path) ?? fail("ENOENT", path);
      return typeof content === "string" ? new TextEncoder().encode(content) : content;
    }),
    write: later((path: string, content: string) => {
      if (all.has(path) || folders.has(path)) fail("EEXIST", path);
      if (!folders.has(dirname(path))) fail("ENOENT", path);
      begin("write", path);
      all.set(path, content);
    }),
    makeFolder: later((path: string) => {
      if (all.has(path) || folders.has(path)) fail("EEXIST", path);
      if (!folders.has(dirname(path))) fail("ENOENT", path);
      begin("makeFolder", path);
      folders.add(path);
    }),
    list: later((path: string) => {
      if (!folders.has(path)) fail("ENOENT", path);
      return inside(path);
    }),
    look: later((path: string) => {
      return all.has(path) ? "file" : folders.has(path) ? "folder" : null;
    }),
    rename: later((from: string, to: string) => {
      if (folders.has(to)) fail("EISDIR", to);
      begin("rename", from);
      if (folders.has(from)) {
        for (const path of [...all.keys()].filter((one) => one.startsWith(`${from}/`))) {
          all.set(to + path.slice(from.length), all.get(path) ?? "");
          all.delete(path);
        }
        for (const path of [...folders].filter((one) => one === from || one.startsWith(`${from}/`))) {
          folders.add(to + path.slice(from.length));
          folders.delete(path);
        }
        return;
      }
      all.set(to, all.get(from) ?? fail("ENOENT", from));
      all.delete(from);
    }),
    sync: later((path: string) => {
      if (!all.has(path) && !folders.has(path)) fail("ENOENT", path);
      begin("sync", path);
    }),
    follow: later((path: string) => path),
    removeFile: later((path: string) => {
      if (!all.has(path)) fail("ENOENT", path);
      begin("removeFile", path);
      all.delete(path);
    }),
    removeFolder: later((path: string) => {
      if (!folders.has(path)) fail("ENOENT", path);
      if (inside(path).length > 0) fail("ENOTEMPTY", path);
      begin("removeFolder", path);
      folders.delete(path);
    }),
  };
  return files;
}
