import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Arrived,
  addDays,
  foldFacility,
  PREY_CLASSES,
  parseEvent,
  preyClass,
  readEachG,
  receiveLot,
  type SiteEvent,
  USE_BY_DAYS,
} from '../../../src/core/index.ts';
import { data, day, id, type Line, LOT, refusal, site, value } from '../log.ts';
import { lot, NOW, ON, short } from './freezer.ts';

const PUPS: Arrived = { prey: 'rat-pup', eachG: [20, 35], count: 50, useBy: null, source: null, topical: null };
const receive = (more: Partial<Arrived>, facility = site(), moment = NOW) =>
  receiveLot(facility, { ...PUPS, ...more }, moment);
const space = (freezerItems: number): Line => ['2026-01-01', 'site-rules-set', { freezerItems }, { subjects: [] }];

describe('CARE-RECEIVE: a lot that came', () => {
  it('is written with all that stood on the box, under the id of its label', () => {
    const made = receive({ useBy: day('2026-11-30'), source: 'Saltpan', topical: 'dusted with calcium' });
    if (made.kind !== 'accepted') throw new Error(short(made));
    expect(made.said).toBe('received 50 × rat pup');
    const draft = made.draftFor(LOT);
    const line = [draft.day, draft.kind, draft.payload, { subjects: draft.subjects }] as Line;
    const event = value(parseEvent(data(line, 1))) as SiteEvent;
    expect(foldFacility([event]).lots.get(LOT)).toMatchObject({
      prey: 'rat-pup',
      eachG: [20, 35],
      received: 50,
      left: 50,
      receivedOn: ON,
      useBy: '2026-11-30',
      source: 'Saltpan',
      topical: 'dusted with calcium',
    });
  });
  it('says nothing of what did not stand there', () => {
    const made = receive({});
    if (made.kind !== 'accepted') throw new Error(short(made));
    expect(made.draftFor(LOT).payload).toEqual({ prey: 'rat-pup', eachG: [20, 35], count: 50 });
  });
  it.each<[string, Partial<Arrived>, string]>([
    ['no class of the list', { prey: 'rat-huge' }, 'refused prey-unknown'],
    ['nothing in it', { count: 0 }, 'refused not-whole'],
    ['half an item', { count: 2.5 }, 'refused not-whole'],
    ['no count at all', { count: Number.NaN }, 'refused not-whole'],
    ['grams of nothing', { eachG: [0, 20] }, 'refused lot-grams-malformed'],
    ['grams from heavy to light', { eachG: [35, 20] }, 'refused lot-grams-malformed'],
    ['grams that are no number', { eachG: [Number.NaN, 20] }, 'refused lot-grams-malformed'],
    ['lighter items than the class has', { eachG: [18, 30] }, 'asks lot-grams'],
    ['heavier items than the class has', { eachG: [25, 40] }, 'asks lot-grams'],
    ['the grams of the class', { eachG: [20, 35] }, 'accepted'],
    ['a last day that was yesterday', { useBy: addDays(ON, -1) }, 'asks lot-day-over'],
    ['a last day that is today', { useBy: ON }, 'accepted'],
    ['a last day in two years', { useBy: addDays(ON, USE_BY_DAYS) }, 'accepted'],
    ['a last day after that', { useBy: addDays(ON, USE_BY_DAYS + 1) }, 'asks lot-day-far'],
  ])('with %s: %s', (_, more, says) => {
    expect(short(receive(more))).toBe(says);
  });
  it('may have come on an earlier day, but not on a later one', () => {
    const made = receive({}, site(), { ...NOW, day: addDays(ON, -3) });
    expect(made.kind === 'accepted' && made.draftFor(LOT).day).toBe('2026-03-17');
    expect(short(receive({}, site(), { ...NOW, day: addDays(ON, 1) }))).toBe('refused date-future');
  });
  it('is asked about where it does not fit into the freezer by the site’s own figure', () => {
    const full = site(space(99), lot(id(21)));
    expect(short(receive({}, full))).toBe('asks freezer-full');
    expect(short(receive({ count: 49 }, full))).toBe('accepted');
    expect(short(receive({ count: 90_000 }))).toBe('accepted');
  });
  it('with two doubts is one question that says both, the graver one first', () => {
    const made = receive({ eachG: [40, 60], useBy: addDays(ON, -1) });
    expect(made.kind === 'asks' && made.problem).toMatchObject({
      code: 'lot-day-over',
      message: 'Its last day, 19 Mar 2026, is over. One rat pup usually weighs 20–35 g, and 40–60 g stands here.',
    });
  });
  it('of any class with its own grams is taken without a question', () => {
    for (const { id: prey, eachG } of PREY_CLASSES) expect(short(receive({ prey, eachG }))).toBe('accepted');
  });
});

describe('the grams of one item as typed', () => {
  const pup = preyClass('rat-pup');
  if (pup === undefined) throw new Error('no such class');
  it.each<[string, readonly [number, number]]>([
    ['', [20, 35]],
    ['  ', [20, 35]],
    ['20-35', [20, 35]],
    ['20 – 35 g', [20, 35]],
    ['20g-35g', [20, 35]],
    ['1,5-2.5', [1.5, 2.5]],
    ['27', [27, 27]],
    ['27 g', [27, 27]],
  ])('“%s” is %j', (text, grams) => {
    expect(value(readEachG(text, pup))).toEqual(grams);
  });
  it.each(['35-20', 'small', '20-', '0-20', '-5', '20 35', '1e3', '20-35 kg'])('“%s” is refused', (text) => {
    expect(refusal(readEachG(text, pup))).toBe('lot-grams-malformed');
  });
  it('reads back whatever it could have been written as', () => {
    const grams = fc.integer({ min: 1, max: 900 });
    fc.assert(
      fc.property(grams, grams, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(value(readEachG(`${low}-${high}`, pup))).toEqual([low, high]);
      }),
    );
  });
});
