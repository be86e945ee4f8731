import { dirname, join, resolve } from "node:path";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { type Files, type Io, systemCode } from "../io.js";
import { faultsOfRest, freeWords, ONE_NAME } from "../request/free-words.js";
import type { WrittenOptions } from "../request/plan-options.js";
import { systemErrorWords } from "../words/system-error.js";
import { STARTER_PROJECT } from "./starter-project.js";

/** The name of the file that `sheetwright new` writes. */
const STARTER_FILE = "cards.yaml";

/**
 * Runs `sheetwright new`: writes a project to start from and says what to do with it. Rejects with {@link FaultsFound},
 * also where a file of that name is there already; then nothing is written.
 *
 * @param rest what stands on the command line beside known options: the folder, and faults.
 */
export async function newCommand(_: WrittenOptions, rest: readonly string[], io: Io): Promise<0> {
  const [folder = "."] = freeWords(rest).words;
  const others = rest.filter((_, index) => index !== rest.indexOf(folder));
  const faults = faultsOfRest(others, {
    suggest: () => undefined,
    help: `One folder is expected. ${ONE_NAME}`,
  });
  if (faults.length > 0) throw new FaultsFound(faults);
  const file = join(folder, STARTER_FILE);
  try {
    await writeStarter(io.files, resolve(io.cwd, file), file);
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    const message = `${quote(file)} cannot be written: ${systemErrorWords(code)}.`;
    throw new FaultsFound([{ code: "not-writable", place: { option: "sheetwright new" }, message }], {
      cause: error,
    });
  }
  const name = inShell(file);
  io.stdout.write(
    [
      `Written: ${file}, a small project that can be planned as it is.`,
      "Open it in a text editor and change it; its comments say what each key is for. Then type",
      `  sheetwright check ${name}`,
      "to hear whether anything is wrong, and",
      `  sheetwright plan ${name} --out ${inShell(join(folder, "plan"))}`,
      "for the sheets to cut, the cards and the cut lists.",
      "",
    ].join("\n"),
  );
  return 0;
}

/** Writes the file and the folders above it that are missing; where a step fails, all are taken back. */
async function writeStarter(files: Files, path: string, shown: string): Promise<void> {
  const found = await files.look(path);
  if (found !== null) throw new FaultsFound([alreadyThere(shown, found)]);
  const missing: string[] = [];
  for (let at = dirname(path); (await files.look(at)) === null && dirname(at) !== at; at = dirname(at))
    missing.unshift(at);
  const made: string[] = [];
  try {
    for (const folder of missing) {
      await files.makeFolder(folder);
      made.unshift(folder);
    }
    await files.write(path, STARTER_PROJECT);
  } catch (error) {
    // A file that came up in the meantime is somebody's; any other was broken off half-way.
    if (systemCode(error) !== "EEXIST" && (await files.look(path)) === "file")
      await files.removeFile(path).catch(() => undefined);
    for (const folder of made) await files.removeFolder(folder).catch(() => undefined);
    throw error;
  }
}

function alreadyThere(file: string, found: string): Fault {
  const message =
    found === "folder"
      ? "a folder of this name is there already. Give another folder, such as sheetwright new my-cards."
      : "this file is there already, and it is not replaced. Give another folder, such as sheetwright new my-cards, " +
        "or move the file away.";
  return { code: "already-there", place: { file, path: "" }, message };
}

/** Puts a path in quotes where a shell would break it up. */
function inShell(path: string): string {
  return /^[\w./\\:~+@%,=-]+$/.test(path) ? path : `"${path}"`;
}
