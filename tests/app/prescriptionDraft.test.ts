import { describe, expect, it } from 'vitest';
import { readFigure, readLengthMm } from '../../src/app/treatment/figures.ts';
import { BLANK, type Draft, readDraft } from '../../src/app/treatment/prescribe/draft.ts';
import { aheadOfUtcMs, type Now, sayAway, sayMoment, siteTime } from '../../src/app/treatment/siteTime.ts';
import { sayDifference, sayWritten } from '../../src/core/index.ts';
import { day, rex, weighed } from '../core/log.ts';

const TODAY = day('2026-03-09');
const ANIMAL = rex({}, weighed('2026-03-08', 1060));
const WHOLE: Draft = {
  ...BLANK,
  ...{ drug: 'as the vet wrote it', by: 'mass', dose: '5', strength: '10', strengthUnit: 'mgPerMl' },
  ...{ route: 'by injection', every: '2', everyUnit: 'days', count: '3', startsOn: '2026-03-09', withholdFood: 'no' },
  prescriber: 'Dr Linnet Sallowfield',
};
const read = (more: Partial<Draft> = {}) =>
  readDraft({ ...WHOLE, ...more }, ANIMAL, { today: TODAY, syringesMl: null });
/** The faults of a draft as `field code`. */
const faults = (more: Partial<Draft>) =>
  Object.entries(read(more).faults).map(([field, problem]) => `${field} ${problem.code}`);

describe('a prescription as it is typed', () => {
  it('is taken whole, with the vet’s unit and nothing else', () => {
    expect(read().written).toEqual({
      ...{ drug: 'as the vet wrote it', prescriber: 'Dr Linnet Sallowfield', route: 'by injection' },
      amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
      ...{ everyHours: 48, count: 3, startsOn: '2026-03-09', withholdFood: false },
    });
    expect(read({ strengthUnit: 'percentWv', strength: '1,5' }).written?.amount).toMatchObject({
      strength: { percentWv: 1.5 },
    });
    expect(read({ by: 'volume', ml: '0.3', strength: '', strengthUnit: '' }).written?.amount).toEqual({
      by: 'volume',
      ml: 0.3,
    });
  });
  it('that is blank has a problem at every line that must not be', () => {
    expect(Object.keys(readDraft(BLANK, ANIMAL, { today: TODAY, syringesMl: null }).faults).sort()).toEqual(
      ['by', 'count', 'drug', 'every', 'everyUnit', 'prescriber', 'route', 'startsOn', 'withholdFood'].sort(),
    );
  });
  it.each<[string, Partial<Draft>, string]>([
    ['no unit of the strength', { strengthUnit: '' }, 'strengthUnit unit-missing'],
    ['a strength that cannot be', { strength: '400', strengthUnit: 'percentWv' }, 'strength strength-impossible'],
    ['a bare point', { dose: '.5' }, 'dose not-a-number'],
    ['a comma that can mean two things', { dose: '1,250' }, 'dose not-a-number'],
    ['a dose of nothing', { dose: '0' }, 'dose not-positive'],
    ['words for a figure', { strength: 'ten' }, 'strength not-a-number'],
    ['half a dose', { count: '2.5' }, 'count not-whole'],
    ['an end before its beginning', { endsOn: '2026-03-01' }, 'endsOn course-backwards'],
    ['no end', { count: '' }, 'count course-open'],
    ['no word about food', { withholdFood: '' }, 'withholdFood not-chosen'],
    ['a cap without the vet’s volume', { capPercent: '4' }, 'capMl text-missing'],
    ['a cap with a volume that it does not come to', { capPercent: '4', capMl: '12' }, 'capMl cap-unlike'],
    ['an interval of years', { every: '9000' }, 'every course-impossible'],
  ])('with %s is not taken: %o', (_what, more, fault) => {
    expect(faults(more)).toEqual([fault]);
    expect(read(more).written).toBeNull();
  });
  it('takes the strength of a fixed volume too, with its unit or not at all', () => {
    const fixed = { by: 'volume', ml: '0.3' } as const;
    expect(read({ ...fixed, strength: '', strengthUnit: '' }).written?.amount).toEqual({ by: 'volume', ml: 0.3 });
    expect(read(fixed).written?.amount).toEqual({ by: 'volume', ml: 0.3, strength: { mgPerMl: 10 } });
    expect(faults({ ...fixed, strengthUnit: '' })).toEqual(['strengthUnit unit-missing']);
    expect(faults({ ...fixed, strength: '' })).toEqual(['strength text-missing']);
  });
  it.each<[string, string, readonly number[] | null, readonly number[] | undefined]>([
    ['nobody says which', '', null, undefined],
    ['the site’s rules say which', '', [1, 5], [1, 5]],
    ['somebody ticks others', '1,3', [1, 5], [1, 3]],
  ])('has the syringes at hand where %s', (_what, syringes, siteMl, expected) => {
    const { written } = readDraft({ ...WHOLE, syringes }, ANIMAL, { today: TODAY, syringesMl: siteMl });
    expect(written?.syringesMl).toEqual(expected);
  });
  it('is not taken where no syringe is at hand', () => {
    expect(faults({ syringes: 'none' })).toEqual(['syringes syringe-missing']);
  });
  it('keeps the volume that lifts the cap with the words about the paper', () => {
    const lifted = read({ route: 'by stomach tube', dose: '300', capPercent: '4', capMl: '31.8', paper: 'folder 2' });
    expect(lifted.written).toMatchObject({ capPercent: 4, paper: 'folder 2; the vet wrote 31.8 mL at once' });
  });
});

