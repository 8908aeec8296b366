import { beforeEach, describe, expect, it } from 'vitest';
import { forgetForm, keepForm, keptForm, lastKept } from '../../src/app/press/own/keptForms.ts';
import { startOf } from '../../src/app/press/own/starts.ts';

const BEGAN = { name: '', isRoll: false };
const TYPED = { name: 'Freezer', isRoll: false };
let kept: Map<string, string>;
let shelf: Storage;

beforeEach(() => {
  kept = new Map();
  shelf = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  } as unknown as Storage;
});

describe('a half-typed form about paper', () => {
  const keep = (of: string, text = TYPED) => keepForm('stock', of, { began: BEGAN, text }, shelf);
  const taken = (of: string) => keptForm('stock', of, BEGAN, shelf);
  it('is there again with what it began from, until it is forgotten', () => {
    keep('sheet');
    expect(taken('sheet')).toEqual({ began: BEGAN, text: TYPED });
    forgetForm('stock', 'sheet', shelf);
    expect(taken('sheet')).toBeNull();
  });
  it('is kept apart for each paper and each kind of form, and the last one that was typed into is known', () => {
    keep('sheet');
    keep('own-a');
    keep('sheet', { name: 'Freezer door', isRoll: false });
    expect([lastKept('stock', shelf), lastKept('printer', shelf)]).toEqual(['sheet', null]);
    expect([taken('own-a')?.text, taken('roll')]).toEqual([TYPED, null]);
  });
  it('that stands as it began is none', () => {
    keep('sheet');
    keep('sheet', BEGAN);
    expect(lastKept('stock', shelf)).toBeNull();
  });
  it('goes, the oldest first, when many are left', () => {
    for (let n = 0; n < 13; n++) keep(`own-${n}`);
    expect([taken('own-0'), taken('own-1')?.text]).toEqual([null, TYPED]);
  });
  it.each([
    'no JSON',
    '{}',
    '[["sheet",{"text":{"name":"A"}}]]',
    '[["sheet",{"began":{},"text":{"name":"A","isRoll":"yes"}}]]',
    '[["sheet",{"began":{},"text":{"name":"A"}}]]',
    '[["sheet",{"began":{},"text":{"name":1,"isRoll":true}}]]',
  ])('that cannot be read is none: %s', (text) => {
    kept.set('own-stock-drafts', text);
    expect(taken('sheet')).toBeNull();
  });
  it('does not stop anybody from typing on a device that is full', () => {
    const full = {
      ...shelf,
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    } as Storage;
    expect(() => keepForm('stock', 'sheet', { began: BEGAN, text: TYPED }, full)).not.toThrow();
  });
});

describe('the form about paper that opens', () => {
  it.each([
    [{}, 'copy a4-85x54', 'copy a4-85x54'],
    [{}, 'roll', 'roll'],
    [{}, 'own-gone', 'sheet'],
    [{}, null, 'sheet'],
    [{ from: 'a4-70x52' }, 'roll', 'copy a4-70x52'],
    [{ id: 'own-gone' }, 'roll', 'sheet'],
  ])('for %o with %s left half typed is %s', (query, halfTyped, start) => {
    expect(startOf(query as Record<string, string>, [], halfTyped)).toBe(start);
  });
});
