import { join, resolve } from "node:path";
import { type Fault, FaultsFound, quote } from "../fault.js";
import { writeNewFile } from "../folder/write-new-file.js";
import { type Io, systemCode } from "../io.js";
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
    const path = resolve(io.cwd, file);
    const found = await io.files.look(path);
    if (found !== null) throw new FaultsFound([alreadyThere(file, found)]);
    await writeNewFile(io.files, path, STARTER_PROJECT);
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
