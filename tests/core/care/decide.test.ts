import { describe, expect, it } from 'vitest';
import {
  type Action,
  AGAIN_MINUTES,
  type AnimalRecord,
  type Decision,
  decide,
  type Moment,
  parseEvent,
  STAMPS,
  stampOf,
} from '../../../src/core/index.ts';
import {
  data,
  day,
  eventId,
  fed,
  id,
  type Line,
  REX,
  refused,
  rex,
  TUB,
  undo,
  value,
  weighed,
  writtenAt,
} from '../log.ts';

const D = '2026-03-20';
/** Half past nine of that day, an hour and a half after the lines of the log. */
const NOW = Date.parse(`${D}T09:30:00Z`);
const now = (more: Partial<Moment> = {}): Moment => ({ day: day(D), today: day(D), nowMs: NOW, ...more });
const W = weighed('2026-03-01', 850);
const WELL = rex({}, W, fed('2026-03-01'), ['2026-03-01', 'animal-moved', { to: TUB }]);
const act = (action: Action, animal: AnimalRecord = WELL, moment: Partial<Moment> = {}): Decision =>
  decide(animal, action, now(moment));

/** The outcome in one word: accepted, or the code of what is asked or refused. */
function outcome(decision: Decision): string {
  return decision.kind === 'accepted' ? 'accepted' : `${decision.kind} ${decision.problem.code}`;
}

const FED: Action = { do: 'fed-as-planned' };

describe('what an action writes', () => {
  const writes: readonly [Action, string, string, Record<string, unknown>][] = [
    [
      FED,
      'fed as planned',
      'prey-offered',
      { prey: 'rat-pup', count: 3, outcome: 'taken', asPlanned: true, totalG: 82.5 },
    ],
    [
      { do: 'refused' },
      'refused',
      'prey-offered',
      { prey: 'rat-pup', count: 3, outcome: 'refused', asPlanned: true, totalG: 82.5 },
    ],
    [
      { do: 'fed', prey: 'rat-small', count: 1, taken: true },
      'taken: 1 × small rat',
      'prey-offered',
      { prey: 'rat-small', count: 1, totalG: 80, outcome: 'taken' },
    ],
    [
      { do: 'fed', prey: 'rat-small', count: 1, totalG: 71, taken: false },
      'refused: 1 × small rat',
      'prey-offered',
      { prey: 'rat-small', count: 1, totalG: 71, outcome: 'refused' },
    ],
    [{ do: 'weighed', weightG: 861.25 }, 'weighed 861.25 g', 'animal-weighed', { weightG: 861.25 }],
    [{ do: 'opaque' }, 'opaque', 'opaque-seen', {}],
    [{ do: 'shed', whole: true }, 'shed', 'shed-seen', { whole: true }],
    [{ do: 'shed', whole: false }, 'shed, in pieces', 'shed-seen', { whole: false }],
    [{ do: 'regurgitated' }, 'regurgitated', 'regurgitation-seen', {}],
    [{ do: 'regurgitated', note: 'on day 2' }, 'regurgitated', 'regurgitation-seen', { note: 'on day 2' }],
    [{ do: 'vet-cleared', by: ' Dr Ash ' }, 'cleared by Dr Ash', 'vet-cleared', { by: 'Dr Ash' }],
    [{ do: 'note', words: ' calm ' }, 'noted', 'note-made', { words: 'calm' }],
  ];
  it.each(writes)('%j says “%s”', (action, said, kind, payload) => {
    const plan: Line = ['2026-03-02', 'feed-plan-set', { prey: 'rat-pup', count: 3 }];
    const decision = act(action, rex({}, W, fed('2026-03-01'), plan));
    expect(decision).toEqual({ kind: 'accepted', said, drafts: [{ kind, payload, subjects: [REX], day: D }] });
  });
  it.each(writes)('%j is an event that can be read', (_, __, kind, payload) => {
    expect(parseEvent({ ...data(W, 1), kind, payload }).ok).toBe(true);
  });
  it('cleaning and water are about the place, and the animal in it', () => {
    expect(act({ do: 'cleaned', how: 'full' })).toMatchObject({
      said: 'cleaned in full',
      drafts: [{ kind: 'place-cleaned', subjects: [TUB, REX], payload: { how: 'full' } }],
    });
    expect(act({ do: 'cleaned', how: 'spot' })).toMatchObject({ said: 'spot cleaned' });
    expect(act({ do: 'water' })).toMatchObject({ said: 'water changed', drafts: [{ subjects: [TUB, REX] }] });
    expect(outcome(act({ do: 'water' }, rex({})))).toBe('refused place-missing');
  });
  it('a first weight is said to be the first', () => {
    expect(act({ do: 'weighed', weightG: 80 }, rex({}))).toMatchObject({ said: 'first weight 80 g' });
  });
});

