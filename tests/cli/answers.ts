import { expect } from 'vitest';
import { tubwright } from './tubwright.ts';

/** One case of `calc` and its answer, or whatever part of it the test is about. */
export type Row = readonly [name: string, given: unknown, answer: object];

/** What `calc` answers, and its exit code. */
export interface Answers {
  readonly code: number | null;
  readonly answers: readonly unknown[];
}

/** Runs cases through the built program, all in one stream; a text goes in as it is. */
export async function answersOf(kind: string, cases: readonly unknown[]): Promise<Answers> {
  const input = cases.map((one) => (typeof one === 'string' ? one : JSON.stringify(one))).join('\n');
  const { code, out } = await tubwright(['calc', kind], { input });
  const lines = out.split('\n').filter((line) => line !== '');
  return { code, answers: lines.map((line) => JSON.parse(line)) };
}

/** The form of every error: its code and its path, with words that say what is wrong. */
export function wrong(code: string, path: string, words = /\S/): object {
  return { error: { code, path, message: expect.stringMatching(words) } };
}
