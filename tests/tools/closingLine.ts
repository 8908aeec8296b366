import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with the plain line that CI reads: `N passed, N failed`. */
export class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    const states = modules.flatMap((module) => [...module.children.allTests()].map((test) => test.result().state));
    const passed = states.filter((state) => state === 'passed').length;
    const broken = modules.filter((module) => module.errors().length > 0).length + unhandled.length;
    const failed = states.filter((state) => state === 'failed').length + broken;
    const skipped = states.filter((state) => state === 'skipped').length;
    process.stdout.write(`\n${passed} passed, ${failed} failed${skipped === 0 ? '' : `, ${skipped} skipped`}\n`);
  }
}
