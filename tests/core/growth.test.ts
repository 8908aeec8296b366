import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  foldFacility,
  GAP_INTERVALS,
  type GrowthPlot,
  growthPlot,
  growthWithin,
  type LogEvent,
} from '../../src/core/index.ts';
import { added, CLUTCH, day, eventId, fed, type Line, log, REX, refused, SIRE, site, undo, weighed } from './log.ts';

const BALL_PYTHON = { id: REX, species: 'Python regius' } as const;

function plotOf(events: readonly LogEvent[], on = '2027-01-01', species = 'Python regius'): GrowthPlot {
  return growthPlot({ ...BALL_PYTHON, species }, events, day(on));
}

const laid = (on: string, damG?: number): Line => [
  on,
  'clutch-laid',
  { clutch: CLUTCH, eggs: 6, ...(damG !== undefined && { damG }) },
];
const weightsOf = ({ weights }: GrowthPlot): readonly number[] => weights.map(({ weightG }) => weightG);

describe('a growth plot', () => {
  it('has every weighing, more than the record keeps', () => {
    const many = Array.from({ length: 60 }, (_none, at) =>
      weighed(`2025-${pad(1 + (at % 12))}-${pad(1 + at / 12)}`, 900 + at),
    );
    const lines = [added(), ...many.sort(([a], [b]) => (a < b ? -1 : 1))];
    expect(plotOf(log(...lines)).weights).toHaveLength(60);
    expect(site(...lines).animals.get(REX)?.weights).toHaveLength(24);
  });
  it('is empty for an animal of which nothing was written', () => {
    expect(plotOf(log(added()))).toMatchObject({ weights: [], runs: [], peak: null, tenPercentLine: null });
  });
  it('leaves out what was taken back, what is later than the day, and other animals', () => {
    const events = log(
      added(),
      weighed('2026-01-01', 900),
      weighed('2026-02-01', 9000),
      undo('2026-02-01', 2),
      ['2026-02-02', 'animal-weighed', { weightG: 300 }, { subjects: [SIRE] }],
      weighed('2026-06-01', 950),
    );
    expect(weightsOf(plotOf(events, '2026-05-31'))).toEqual([900]);
    expect(weightsOf(plotOf(events))).toEqual([900, 950]);
  });
  it('tells feeds with their grams, also where nobody wrote them, and refusals', () => {
    const bare: Line = ['2026-01-03', 'prey-offered', { prey: 'rat-pup', count: 2, outcome: 'taken' }];
    const unknown: Line = ['2026-01-04', 'prey-offered', { prey: 'quail', count: 1, outcome: 'taken' }];
    const plot = plotOf(log(added(), fed('2026-01-01'), refused('2026-01-02'), bare, unknown));
    // A rat pup is 20–35 g in the list of prey, so two of them are 55 g.
    expect(plot.feeds).toEqual([
      { day: '2026-01-01', grams: 30, taken: true },
      { day: '2026-01-02', grams: 30, taken: false },
      { day: '2026-01-03', grams: 55, taken: true },
      { day: '2026-01-04', grams: null, taken: true },
    ]);
  });
  it('marks sheds, weighings that were asked about, and what a vet wrote', () => {
    const plot = plotOf(
      log(
        added(),
        ['2026-01-01', 'shed-seen', {}],
        ['2026-01-02', 'animal-weighed', { weightG: 900, confirmed: true }],
        ['2026-01-03', 'prescription-written', PRESCRIPTION],
        ['2026-01-03', 'dose-given', { prescription: eventId(3), ml: 0.2 }],
        ['2026-01-05', 'prescription-stopped', { prescription: eventId(3), by: 'Dr Reed' }],
        ['2026-01-06', 'vet-cleared', { by: 'Dr Reed' }],
      ),
    );
    expect(plot.sheds).toEqual(['2026-01-01']);
    expect(plot.weights).toEqual([{ day: '2026-01-02', weightG: 900, doubted: true }]);
    expect(plot.treatments.map(({ words }) => words)).toEqual([
      'prescribed: the vet’s drug',
      'dose: the vet’s drug',
      'stopped: the vet’s drug',
      'the vet’s word',
    ]);
  });
  it('draws the line at the highest weight less 10 %, from that day on', () => {
    const plot = plotOf(
      log(added(), weighed('2026-01-01', 900), weighed('2026-02-01', 1000), weighed('2026-03-01', 950)),
    );
    expect(plot.peak).toEqual({ day: '2026-02-01', weightG: 1000 });
    expect(plot.tenPercentLine).toEqual({ from: '2026-02-01', weightG: 900 });
  });
});

const PRESCRIPTION = {
  drug: 'the vet’s drug',
  prescriber: 'Dr Reed',
  amount: { by: 'volume', ml: 0.2 },
  route: 'by mouth',
  everyHours: 24,
  startsOn: '2026-01-03',
} as const;

