import { describe, expect, it } from 'vitest';
import {
  allAsPlanned,
  type Decision,
  doneAfterAll,
  endRound,
  type Facility,
  foldFacility,
  type Id,
  type LogEvent,
  lookedAt,
  notDone,
  type RoundTask,
  sayFew,
  skipLine,
  skipTakenBack,
  summaryOf,
} from '../../../src/core/index.ts';
import type { Line } from '../log.ts';
import {
  AT,
  clean,
  EXHIBITS,
  eventsOf,
  FERN,
  HALL,
  historyOf,
  houseOf,
  lineOn,
  looked,
  MOSS,
  ON,
  RACK,
  TANSY,
  TUBS,
  water,
  written,
} from './house.ts';

const [TUB, SECOND, THIRD] = TUBS;

/** A log that grows as the round goes on, and what is known after each step. */
class Walk {
  events: LogEvent[];
  constructor(...lines: readonly Line[]) {
    this.events = eventsOf(...lines);
  }
  get facility(): Facility {
    return foldFacility(this.events);
  }
  past(task: RoundTask, of: Id) {
    const line = lineOn(this.facility, task, of);
    return { line, history: historyOf(this.events, line.of) };
  }
  take(decision: Decision): this {
    if (decision.kind !== 'accepted') throw new Error(decision.problem.message);
    this.events = written(this.events, decision.drafts);
    return this;
  }
  sweep(task: RoundTask, place: Id = RACK): this {
    const { drafts } = allAsPlanned(this.facility, { place, task }, AT);
    this.events = written(this.events, drafts);
    return this;
  }
  states(task: RoundTask, homes: readonly Id[] = TUBS): readonly string[] {
    return homes.map((home) => lineOn(this.facility, task, home).state);
  }
}

describe('CARE-ROUND: all as planned', () => {
  it('is one event for the water of a rack, about the homes that are due', () => {
    const walk = new Walk(water('2026-03-20', SECOND));
    const sweep = allAsPlanned(walk.facility, { place: RACK, task: 'water' }, AT);
    expect(sweep.drafts).toEqual([{ kind: 'water-changed', subjects: [TUB, THIRD], payload: {}, day: ON }]);
    expect([sweep.done.length, sweep.left.length, sweep.notDue]).toEqual([2, 0, 1]);
    expect(walk.sweep('water').states('water')).toEqual(['done', 'done', 'done']);
  });
  it('is one event a home for a full clean, which stands in the ledger of its animal too', () => {
    const { drafts } = allAsPlanned(houseOf(clean('2026-03-19', THIRD)), { place: RACK, task: 'clean' }, AT);
    expect(drafts.map((draft) => draft.subjects)).toEqual([
      [TUB, MOSS],
      [SECOND, FERN],
    ]);
  });
  it('is one event for each rack and hall of the walk', () => {
    const all = new Walk(['2026-01-01', 'place-set', { name: 'Hall', parent: RACK, walk: 9 }, { subjects: [HALL] }]);
    const { drafts } = allAsPlanned(all.facility, { place: RACK, task: 'look' }, AT);
    expect(drafts.map((draft) => draft.subjects)).toEqual([[...TUBS], [...EXHIBITS]]);
  });
  it('leaves out and names who needs a look of its own, and who just ate', () => {
    const again: Line = ['2026-03-19', 'health-looked', { well: false, words: 'thin' }, { subjects: [MOSS, TUB] }];
    const look = allAsPlanned(houseOf(again), { place: RACK, task: 'look' }, AT);
    expect(look.left.map(({ line, problem }) => [line.of, problem.code])).toEqual([[TUB, 'look-again']]);
    expect(look.drafts[0]?.subjects).toEqual([SECOND, THIRD]);
    const ate: Line = [
      '2026-03-19',
      'prey-offered',
      { prey: 'rat-pup', count: 1, outcome: 'taken' },
      { subjects: [FERN] },
    ];
    const cleaned = allAsPlanned(houseOf(ate), { place: RACK, task: 'clean' }, AT);
    expect(cleaned.left.map(({ line, problem }) => [line.of, problem.code])).toEqual([[SECOND, 'handled-too-soon']]);
  });
  it('leaves out homes that need more people', () => {
    const { drafts } = allAsPlanned(houseOf(), { place: RACK, task: 'water', without: [SECOND] }, AT);
    expect(drafts[0]?.subjects).toEqual([TUB, THIRD]);
  });
  it.each(['weigh', 'treat'] as const)('never does for all what is done one by one: %s', (task) => {
    const { drafts, left } = allAsPlanned(houseOf(), { place: RACK, task }, AT);
    expect(drafts).toEqual([]);
    for (const { problem } of left) expect(problem.code).toBe('round-each');
  });
});