describe('what is refused, and nothing is written', () => {
  const refusals: readonly [string, Action, string][] = [
    ['a weight of nothing', { do: 'weighed', weightG: 0 }, 'not-positive'],
    ['a weight below nothing', { do: 'weighed', weightG: -850 }, 'not-positive'],
    ['850 kg', { do: 'weighed', weightG: 850_000 }, 'weight-impossible'],
    ['no number', { do: 'weighed', weightG: Number.NaN }, 'not-finite'],
    ['prey outside the list', { do: 'fed', prey: 'quail', count: 1, taken: true }, 'prey-unknown'],
    ['no prey', { do: 'fed', prey: 'rat-pup', count: 0, taken: true }, 'not-positive'],
    ['half an item', { do: 'fed', prey: 'rat-pup', count: 0.5, taken: true }, 'not-positive'],
    ['less than nothing in grams', { do: 'fed', prey: 'rat-pup', count: 1, totalG: -5, taken: true }, 'not-positive'],
    ['prey of a tonne', { do: 'fed', prey: 'rat-pup', count: 1, totalG: 1e6, taken: true }, 'prey-impossible'],
    [
      'grams that are no number',
      { do: 'fed', prey: 'rat-pup', count: 1, totalG: Number.NaN, taken: true },
      'not-finite',
    ],
    ['a vet without a name', { do: 'vet-cleared', by: '  ' }, 'vet-unnamed'],
    ['an empty note', { do: 'note', words: ' \n ' }, 'note-empty'],
  ];
  it.each(refusals)('%s', (_, action, code) => {
    expect(outcome(act(action))).toBe(`refused ${code}`);
  });
  it('a day in the future', () => {
    expect(outcome(act(FED, WELL, { day: day('2026-03-21') }))).toBe('refused date-future');
    expect(outcome(act(FED, WELL, { day: day('2026-03-19') }))).toBe('accepted');
  });
  it('a day before the animal’s life', () => {
    const born = rex({ hatchedOn: '2026-03-10', acquiredOn: '2026-03-12' }, W);
    expect(outcome(act({ do: 'opaque' }, born, { day: day('2026-03-09') }))).toBe('refused date-before-life');
    expect(outcome(act({ do: 'opaque' }, born, { day: day('2026-03-10') }))).toBe('accepted');
  });
  it('a planned meal without a plan', () => {
    expect(outcome(act(FED, rex({ species: 'Lampropeltis getula' }, W)))).toBe('refused species-unknown');
  });
  it('a planned meal without a weight', () => {
    expect(outcome(act(FED, rex({})))).toBe('refused weight-missing');
  });
});

describe('CARE-AGAIN: the same on the same animal within ten minutes is asked about', () => {
  const at = (minutes: number): Partial<Moment> => ({ nowMs: Date.parse(`${D}T08:00:00Z`) + 3000 + minutes * 60_000 });
  const n = writtenAt(`${D}T08:00:03Z`);
  const opaque: Line = [D, 'opaque-seen', {}, { n }];
  const animal = rex({}, W, fed('2026-03-01'), opaque);
  it('up to ten minutes, and no longer', () => {
    expect(outcome(act({ do: 'opaque' }, animal, at(0)))).toBe('asks again-so-soon');
    expect(outcome(act({ do: 'opaque' }, animal, at(AGAIN_MINUTES - 0.01)))).toBe('asks again-so-soon');
    expect(outcome(act({ do: 'opaque' }, animal, at(AGAIN_MINUTES)))).toBe('accepted');
  });
  it('the drafts are there for the answer “again”', () => {
    const decision = act({ do: 'opaque' }, animal, at(3));
    expect(decision).toMatchObject({ kind: 'asks', said: 'opaque', drafts: [{ kind: 'opaque-seen' }] });
    expect(decision.kind === 'asks' && decision.problem.message).toContain('3 min ago');
  });
  it('not for one that was undone', () => {
    const undone = rex({}, W, fed('2026-03-01'), opaque, undo(D, n));
    expect(outcome(act({ do: 'opaque' }, undone, at(1)))).toBe('accepted');
  });
  it('not for another event, another animal or a note', () => {
    expect(outcome(act({ do: 'shed', whole: true }, animal, at(1)))).toBe('accepted');
    expect(outcome(act({ do: 'opaque' }, rex({}, W), at(1)))).toBe('accepted');
    const noted = rex({}, W, [D, 'note-made', { words: 'calm' }]);
    expect(outcome(act({ do: 'note', words: 'calm' }, noted, at(1)))).toBe('accepted');
  });
  it('also where the other device’s clock is a little ahead', () => {
    expect(outcome(act({ do: 'opaque' }, animal, at(-5)))).toBe('asks again-so-soon');
  });
  it('also where one phone of the site runs hours ahead, and all clocks with it', () => {
    const ahead: Line = [D, 'opaque-seen', {}, { n, clock: [Date.parse(`${D}T13:00:00Z`), 4] }];
    expect(outcome(act({ do: 'opaque' }, rex({}, W, ahead), at(2)))).toBe('asks again-so-soon');
    expect(outcome(act({ do: 'opaque' }, rex({}, W, ahead), at(5 * 60)))).toBe('accepted');
  });
  it('a refusal right after a meal is asked about, since both are offers', () => {
    const fedNow = rex({}, W, fed(D, 30, { n }));
    expect(outcome(act({ do: 'refused' }, fedNow, { nowMs: Date.parse(`${D}T08:01:00Z`) }))).toBe('asks again-so-soon');
  });
});

