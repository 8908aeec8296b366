import { describe, expect, it } from 'vitest';
import { PAYLOADS } from '../../src/core/events/payloads.ts';
import { isEventKind, parseEvent } from '../../src/core/index.ts';
import { readText, tableRows } from './sources.ts';

const DOC = readText('docs/events.md');

/** `weightG, confirmed?`: the fields of a payload as its schema has them. */
function fieldsOf(kind: keyof typeof PAYLOADS): string {
  const shape = PAYLOADS[kind].shape as Readonly<Record<string, { readonly type: string }>>;
  const names = Object.entries(shape).map(([name, { type }]) => (type === 'optional' ? `${name}?` : name));
  return names.length === 0 ? 'none' : names.join(', ');
}

describe('docs/events.md', () => {
  it('lists every kind of event with the fields of its payload', () => {
    const rows = tableRows(DOC).filter(([first = '']) => isEventKind(first.replaceAll('`', '')));
    const listed = rows.map(([kind = '', , fields = '']) => [kind.replaceAll('`', ''), fields.replaceAll('`', '')]);
    const kinds = Object.keys(PAYLOADS).filter(isEventKind);
    expect(listed).toEqual(kinds.map((kind) => [kind, fieldsOf(kind)]));
  });
  it('shows examples that can be read', () => {
    const examples = [...DOC.matchAll(/```json\n([\s\S]*?)```/g)].flatMap(([, text = '']) => text.trim().split('\n'));
    expect(examples.length).toBeGreaterThanOrEqual(4);
    for (const example of examples) {
      const read = parseEvent(JSON.parse(example));
      expect(read.ok ? 'sound' : read.problem.message, example).toBe('sound');
      expect(read.ok && 'unknown' in read.value).toBe(false);
    }
  });
});
