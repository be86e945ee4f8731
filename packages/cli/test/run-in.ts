import type { Io } from "../src/io.js";
import { type ExitCode, run } from "../src/run.js";

/** What a run said and how it ended. */
export interface Ended {
  readonly code: ExitCode;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command with output caught, in the folder `/desk` unless told otherwise. */
export async function runIn(
  argv: readonly string[],
  io: Pick<Io, "files"> & Partial<Omit<Io, "stdout" | "stderr">> & { readonly terminal?: boolean },
): Promise<Ended> {
  let stdout = "";
  let stderr = "";
  const { terminal = false, ...rest } = io;
  const code = await run(argv, {
    env: {},
    cwd: "/desk",
    ...rest,
    stdout: {
      isTTY: terminal,
      write: (text) => {
        stdout += text;
      },
    },
    stderr: {
      isTTY: terminal,
      write: (text) => {
        stderr += text;
      },
    },
  });
  return { code, stdout, stderr };
}
