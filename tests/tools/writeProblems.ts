import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { PROBLEMS } from '../../src/core/index.ts';

/** Writes docs/problems.md from the table; run after a change to it: node dist/tests/tools/writeProblems.js */
const rows = Object.entries(PROBLEMS).map(([code, { says, remedy }]) => `| ${code} | ${says} | ${remedy} |`);
const page = `# What can go wrong, and what to do

Everything that Tubwright can refuse or warn of, word for word as it says it.
Marks in braces are filled with the words of the case.
A test compares this page with the table in \`src/core/problems.ts\`; \`node dist/tests/tools/writeProblems.js\` writes it.

| code | says | remedy |
| --- | --- | --- |
${rows.join('\n')}
`;
const root = import.meta.url.includes('/dist/') ? '../../../' : '../../';
writeFileSync(fileURLToPath(new URL(`${root}docs/problems.md`, import.meta.url)), page);