describe('CARE-GAP: weighings are joined', () => {
  // A grown ball python is weighed every 90 days (CARE-WEIGH; common practice, no source), so 180 days are joined.
  it('up to two weighing intervals, and not a day more', () => {
    expect(GAP_INTERVALS).toBe(2);
    const joined = plotOf(log(added(), weighed('2026-01-01', 1800), weighed('2026-06-30', 1850)));
    expect([joined.runs.length, joined.gaps]).toEqual([1, []]);
    const apart = plotOf(log(added(), weighed('2026-01-01', 1800), weighed('2026-07-01', 1850)));
    expect(apart.runs.map((run) => run.length)).toEqual([1, 1]);
    expect(apart.gaps).toEqual([{ from: '2026-01-01', to: '2026-07-01', days: 181, mostDays: 180 }]);
  });
  it('by the interval of the earlier weight: a hatchling’s is 14 days', () => {
    const plot = plotOf(log(added(), weighed('2026-01-01', 70), weighed('2026-01-30', 80)));
    expect(plot.gaps[0]?.mostDays).toBe(28);
  });
  it('by 30 days for a species that is not in the list', () => {
    const lines = [added(), weighed('2026-01-01', 1800), weighed('2026-03-03', 1800)];
    expect(plotOf(log(...lines), '2027-01-01', 'Anilius scytale').gaps[0]?.mostDays).toBe(60);
  });
});

describe('a laying', () => {
  // One animal of the open log went from 1,735 to 1,227 g across laying (Add-my-Pet, Python_regius): no loss to alarm of.
  it('begins the peak and its line anew, and breaks the line of weights', () => {
    const plot = plotOf(
      log(added(), weighed('2026-03-01', 1735), laid('2026-04-01', 1227), weighed('2026-05-01', 1290)),
    );
    expect(plot.runs.map((run) => run.map(({ weightG }) => weightG))).toEqual([[1735], [1227, 1290]]);
    expect(plot.gaps).toEqual([]);
    expect(plot.stretches.map(({ from, to, peak }) => [from, to, peak.weightG])).toEqual([
      ['2026-03-01', '2026-04-01', 1735],
      ['2026-04-01', null, 1290],
    ]);
    expect(plot.tenPercentLine).toEqual({ from: '2026-05-01', weightG: 1161 });
  });
  it('leaves no peak until she is weighed again', () => {
    const plot = plotOf(log(added(), weighed('2026-03-01', 1735), laid('2026-04-01')));
    expect([plot.peak, plot.tenPercentLine, plot.layings.length]).toEqual([null, null, 1]);
  });
});

describe('a span of a plot', () => {
  it('keeps what lies in it, and the peak from before', () => {
    const plot = plotOf(
      log(added(), weighed('2026-01-01', 1900), fed('2026-01-02'), weighed('2026-03-01', 1800), fed('2026-03-02')),
    );
    const cut = growthWithin(plot, day('2026-02-01'));
    expect([cut.weights.length, cut.feeds.length, cut.runs.length, cut.peak?.weightG]).toEqual([1, 1, 1, 1900]);
    expect(cut.stretches).toEqual(plot.stretches);
  });
});

describe('law: for any history', () => {
  const step = fc.oneof(
    fc.record({ kind: fc.constant('weighed' as const), grams: fc.integer({ min: 10, max: 3000 }), days: fc.nat(250) }),
    fc.record({ kind: fc.constant('laid' as const), grams: fc.integer({ min: 10, max: 3000 }), days: fc.nat(250) }),
  );
  const historyOf = (steps: readonly { kind: 'weighed' | 'laid'; grams: number; days: number }[]): LogEvent[] => {
    let on = Date.UTC(2020, 0, 1);
    const lines = steps.map(({ kind, grams, days }): Line => {
      on += days * 86_400_000;
      const text = new Date(on).toISOString().slice(0, 10);
      return kind === 'weighed' ? weighed(text, grams) : laid(text, grams % 2 === 0 ? grams : undefined);
    });
    return log(added({}, {}, '2020-01-01'), ...lines);
  };
  it('the peak is the record’s own, the runs hold every weighing once, and the order of arrival does not matter', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.nat(), (steps, seed) => {
        const events = historyOf(steps);
        const plot = plotOf(events, '2040-01-01');
        const record = recordOf(events);
        expect(plot.peak).toEqual(record?.peak ?? null);
        expect(plot.runs.flat()).toEqual(plot.weights);
        const turned = [...events.slice(seed % events.length), ...events.slice(0, seed % events.length)];
        expect(plotOf(turned, '2040-01-01')).toEqual(plot);
      }),
      { numRuns: 60 },
    );
  });
});

function recordOf(events: readonly LogEvent[]) {
  return foldFacility(events).animals.get(REX);
}

function pad(value: number): string {
  return String(Math.floor(value)).padStart(2, '0');
}
