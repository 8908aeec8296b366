import { runPage } from './docExamples.ts';

// Most of them read the whole demo.
runPage('command-line.md');