describe('CARE-ROUND: the exceptions of a round', () => {
  it('one that was not done: the deed is taken back, written again for the others, and the task is skipped', () => {
    const walk = new Walk().sweep('water');
    walk.take(notDone(walk.facility, walk.past('water', SECOND), AT));
    expect(walk.states('water')).toEqual(['done', 'skipped', 'done']);
    expect(walk.events.slice(-3).map(({ kind, subjects }) => [kind, subjects])).toEqual([
      ['slip-made', [...TUBS]],
      ['water-changed', [TUB, THIRD]],
      ['task-skipped', [SECOND]],
    ]);
  });
  it('a second exception leaves the first as it is', () => {
    const walk = new Walk().sweep('water');
    for (const home of [SECOND, THIRD]) walk.take(notDone(walk.facility, walk.past('water', home), AT));
    expect(walk.states('water')).toEqual(['done', 'skipped', 'skipped']);
    expect(summaryOf(walk.facility, { place: RACK, task: 'water' }, AT)).toMatchObject({
      done: 1,
      left: [],
      refused: [],
    });
  });
  it('the last home of an event leaves no event about the rack alone', () => {
    const walk = new Walk(water(ON, RACK, TUB));
    walk.take(notDone(walk.facility, walk.past('water', TUB), AT));
    expect(walk.events.slice(-2).map((event) => event.kind)).toEqual(['slip-made', 'task-skipped']);
  });
  it('takes back what another device wrote as well, twice on one day', () => {
    const walk = new Walk(water(ON, RACK, ...TUBS), water(ON, TUB));
    walk.take(notDone(walk.facility, walk.past('water', TUB), AT));
    expect(walk.states('water')).toEqual(['skipped', 'done', 'done']);
  });
  it('done after all: the skip is taken back and the deed is there again', () => {
    const walk = new Walk().sweep('water');
    walk.take(notDone(walk.facility, walk.past('water', SECOND), AT));
    walk.take(doneAfterAll(walk.past('water', SECOND), AT));
    expect(walk.states('water')).toEqual(['done', 'done', 'done']);
    expect(lineOn(walk.facility, 'water', SECOND).skip).toBeNull();
  });
  it('a full clean that was not done leaves the animal’s ledger too', () => {
    const walk = new Walk().sweep('clean');
    walk.take(notDone(walk.facility, walk.past('clean', TUB), AT));
    expect(walk.states('clean')).toEqual(['skipped', 'done', 'done']);
    expect(walk.events.at(-2)).toMatchObject({ kind: 'slip-made', subjects: [TUB, MOSS] });
  });
  it('refuses where nothing was done on that day', () => {
    const walk = new Walk(water('2026-03-19', TUB));
    const decision = notDone(walk.facility, walk.past('water', TUB), AT);
    expect(decision.kind === 'refused' && decision.problem.code).toBe('round-not-done');
  });
  it('a meal is amended: refused, and taken again after a second scan', () => {
    const offer: Line = [ON, 'prey-offered', { prey: 'rat-pup', count: 1, outcome: 'taken' }, { subjects: [MOSS] }];
    const walk = new Walk(offer);
    walk.take(notDone(walk.facility, walk.past('feeding', MOSS), AT));
    expect(walk.facility.animals.get(MOSS)?.offers).toMatchObject([{ taken: false }]);
    walk.take(doneAfterAll(walk.past('feeding', MOSS), AT));
    expect(walk.facility.animals.get(MOSS)?.offers).toMatchObject([{ taken: true }]);
  });
});

