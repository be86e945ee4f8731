import type { Io, Output } from "../io.js";

/**
 * Sets text in bold where a person sees it: on a terminal, unless NO_COLOR is set to something (no-color.org) or the
 * terminal is a plain one. It is the only emphasis there is.
 */
export function bold(text: string, output: Output, env: Io["env"]): string {
  const plain = (env.NO_COLOR ?? "") !== "" || env.TERM === "dumb" || output.isTTY !== true;
  return plain ? text : `\u001b[1m${text}\u001b[22m`;
}
