import { beforeAll, describe, expect, it } from 'vitest';
import { eventLine } from '../../src/store/index.ts';
import { type Answers, answersOf, type Row, wrong } from './answers.ts';
import { BRACKEN, siteEvents } from './sampleSite.ts';

const at = (events: readonly unknown[], more: object = {}) => ({
  species: 'Python regius',
  on: '2026-11-25',
  massG: 900,
  events,
  ...more,
});
const fed = (day: string, outcome = 'taken') => ({ kind: 'prey-offered', day, prey: 'rat-small', count: 1, outcome });
const on = (kind: string, day: string, more: object = {}) => ({ kind, day, ...more });
const hold = (until: string | null, reason: RegExp) => ({
  state: 'hold',
  hold: { until, reason: expect.stringMatching(reason) },
});
const vet = (reason: RegExp) => ({
  next: null,
  state: 'vet',
  hold: { until: null, reason: expect.stringMatching(reason) },
});

/** 900 g are fed every 7–14 days; rests and holds are those of docs/calc.md, with their sources. */
const ROWS: readonly Row[] = [
  ['soon', at([fed('2026-11-20')]), { next: '2026-11-27', state: 'soon' }],
  ['due on the first day', at([fed('2026-11-18')]), { next: '2026-11-25', state: 'due' }],
  ['due on the last day', at([fed('2026-11-11')]), { next: '2026-11-18', state: 'due' }],
  ['overdue', at([fed('2026-11-10')]), { next: '2026-11-17', state: 'overdue' }],
  ['no meal yet', at([]), { next: '2026-11-25', state: 'due' }],
  ['no weight spans all bands', at([fed('2026-11-19')], { massG: undefined }), { next: '2026-11-24', state: 'due' }],
  [
    'the weight of the log',
    at([on('animal-weighed', '2026-11-01', { weightG: 1500 }), fed('2026-11-12')], { massG: undefined }),
    { next: '2026-11-26', state: 'soon' },
  ],
  ['the keeper’s own days', at([fed('2026-11-20')], { plan: { everyDays: 5 } }), { next: '2026-11-25', state: 'due' }],
  [
    'a plan of the log',
    at([on('feed-plan-set', '2026-11-01', { everyDays: [3, 4] }), fed('2026-11-20')]),
    { next: '2026-11-23', state: 'overdue' },
  ],
  ['a refusal', at([fed('2026-11-10'), fed('2026-11-23', 'refused')]), { next: '2026-11-27', state: 'soon' }],
  ['opaque', at([fed('2026-11-10'), on('opaque-seen', '2026-11-20')]), hold('2026-12-11', /opaque since 20 Nov 2026/)],
  [
    'opaque and shed',
    at([fed('2026-11-01'), on('opaque-seen', '2026-11-12'), on('shed-seen', '2026-11-24')]),
    { next: '2026-11-24', state: 'due' },
  ],
  ['opaque long ago', at([fed('2026-11-20'), on('opaque-seen', '2026-10-01')]), { state: 'soon' }],
  [
    'a regurgitation',
    at([fed('2026-11-18'), on('regurgitation-seen', '2026-11-20')]),
    hold('2026-11-30', /rest after regurgitating/),
  ],
  [
    'a rest that is over',
    at([fed('2026-11-08'), on('regurgitation-seen', '2026-11-10')]),
    { state: 'due', next: '2026-11-20' },
  ],
  [
    'two regurgitations',
    at([on('regurgitation-seen', '2026-10-01'), on('regurgitation-seen', '2026-11-01')]),
    vet(/again on 1 Nov 2026/),
  ],
  [
    'two that lie far apart',
    at([on('regurgitation-seen', '2026-06-01'), on('regurgitation-seen', '2026-11-20')]),
    hold('2026-11-30', /rest/),
  ],
  [
    'two, and the vet’s word',
    at([
      on('regurgitation-seen', '2026-10-01'),
      on('regurgitation-seen', '2026-11-01'),
      on('vet-cleared', '2026-11-20', { by: 'Dr Alder' }),
    ]),
    { hold: undefined },
  ],
  ['an arrival', at([on('animal-added', '2026-11-20', { acquiredOn: '2026-11-20' })]), hold('2026-11-27', /came here/)],
  [
    'a hatchling before its first shed',
    at([on('animal-added', '2026-11-20', { hatchedOn: '2026-11-20' })]),
    hold('2026-12-04', /first shed/),
  ],
  [
    'a hatchling that has shed',
    at([on('animal-added', '2026-11-10', { hatchedOn: '2026-11-10' }), on('shed-seen', '2026-11-20')]),
    { hold: undefined },
  ],
  [
    'cooling',
    at([fed('2026-10-01'), on('cooling-started', '2026-11-01')]),
    { next: null, ...hold(null, /cooled since/) },
  ],
  [
    'just warmed',
    at([on('cooling-started', '2026-09-01'), on('cooling-ended', '2026-11-24')]),
    hold('2026-11-27', /cooled/),
  ],
  [
    'after laying',
    at([fed('2026-09-01'), on('clutch-laid', '2026-11-22', { eggs: 6 })]),
    { next: '2026-11-23', state: 'due' },
  ],
  [
    'a vet’s hold',
    at([on('hold-placed', '2026-11-20', { payload: { reason: 'vet', words: 'wheezes' } })]),
    vet(/wheezes/),
  ],
  [
    'a keeper’s hold',
    at([on('hold-placed', '2026-11-20', { reason: 'keeper', until: '2026-12-01' })]),
    hold('2026-12-01', /keeper/),
  ],
  [
    'a hold that was lifted',
    at([
      fed('2026-11-20'),
      on('hold-placed', '2026-11-20', { reason: 'keeper' }),
      on('hold-lifted', '2026-11-21', { reason: 'keeper' }),
    ]),
    { state: 'soon' },
  ],
  [
    'a slip that undoes',
    at([
      fed('2026-11-20'),
      on('opaque-seen', '2026-11-21', { id: 'e1' }),
      on('slip-made', '2026-11-21', { corrects: 'e1', how: 'undo' }),
    ]),
    { state: 'soon' },
  ],
  [
    'a slip that amends',
    at([
      { id: 'e1', ...fed('2026-11-20') },
      on('slip-made', '2026-11-21', {
        corrects: 'e1',
        how: 'amend',
        payload: { prey: 'rat-pup', count: 1, outcome: 'refused' },
      }),
    ]),
    { next: '2026-11-24', state: 'due' },
  ],
  [
    'what comes later is not looked at',
    at([fed('2026-11-10'), fed('2026-11-26')]),
    { next: '2026-11-17', state: 'overdue' },
  ],
  ['kinds that are not known', at([fed('2026-11-20'), on('moon-seen', '2026-11-20')]), { state: 'soon' }],
  [
    'an instant for a day',
    at([{ ...fed(''), day: undefined, at: '2026-11-20T23:30:00+02:00' }]),
    { next: '2026-11-27' },
  ],
  [
    'events as in the log',
    {
      ...at(
        siteEvents()
          .filter((one) => one.subjects[0] === BRACKEN)
          .map((one) => JSON.parse(eventLine(one))),
      ),
      massG: undefined,
    },
    hold('2026-12-11', /opaque/),
  ],
  ['an unknown species', at([], { species: 'Anilius scytale' }), wrong('species-unknown', 'species')],
  [
    'an unknown species with a plan',
    at([fed('2026-11-20')], { species: 'Anilius scytale', plan: { percent: 10, everyDays: [7, 9] } }),
    { next: '2026-11-27' },
  ],
  [
    'no events',
    { species: 'Python regius', on: '2026-11-25' },
    wrong('case-malformed', 'events', /a list of events is wanted/),
  ],
  ['an event that is none', at([3]), wrong('case-malformed', 'events.0')],
  ['an event without a day', at([fed('2026-11-20'), { kind: 'shed-seen' }]), wrong('case-malformed', 'events.1.day')],
  ['an event on no day', at([on('shed-seen', '2026-13-01')]), wrong('date-malformed', 'events.0.day')],
  [
    'an event at no time',
    at([{ kind: 'shed-seen', at: '2026-11-20T99:00:00Z' }]),
    wrong('date-malformed', 'events.0.at'),
  ],
  ['a kind that cannot be', at([on('Shed Seen', '2026-11-20')]), wrong('case-malformed', 'events.0.kind')],
  [
    'a payload that lacks something',
    at([on('prey-offered', '2026-11-20', { prey: 'rat-pup' })]),
    wrong('case-malformed', 'events.0.outcome'),
  ],
  [
    'the same in a payload',
    at([on('prey-offered', '2026-11-20', { payload: { prey: 'rat-pup' } })]),
    wrong('case-malformed', 'events.0.payload.outcome'),
  ],
  ['an impossible weight', at([], { massG: 0 }), wrong('not-positive', 'massG')],
  ['a day that is not', at([], { on: '2026-11-31' }), wrong('date-malformed', 'on')],
];

describe('calc due', () => {
  let ran: Answers;
  beforeAll(async () => {
    ran = await answersOf(
      'due',
      ROWS.map(([, given]) => given),
    );
  });

  it('answers every line in order', () => {
    expect([ran.code, ran.answers.length]).toEqual([1, ROWS.length]);
  });

  it.each(ROWS.map(([name, , answer], n) => [name, n, answer] as const))('%s', (_name, n, answer) => {
    expect({ hold: undefined, ...(ran.answers[n] as object) }).toMatchObject(answer);
  });

  it('has the fields of the contract and no others, and always says why', () => {
    const named = (name: string) => ran.answers[ROWS.findIndex(([one]) => one === name)] as { why: string[] };
    expect(Object.keys(named('soon'))).toEqual(['next', 'state', 'why']);
    expect(Object.keys(named('opaque'))).toEqual(['next', 'state', 'hold', 'why']);
    for (const name of ['soon', 'opaque', 'two regurgitations']) expect(named(name).why.length).toBeGreaterThan(0);
  });
});
