/** Reads numbers and words of attributes one after the other, by the grammar of SVG 1.1 and 2. */

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const SPACE = /[\t\n\f\r ]*/y;
const COMMA = /[\t\n\f\r ]*,?[\t\n\f\r ]*/y;

/**
 * A place in a text, moving on.
 *
 * @internal
 */
export class Scan {
  readonly text: string;
  at = 0;

  constructor(text: string) {
    this.text = text;
  }

  get isAtEnd(): boolean {
    return this.at >= this.text.length;
  }

  /** The character here; empty at the end. */
  get here(): string {
    return this.text.charAt(this.at);
  }

  skipSpace(): void {
    this.match(SPACE);
  }

  /** Space with at most one comma; whether there was one. */
  skipComma(): boolean {
    return (this.match(COMMA) ?? "").includes(",");
  }

  /** The number here, or `null`. Infinite where it is too large for a number. */
  number(): number | null {
    const digits = this.match(NUMBER);
    return digits === null ? null : Number(digits);
  }

  /** What a sticky pattern finds here, or `null`. */
  match(pattern: RegExp): string | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found === null) return null;
    this.at += found[0].length;
    return found[0];
  }
}