describe('figures of a paper', () => {
  it.each([
    ['0.5', 0.5],
    ['0,5', 0.5],
    [' 12 ', 12],
    ['5.0', 5],
  ])('%s is read as %d', (text, value) => {
    expect(readFigure(text, 'dose')).toEqual({ ok: true, value });
  });
  it.each([
    ['90 cm', 900],
    ['900mm', 900],
    ['1.2 m', 1200],
    ['', null],
  ])('a length of “%s” is %s mm', (text, mm) => {
    expect(readLengthMm(text)).toEqual({ ok: true, value: mm });
  });
  it.each(['90', 'long', '9o cm', '3 ft'])('a length of “%s” is refused: the unit is never guessed', (text) => {
    expect(readLengthMm(text).ok).toBe(false);
  });
});

describe('a moment on the site’s clock', () => {
  const MS = Date.parse('2026-03-09T23:30:00Z');
  const now: Now = { today: day('2026-03-10'), nowMs: MS, timeZone: 'Pacific/Auckland', aheadMs: 13 * 3_600_000 };
  it('has the site’s day, hour and distance from UTC', () => {
    expect(siteTime(MS, 'Pacific/Auckland')).toEqual({ day: '2026-03-10', clock: '12:30' });
    expect(aheadOfUtcMs(MS, 'Pacific/Auckland')).toBe(now.aheadMs);
    expect(aheadOfUtcMs(MS, 'America/St_Johns')).toBe(-2.5 * 3_600_000);
  });
  it.each([
    [1.5, 'today 14:00', 'in 2 h'],
    [-13, 'yesterday 23:30', '13 h ago'],
    [24, 'tomorrow 12:30', 'in 24 h'],
    [72, 'Fri 13 Mar 12:30', 'in 3 days'],
    [-0.5, 'today 12:00', '30 min ago'],
  ])('%d hours away is %s, %s', (hours, moment, away) => {
    const ms = MS + hours * 3_600_000;
    expect([sayMoment(ms, now), sayAway(ms, now)]).toEqual([moment, away]);
  });
});

describe('the vet’s words', () => {
  it('are said on one line, a strength in the unit of its bottle', () => {
    const percent = read({ strengthUnit: 'percentWv', strength: '1' }).written;
    expect(percent === null ? '' : sayWritten(percent)).toBe(
      '5 mg per kg, at 1 % w/v, by injection, every 48 hours (2 days), 3 doses',
    );
  });
  it('are not changed by more than the mark says', () => {
    const drawn = { exactMl: 0.452, ml: 0.45, syringeMl: 1, markMl: 0.01 };
    expect(sayDifference({ ...drawn, differencePercent: -0.4425 })).toBe('0.44 % less than exact');
    expect(sayDifference({ ...drawn, differencePercent: 0 })).toBe('exactly on the mark');
  });
});
