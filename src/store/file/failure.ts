import { problem } from '../../core/index.ts';
import { LogFailure } from '../eventLog.ts';

const FULL = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);

/** A failed call to the system in our words. */
export function diskFailure(error: unknown): LogFailure {
  if (error instanceof LogFailure) return error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (FULL.has(code)) return new LogFailure(problem('storage-full'));
  return new LogFailure(problem('storage-failed', { why: error instanceof Error ? error.message : String(error) }));
}
