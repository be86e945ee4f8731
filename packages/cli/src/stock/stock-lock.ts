/**
 * Lets one run at a time write a file, whatever happens to the others.
 *
 * Each run lays a lock of its own beside the file, made by an exclusive create, its holder in the name:
 *
 *     stock.json.lock-MACHINE-PROCESS-MARK
 *
 * and then looks who else has one there. Whoever sees another's living lock takes its own away, waits and tries again; only
 * who sees none goes on. Of two runs the one that made its lock later surely sees the other's, so never both go on; they may
 * both step back, and wait for different times. A lock whose process no longer runs is dead: it keeps nobody, and is
 * removed. Since names are never used again, nobody can remove a lock that a living run has made in the meantime. Whether a
 * process of another machine runs cannot be told: its lock counts as living until somebody removes it.
 */

import { basename, dirname, join } from "node:path";
import { FaultsFound, type Place } from "../fault.js";
import { type Files, systemCode } from "../io.js";
import type { Holder } from "./holder.js";

/** Times that a lock is tried for: some four seconds, and a booking takes some hundredths of one. */
const ATTEMPTS = 100;

/** Where a file is locked, and how that is told. */
export interface Locked {
  readonly files: Files;
  readonly holder: Holder;
  /** Absolute path of the file. */
  readonly path: string;
  /** Its path as it was given. */
  readonly place: Place;
}

/**
 * Runs a piece of work while no other run holds the lock of the file. Rejects with {@link FaultsFound} where another one
 * holds it all the time, with what the work rejects with, or with the error of the operating system.
 */
export async function withStockLock<Result>(locked: Locked, work: () => Promise<Result>): Promise<Result> {
  const { files, holder, path } = locked;
  const own = `${path}.lock-${holder.host}-${holder.process}-${holder.mark}`;
  const said = `Process ${holder.process} on ${holder.host} is writing ${basename(path)}. This file goes when it is done.\n`;
  let others = await livingLocks(locked);
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    if (others.length === 0) {
      await files.write(own, said);
      others = (await livingLocks(locked).catch(takenBack(files, own))).filter(
        (name) => name !== basename(own),
      );
      if (others.length === 0) {
        try {
          return await work();
        } finally {
          await removeIfThere(files, own).catch(() => undefined);
        }
      }
      await removeIfThere(files, own);
    }
    // Two that stepped back from each other must not meet again.
    await holder.wait(20 + ((holder.process * 7 + attempt * 13) % 41));
    others = await livingLocks(locked);
  }
  const [name = ""] = others;
  const lock = readName(name.slice(`${basename(path)}.lock-`.length));
  const who = lock === null ? "Another run" : `Process ${lock.process} on ${lock.host}`;
  const message =
    `${who} is writing the file, so nothing was done. Try again when it has ended; if it ended long ago, ` +
    `remove ${name} beside the file.`;
  throw new FaultsFound([{ code: "in-use", place: locked.place, message }]);
}

/** Names of the locks of runs that are still at work, our own among them; dead ones are removed on the way. */
async function livingLocks({ files, holder, path }: Locked): Promise<readonly string[]> {
  const start = `${basename(path)}.lock-`;
  const living: string[] = [];
  for (const name of await files.list(dirname(path))) {
    if (!name.startsWith(start)) continue;
    const lock = readName(name.slice(start.length));
    const isDead = lock !== null && lock.host === holder.host && !holder.isRunning(lock.process);
    if (isDead) await removeIfThere(files, join(dirname(path), name));
    else living.push(name);
  }
  return living.sort();
}

function readName(text: string): { readonly host: string; readonly process: number } | null {
  const { host, process } = /^(?<host>.+)-(?<process>\d+)-[0-9a-z]+$/.exec(text)?.groups ?? {};
  return host === undefined || process === undefined ? null : { host, process: Number(process) };
}

async function removeIfThere(files: Files, path: string): Promise<void> {
  try {
    await files.removeFile(path);
  } catch (error) {
    // Somebody else found it dead as well.
    if (systemCode(error) !== "ENOENT") throw error;
  }
}

/** What to do with an error once our lock is there: take that away first. */
function takenBack(files: Files, own: string): (error: unknown) => Promise<never> {
  return async (error) => {
    await removeIfThere(files, own).catch(() => undefined);
    throw error;
  };
}
