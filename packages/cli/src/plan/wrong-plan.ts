/** A plan that the verifier refused: a fault of Sheetwright, after which nothing may be written. */
export class WrongPlan extends Error {
  override readonly name = "WrongPlan";

  /** Takes what the verifier found. */
  constructor(findings: readonly { readonly path: string; readonly message: string }[]) {
    super(`The plan is not right: ${findings.map(({ path, message }) => `${path}: ${message}`).join("; ")}`);
  }
}
