import type * as z from 'zod/mini';
import { ok, type Result, refuse } from '../../core/index.ts';

/** A kind of calculation: what its help says, and the answer to one case. */
export interface Kind {
  readonly name: string;
  readonly help: string;
  readonly answer: (given: unknown) => Result<unknown> | Promise<Result<unknown>>;
}

/** Reads a case against its schema. Errors: `case-malformed`, at the path of what is wrong. */
export function readCase<T extends z.ZodMiniType>(schema: T, given: unknown): Result<z.infer<T>> {
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    return wrongCase('it is not a JSON object', '');
  const read = schema.safeParse(given);
  if (read.success) return ok(read.data);
  const issue = deepest(read.error.issues);
  return wrongCase(issue?.message ?? 'it has another form', (issue?.path ?? []).map(String).join('.'));
}

/** The error of a case that has another form than its help says. */
export function wrongCase(why: string, path: string): Result<never> {
  return refuse('case-malformed', { why: path === '' ? why : `${path}: ${why}` }, path);
}

/** Of a choice between forms the one that came furthest says most. */
function deepest(issues: readonly z.core.$ZodIssue[]): z.core.$ZodIssue | undefined {
  const [first] = issues;
  if (first?.code !== 'invalid_union') return first;
  const inner = first.errors.map(deepest).filter((one) => one !== undefined);
  const [best] = inner.sort((a, b) => b.path.length - a.path.length);
  return best === undefined || best.path.length === 0 ? first : { ...best, path: [...first.path, ...best.path] };
}
