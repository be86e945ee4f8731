import { createHash } from "node:crypto";

/** SHA-256 of a text as UTF-8, in lower-case hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash("sha256").update(content).digest("hex");
}

const SEAL = /"seal": "[0-9a-f]{0,64}"/;

/**
 * Fills in the first `"seal": ""` of a JSON text: the SHA-256 of the text with that value empty. The seal tells whether
 * somebody changed the file since. Throws a RangeError for a text without one.
 */
export function seal(text: string): string {
  const blank = text.replace(SEAL, '"seal": ""');
  if (!SEAL.test(blank)) throw new RangeError('The text has no `"seal": ""` to fill in.');
  return blank.replace(SEAL, `"seal": "${sha256(blank)}"`);
}

/** True where a sealed text is still as {@link seal} left it. */
export function isSealed(text: string): boolean {
  return SEAL.test(text) && seal(text) === text;
}
