import { quote } from "./quote.js";

/**
 * Says what was found and at which column.
 *
 * @internal
 */
export function sayFound(found: string, at: number): string {
  return found === "" ? "nothing" : `${quote(found)} at column ${at}`;
}
