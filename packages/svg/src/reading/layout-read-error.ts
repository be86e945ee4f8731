export type LayoutReadCode = "not-a-layout" | "no-sheet" | "missing-attribute" | "malformed-value";

/** Says what in a parsed drawing cannot be read back: what kind of fault, and where in the element tree. */
export class LayoutReadError extends Error {
  override readonly name = "LayoutReadError";
  readonly code: LayoutReadCode;
  /** Place in the tree, such as `svg.children[3].attributes.x`. */
  readonly path: string;
  readonly details: Readonly<Record<string, string>>;

  constructor(
    code: LayoutReadCode,
    path: string,
    message: string,
    details: Readonly<Record<string, string>>,
  ) {
    super(message);
    this.code = code;
    this.path = path;
    this.details = details;
  }
}
