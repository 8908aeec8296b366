import { spawnSync } from 'node:child_process';
import { findProgram } from './programs.ts';

/** The programs that the tests drive or measure with, and the Debian package that holds each. */
const WANTED = [
  ['chromium', 'chromium'],
  ['pdftoppm', 'poppler-utils'],
  ['pdftocairo', 'poppler-utils'],
  ['pdffonts', 'poppler-utils'],
  ['gs', 'ghostscript'],
  ['qpdf', 'qpdf'],
  ['mutool', 'mupdf-tools'],
  ['ffmpeg', 'ffmpeg'],
] as const;

function missing(): readonly (readonly [program: string, source: string])[] {
  return WANTED.filter(([program]) => findProgram(program) === undefined);
}

function asRoot(command: readonly string[]): boolean {
  const [program = '', ...args] = process.getuid?.() === 0 ? command : ['sudo', '-n', ...command];
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync(program, args, { stdio: ['ignore', 'ignore', 'inherit'], env }).status === 0;
}

function install(sources: readonly string[]): void {
  console.log(`installing ${sources.join(', ')} …`);
  const command = ['apt-get', 'install', '-y', '--no-install-recommends', ...sources];
  if (findProgram('apt-get') === undefined || !asRoot(['apt-get', 'update']) || !asRoot(command)) {
    console.error(`They could not be installed from here. Install them by hand: ${sources.join(' ')}`);
  }
}

const absent = missing();
if (absent.length > 0) install([...new Set(absent.map(([, source]) => source))]);
for (const [program] of WANTED) console.log(`${program}: ${findProgram(program) ?? 'missing'}`);
const still = missing();
if (still.length > 0) {
  const names = [...new Set(still.map(([, source]) => source))].join(' ');
  console.error(`The tests need these programs. On Debian or Ubuntu: sudo apt-get install ${names}`);
  process.exitCode = 1;
}
