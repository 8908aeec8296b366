import { describe, expect, it } from 'vitest';
import {
  type DoseSetting,
  type Prescription,
  prescribedDose,
  prescriptionFault,
  prescriptionState,
} from '../../../src/core/index.ts';
import { day, value } from '../log.ts';

const ON = day('2026-11-25');
/** An invented prescription: 900 g at 5 mg/kg and 10 mg/mL are 0.45 mL. */
const PAPER: Prescription = {
  drug: 'drug of the example',
  prescriber: 'Dr. Example',
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  route: 'im',
  everyHours: 48,
  count: 5,
  startsOn: day('2026-11-20'),
};
const SETTING: DoseSetting = { on: ON, weight: { massG: 900, massDate: ON }, young: false, earlierMl: [] };
const given = (paper: Partial<Prescription>, setting: Partial<DoseSetting> = {}) =>
  prescribedDose({ ...PAPER, ...paper }, { ...SETTING, ...setting });
const code = (paper: Partial<Prescription>, setting: Partial<DoseSetting> = {}): string => {
  const answer = given(paper, setting);
  return answer.ok ? 'answered' : answer.problem.code;
};

describe('CARE-PRESCRIPTION: nothing is worked out from a prescription that is not open', () => {
  it.each<readonly [string, Partial<Prescription>, string, string | null]>([
    ['open', {}, 'open', null],
    ['its first day', { startsOn: ON }, 'open', null],
    ['its last day', { endsOn: ON, validUntil: ON, drugExpiresOn: ON }, 'open', null],
    ['before it begins', { startsOn: day('2026-11-26') }, 'before', 'prescription-not-begun'],
    ['after it ended', { endsOn: day('2026-11-24') }, 'ended', 'prescription-ended'],
    ['after its paper', { validUntil: day('2026-11-24') }, 'expired', 'prescription-expired'],
    ['after its drug', { drugExpiresOn: day('2026-11-24') }, 'expired', 'drug-expired'],
    ['after the vet stopped it', { stoppedOn: ON }, 'stopped', 'prescription-stopped'],
    [
      'stopped counts before expired',
      { stoppedOn: ON, validUntil: day('2026-11-21') },
      'stopped',
      'prescription-stopped',
    ],
  ])('%s', (_name, more, state, problem) => {
    const found = prescriptionState({ ...PAPER, ...more }, ON);
    expect([found.state, found.fault?.code ?? null]).toEqual([state, problem]);
    expect(code(more)).toBe(problem ?? 'answered');
  });
  it('says when the vet wants to see the animal again', () => {
    const at = (recheckOn: string) => prescriptionState({ ...PAPER, recheckOn: day(recheckOn) }, ON).recheck;
    expect([at('2026-12-01')?.inDays, at('2026-11-25')?.inDays, at('2026-11-20')?.inDays]).toEqual([6, 0, -5]);
    expect(prescriptionState(PAPER, ON).recheck).toBeNull();
  });
});

describe('a prescription as written down', () => {
  it.each<readonly [string, Partial<Prescription>, string | null]>([
    ['is sound with a number of doses', {}, null],
    ['is sound with an end', { count: undefined, endsOn: day('2026-12-01') }, null],
    ['is sound with a volume', { amount: { by: 'volume', ml: 0.4 } }, null],
    ['names its drug', { drug: ' ' }, 'text-missing'],
    ['names who wrote it', { prescriber: '' }, 'text-missing'],
    ['names its route', { route: '' }, 'text-missing'],
    ['has an interval', { everyHours: 0 }, 'not-positive'],
    ['has whole doses', { count: 2.5 }, 'not-whole'],
    ['has an end', { count: undefined }, 'course-open'],
    ['ends after it begins', { endsOn: day('2026-11-19') }, 'course-backwards'],
    ['has a dose', { amount: { by: 'volume', ml: -1 } }, 'not-positive'],
    ['has a unit', { amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: {} } }, 'unit-missing'],
    ['has a cap that is a number', { capPercent: Number.NaN }, 'not-finite'],
  ])('%s', (_name, more, expected) => {
    expect(prescriptionFault({ ...PAPER, ...more })?.code ?? null).toBe(expected);
    if (expected !== null) expect(code(more)).toBe(expected);
  });
});

describe('the dose of a prescription', () => {
  it('is worked out by mass or taken as written', () => {
    expect(value(given({}))).toMatchObject({ ml: 0.45, warnings: [] });
    expect(value(given({ amount: { by: 'volume', ml: 0.4 } }))).toMatchObject({ ml: 0.4, warnings: [] });
  });
  it('needs a weight of its own day when it goes by mass', () => {
    expect(code({}, { weight: null })).toBe('weight-none');
    expect(code({}, { weight: { massG: 900, massDate: day('2026-10-01') } })).toBe('weight-too-old');
    expect(code({}, { weight: { massG: 900, massDate: ON, flagged: true } })).toBe('weight-flagged');
    expect(value(given({ amount: { by: 'volume', ml: 0.4 } }, { weight: null })).warnings).toHaveLength(1);
  });
  it('is held against what was given before', () => {
    expect(code({}, { earlierMl: [0.45] })).toBe('answered');
    expect(code({}, { earlierMl: [0.045] })).toBe('dose-tenfold');
  });
});