describe('a line that is skipped', () => {
  it('keeps its reason, which can be added afterwards, and can be taken back', () => {
    const walk = new Walk();
    walk.take(skipLine(walk.past('water', TUB), '', AT));
    expect(lineOn(walk.facility, 'water', TUB).skip).toEqual({ day: ON, keeper: 'Ada', why: null });
    walk.take(skipLine(walk.past('water', TUB), ' glass cracked ', AT));
    expect(lineOn(walk.facility, 'water', TUB).skip?.why).toBe('glass cracked');
    walk.events = written(walk.events, skipTakenBack(walk.past('water', TUB), AT));
    expect(walk.states('water')[0]).toBe('due');
  });
  it('is the animal’s own where each is fed or weighed', () => {
    const walk = new Walk();
    walk.take(skipLine(walk.past('weigh', MOSS), 'opaque', AT));
    expect(walk.events.at(-1)).toMatchObject({
      kind: 'task-skipped',
      subjects: [MOSS],
      payload: { task: 'weigh', why: 'opaque' },
    });
    expect(lineOn(walk.facility, 'weigh', TUB).state).toBe('skipped');
  });
});

describe('CARE-LOOK: look again', () => {
  it('takes its home out of the look at the rack, and stays until it is well', () => {
    const walk = new Walk().sweep('look');
    const animal = walk.facility.animals.get(FERN);
    if (animal === undefined) throw new Error('no Fern');
    walk.take(lookedAt(walk.facility, walk.past('look', SECOND), { animal, well: false, words: 'wheezes' }, AT));
    expect(walk.facility.animals.get(FERN)?.lastLook).toEqual({ day: ON, well: false, words: 'wheezes' });
    expect(walk.events.slice(-2).map(({ kind, subjects }) => [kind, subjects])).toEqual([
      ['health-looked', [TUB, THIRD]],
      ['health-looked', [FERN, SECOND]],
    ]);
    expect(summaryOf(walk.facility, { place: RACK, task: 'look' }, AT).again.map((line) => line.of)).toEqual([SECOND]);
    walk.take(lookedAt(walk.facility, walk.past('look', SECOND), { animal, well: true, words: '' }, AT));
    expect(walk.facility.animals.get(FERN)?.lastLook?.well).toBe(true);
  });
  it('asks for words', () => {
    const walk = new Walk(looked('2026-03-19', ...TUBS));
    const animal = walk.facility.animals.get(FERN);
    const decision =
      animal && lookedAt(walk.facility, walk.past('look', SECOND), { animal, well: false, words: ' ' }, AT);
    expect(decision?.kind === 'refused' && decision.problem.code).toBe('look-words');
  });
});

describe('the end of a round', () => {
  const meal = (who: Id, outcome: 'taken' | 'refused'): Line => [
    ON,
    'prey-offered',
    { prey: 'rat-pup', count: 2, outcome },
    { subjects: [who] },
  ];
  it('says fed, refused, skipped, left and the prey that was used', () => {
    const walk = new Walk(meal(MOSS, 'taken'), meal(FERN, 'refused'));
    walk.take(skipLine(walk.past('feeding', TANSY), 'opaque', AT));
    const summary = summaryOf(walk.facility, { place: RACK, task: 'feeding' }, AT);
    expect(summary).toMatchObject({ done: 1, left: [], used: [['rat-pup', 4]] });
    expect(summary.refused.map((line) => line.of)).toEqual([FERN]);
    walk.take(endRound({ place: RACK, task: 'feeding', second: 'Tilda' }, summary, AT));
    expect(walk.events.at(-1)).toMatchObject({
      kind: 'round-ended',
      subjects: [RACK],
      payload: {
        task: 'feeding',
        done: 1,
        refused: 1,
        skipped: 1,
        left: 0,
        second: 'Tilda',
        used: [{ prey: 'rat-pup', count: 4 }],
      },
    });
    expect(walk.facility.places.get(RACK)?.rounds.feeding?.ended).toEqual({ done: 1, refused: 1, skipped: 1, left: 0 });
  });
  it('of another task has neither refusals nor prey', () => {
    const walk = new Walk(water(ON, TUB));
    const summary = summaryOf(walk.facility, { place: RACK, task: 'water' }, AT);
    walk.take(endRound({ place: RACK, task: 'water', second: null }, summary, AT));
    expect(walk.events.at(-1)?.payload).toEqual({ task: 'water', done: 1, skipped: 0, left: 2 });
  });
});

describe('a few names of many', () => {
  it('are said with how many more', () => {
    const all = [...houseOf().animals.values()];
    expect(sayFew(all, 2)).toBe('Moss, Fern and 3 more');
    expect(sayFew(all.slice(0, 1))).toBe('Moss');
  });
});
