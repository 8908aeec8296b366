import { type Problem, type ProblemCode, problem, type Result } from '../core/index.ts';

/** A command that cannot be done; main says the problems in words and nothing is left half done. */
export class Refused extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(inWords).join('\n'));
    this.name = 'Refused';
    this.problems = problems;
  }
}

/** What is wrong and what to do, in one line. */
export function inWords(said: Problem): string {
  return `${said.message} ${said.remedy}`;
}

/** A refusal from a row of the table of problems. */
export function refusal(code: ProblemCode, words: Readonly<Record<string, string | number>> = {}): Refused {
  return new Refused([problem(code, words)]);
}

/** The value of a rule that went well; refuses the command otherwise. */
export function orRefuse<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Refused([result.problem]);
}

const SYSTEM_WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'the folder is missing',
  EACCES: 'its rights do not allow it',
  EPERM: 'its rights do not allow it',
  EROFS: 'the disk can only be read',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is not a folder',
  ENOSPC: 'the disk is full',
};

/** What the system said, in words where it gave a code. */
export function systemWords(error: unknown): string {
  return SYSTEM_WORDS[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));
}

/** The system's code of an error, such as `ENOENT`; empty for any other. */
export function codeOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
}
