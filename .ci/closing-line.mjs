/**
 * A vitest reporter whose only output is the last line of the run: 'N passed, N failed'
 * (', N skipped' where there are any). A file that cannot be loaded, and an error outside
 * any test, count as failed.
 */
export default class ClosingLine {
  /** @param {readonly import("vitest/node").TestModule[]} modules @param {readonly unknown[]} strayErrors */
  onTestRunEnd(modules, strayErrors) {
    let passed = 0;
    let failed = strayErrors.length;
    let skipped = 0;
    for (const module of modules) {
      let failedInside = 0;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === "passed") passed += 1;
        else if (state === "skipped") skipped += 1;
        else failedInside += 1;
      }
      failed += failedInside === 0 && module.state() === "failed" ? 1 : failedInside;
    }
    const line = `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}\n`;
    // Every other reporter has spoken by the time the process leaves.
    process.once("exit", () => process.stdout.write(line));
  }
}
