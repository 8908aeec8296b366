import { describe, expect, it } from 'vitest';
import { ok, PROBLEMS, problem, refuse } from '../../src/core/index.ts';

describe('problems', () => {
  it('fill the marks of their row with the words of the case', () => {
    expect(problem('date-malformed', { text: '9.3.' }).message).toBe('“9.3.” is not a date.');
  });
  it('keep a mark for which no word was given, instead of saying undefined', () => {
    expect(problem('date-malformed').message).toContain('{text}');
  });
  it('do not fill marks inside the words that are filled in', () => {
    expect(problem('prey-unknown', { prey: '{known}', known: 'rat-pup' }).message).toContain('“{known}”');
  });
  it('take no word from the prototype', () => {
    expect(problem('foreign-host', { host: 'constructor' }).message).toContain('constructor');
  });
  it('tell where it happened when that is known', () => {
    expect(refuse('not-positive', { what: 'weight' }, 'massG').problem.path).toBe('massG');
    expect('path' in problem('note-empty')).toBe(false);
  });
  it('carry a value when all went well', () => {
    expect(ok(5)).toEqual({ ok: true, value: 5 });
  });
  it.each(Object.entries(PROBLEMS))('%s says what is wrong and what to do, in whole sentences', (code, row) => {
    expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
    expect(row.says).toMatch(/[.!?]$/);
    expect(row.remedy).toMatch(/^[A-Z].*[.!?]$/);
    expect(row.says.length + row.remedy.length).toBeLessThan(260);
  });
});
