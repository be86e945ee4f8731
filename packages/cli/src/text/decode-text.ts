import type { Fault } from "../fault.js";

/**
 * Reads the bytes of a text file as UTF-8, with or without a byte order mark. Gives the fault for any other encoding, with
 * the line it shows in.
 *
 * @param file the file's path as it was given, for the message.
 * @param help what would help, as a sentence.
 */
export function decodeText(bytes: Uint8Array, file: string, help: string): string | Fault {
  const notUtf8 = (line: number, found: string): Fault => ({
    code: "not-utf-8",
    place: { file, line },
    message: `found ${found}, expected UTF-8 text. ${help}`,
  });
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return notUtf8(1, "UTF-16 text");
  }
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    const zero = text.indexOf("\0");
    return zero < 0 ? text : notUtf8(lineAt(text, zero), "a zero byte, which no text has");
  } catch {
    const text = readableStart(bytes);
    const value = bytes[new TextEncoder().encode(text).length] ?? 0;
    const hexadecimal = value.toString(16).toUpperCase().padStart(2, "0");
    return notUtf8(lineAt(text, text.length), `the byte ${hexadecimal} (hexadecimal)`);
  }
}

/** The longest beginning that is UTF-8, by halving: what is valid up to a point is valid up to each point before it. */
function readableStart(bytes: Uint8Array): string {
  const decode = (end: number): string =>
    // `stream` lets a character that is only cut off at the end pass, and leaves it out.
    new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes.subarray(0, end), {
      stream: true,
    });
  let good = 0;
  let bad = bytes.length;
  while (good + 1 < bad) {
    const middle = Math.floor((good + bad) / 2);
    try {
      decode(middle);
      good = middle;
    } catch {
      bad = middle;
    }
  }
  return decode(good);
}

function lineAt(text: string, index: number): number {
  return text.slice(0, index).split(/\r\n|\r|\n/).length;
}