describe('an animal that is not to be fed', () => {
  const ill = rex({}, W, fed('2026-03-01'), ['2026-03-15', 'regurgitation-seen', {}]);
  const twice = rex({}, W, ['2026-03-01', 'regurgitation-seen', {}], ['2026-03-15', 'regurgitation-seen', {}]);
  it('on hold, a meal is asked about, since it may have happened', () => {
    expect(outcome(act(FED, ill))).toBe('asks feed-on-hold');
    expect(outcome(act({ do: 'fed', prey: 'rat-pup', count: 1, taken: true }, ill))).toBe('asks feed-on-hold');
  });
  it('until the vet’s word, a planned meal is refused; one that did happen is asked about', () => {
    expect(outcome(act(FED, twice))).toBe('refused vet-word-needed');
    expect(outcome(act({ do: 'fed', prey: 'rat-pup', count: 1, taken: true }, twice))).toBe('asks feed-on-hold');
  });
  it('after the vet’s word it is half a meal as planned', () => {
    const cleared = rex(
      {},
      W,
      ['2026-03-01', 'regurgitation-seen', {}],
      ['2026-03-15', 'regurgitation-seen', {}],
      ['2026-03-16', 'vet-cleared', { by: 'Dr Ash' }],
    );
    const decision = act(FED, cleared);
    expect(outcome(decision)).toBe('accepted');
    expect(decision.kind === 'accepted' && decision.drafts[0]?.payload).toMatchObject({ prey: 'rat-weaned', count: 1 });
  });
  it('everything else is written as usual', () => {
    expect(
      [{ do: 'opaque' } as const, { do: 'weighed', weightG: 840 } as const].map((one) => outcome(act(one, twice))),
    ).toEqual(['accepted', 'accepted']);
  });
});

describe('an animal that left the site', () => {
  const left: Line = ['2026-03-18', 'animal-left', { how: 'died' }];
  const gone = rex({}, W, fed('2026-03-01'), left);
  it('is asked about, whatever is done to it', () => {
    const actions: readonly Action[] = [
      FED,
      { do: 'refused' },
      { do: 'opaque' },
      { do: 'note', words: 'kept for the museum' },
    ];
    for (const action of actions) expect(outcome(act(action, gone)), action.do).toBe('asks animal-gone');
  });
  it('comes before the question about a hold, a doubtful weight or a repetition', () => {
    const held = rex({}, W, ['2026-03-15', 'regurgitation-seen', {}], left);
    expect(outcome(act(FED, held))).toBe('asks animal-gone');
    expect(outcome(act({ do: 'weighed', weightG: 8500 }, gone))).toBe('asks animal-gone');
  });
});

describe('CARE-ENTRY: a doubtful weight is asked about', () => {
  it('and is written as confirmed when it stands', () => {
    const decision = act({ do: 'weighed', weightG: 8500 });
    expect(outcome(decision)).toBe('asks weight-unlikely');
    expect(decision.kind === 'asks' && decision.drafts[0]?.payload).toEqual({ weightG: 8500, confirmed: true });
  });
});

describe('stamps', () => {
  it('are found by their id, in capitals too', () => {
    expect(stampOf('FED-AS-PLANNED')?.words).toBe('fed as planned');
    expect(stampOf('burned')).toBeUndefined();
  });
  it.each(STAMPS)('$id puts its action on an animal, or says what it needs', ({ id, action, needs }) => {
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    if (action !== null) expect(act(action).kind).toBe('accepted');
    else expect(needs).toBe({ weighed: 'weight', moved: 'place', paired: 'mate' }[id] ?? 'season');
  });
});

describe('an entry that is put right', () => {
  it('by a slip is no longer the last meal', () => {
    const animal = rex({}, W, fed('2026-03-01'), refused('2026-03-19'), undo('2026-03-19', 3));
    expect(animal.offers.map((offer) => offer.taken)).toEqual([true]);
    expect(value(parseEvent(data(undo(D, 3), 9)))).toMatchObject({ payload: { corrects: eventId(3) } });
  });
});

describe('a move', () => {
  const to = id(77);
  const move = (more: Partial<Extract<Action, { do: 'moved' }>> = {}): Action => ({
    do: 'moved',
    to,
    toName: 'Rack 2 · 2-07',
    livesThere: null,
    ...more,
  });
  it('writes where the animal went, for the animal and the place', () => {
    const decision = act(move());
    expect(decision).toMatchObject({ kind: 'accepted', said: 'moved to Rack 2 · 2-07' });
    expect(decision.kind === 'accepted' && decision.drafts).toMatchObject([
      { kind: 'animal-moved', subjects: [REX, to], payload: { to } },
    ]);
  });
  it('to a tub that has somebody in it is asked about', () => {
    expect(outcome(act(move({ livesThere: 'Juniper' })))).toBe('asks place-taken');
  });
  it('to where it lives is refused', () => {
    expect(outcome(act(move({ to: TUB })))).toBe('refused moved-nowhere');
  });
});
