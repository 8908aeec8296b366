import { describe, expect, it } from 'vitest';
import {
  ACCEPTANCE,
  ACCEPTANCE_OFFERS,
  AGAIN_MINUTES,
  BREAK_MINUTES,
  BREEDING,
  CAP_PERCENT,
  COUNT_OFF,
  COURSE_SHARES,
  DEFAULT_GAPS,
  DEFAULT_INTERVALS,
  ENOUGH_SHARE,
  ENTRY_MARGIN,
  FLUSH_ML,
  HATCH_SPAN,
  HOLD_DAYS,
  IN_SEASON_DAYS,
  LATE_DAYS,
  LATE_TIMES,
  LAYING_GAP_DAYS,
  LEARNED_GAPS,
  LEAST_GAPS,
  LEAST_MINUTES,
  LENGTH_DOUBT,
  LONG_OFFER_DAYS,
  LOSS_PERCENT,
  LOT_LIFE_DAYS,
  MOST_DIFFERENCE_PERCENT,
  NO_HANDLING_DAYS,
  OLD_LENGTH_DAYS,
  OWN_PREFIX,
  PEOPLE_RULE,
  PREY_CLASSES,
  PRIOR_DATES,
  QUARANTINE_DAYS,
  RESERVE_SHARE,
  REST_DAYS,
  SHARE_LIMITS,
  SHED_DAYS,
  SITE_DATES,
  SPARE_SHARE,
  SPECIES,
  STOMACH_SHARE,
  TENFOLD_FROM,
  TIMING_MEALS,
  USE_BY_DAYS,
  WASTE_POWER,
  WEIGH_DAYS,
  WEIGHT_DAYS,
} from '../../src/core/index.ts';
import { filesIn, readText, tableRows } from './sources.ts';

const DOC = readText('docs/rules.md');
const ROWS = tableRows(DOC);
const RULE = /\b(?:CARE|BREED|SHOP|PRINT)-[A-Z]+\b/g;
const DOCUMENTED = ROWS.filter(([first = '']) => /^(?:CARE|BREED|SHOP|PRINT)-[A-Z]+$/.test(first));

function idsIn(text: string): readonly string[] {
  return [...new Set(text.match(RULE) ?? [])].sort();
}

/** `80–90 %` of a range of shares. */
function percentRange(shares: readonly [number, number]): string {
  return `${shares.map((share) => Math.round(share * 100)).join('–')} %`;
}

/** The titles of tests and of their groups: the first argument of describe and it, on one line or the next. */
function titlesIn(text: string): string {
  const titles = text.matchAll(
    /\b(?:describe|it|test)(?:\.each)?\((?:[\w.()]*\)\()?\s*(['"`])((?:\\.|(?!\1)[\s\S])*)\1/g,
  );
  return [...titles].map((title) => title[2]).join('\n');
}

describe('docs/rules.md', () => {
  const inCode = idsIn([...filesIn('src/core', '.ts').values(), ...filesIn('print', '.ts').values()].join('\n'));
  it('lists exactly the rules that src/core and print name', () => {
    expect(inCode.length).toBeGreaterThanOrEqual(18);
    expect(DOCUMENTED.map(([id]) => id).sort()).toEqual(inCode);
  });
  it('says of every rule what it says, its default, its mark and its source', () => {
    for (const [id, says = '', byDefault = '', mark = '', source = ''] of DOCUMENTED) {
      expect([id, says.length > 20, byDefault.length > 0, /^[SCDM](, [SCDM])*$/.test(mark), source.length > 5]).toEqual(
        [id, true, true, true, true],
      );
    }
  });
  it('says that no vet has reviewed the defaults', () => {
    expect(DOC).toContain('No vet has reviewed these defaults.');
  });
  it('has the figures of the code', () => {
    const row = (id: string): string => DOCUMENTED.find(([first]) => first === id)?.join(' ') ?? '';
    const figures: readonly [string, string][] = [
      ['BREED-WINDOW', `${PRIOR_DATES} and ${SITE_DATES} dates`],
      ['BREED-REST', `${REST_DAYS} days`],
      ['BREED-AGAIN', `${LAYING_GAP_DAYS} days`],
      ['BREED-HATCH', `within ${HATCH_SPAN.usualDays.join('–')} days; waited for ${HATCH_SPAN.waitDays} days`],
      ['CARE-OPAQUE', `${HOLD_DAYS.opaque} days`],
      ['CARE-REGURGITATION', `${HOLD_DAYS.regurgitation} days`],
      ['CARE-REGURGITATION', `within ${HOLD_DAYS.regurgitationWindow} days`],
      ['CARE-ARRIVAL', `${HOLD_DAYS.arrival} days`],
      ['CARE-HATCHLING', `${HOLD_DAYS.firstShed} days`],
      ['CARE-COOLING', `${HOLD_DAYS.afterCooling} days`],
      ['CARE-QUARANTINE', `${QUARANTINE_DAYS[1]} days (${QUARANTINE_DAYS.join('–')} at least)`],
      ['CARE-LENGTH', `${LENGTH_DOUBT.shorterPercent} % shorter, ${LENGTH_DOUBT.times} times`],
      ['CARE-AGAIN', `${AGAIN_MINUTES} minutes`],
      ['CARE-ENTRY', `${ENTRY_MARGIN * 100} %`],
      ['CARE-THAW', `${SPARE_SHARE * 100} %`],
      ['CARE-LOT', `old from ${LOT_LIFE_DAYS[0]} days, past after ${LOT_LIFE_DAYS[1]}`],
      ['CARE-RECEIVE', `from ${USE_BY_DAYS} days ahead`],
      ['CARE-COUNT', `more than ${COUNT_OFF.share * 100} % and more than ${COUNT_OFF.items} items`],
      ['CARE-ACCEPTANCE', `growers ${percentRange(ACCEPTANCE.grower)}, adults ${percentRange(ACCEPTANCE.adult)}`],
      ['CARE-ACCEPTANCE', `in season ${percentRange(ACCEPTANCE['breeding male'])}`],
      ['CARE-ACCEPTANCE', `counts as ${ACCEPTANCE_OFFERS} offers; in season for ${IN_SEASON_DAYS} days`],
      ['CARE-NEED', `in ${ENOUGH_SHARE * 100} % of cases`],
      ['CARE-NEED', `counts as ${TIMING_MEALS} meals; gaps more than ${LATE_DAYS} days late`],
      ['CARE-ORDER', `a reserve of ${RESERVE_SHARE * 100} %`],
      ['CARE-LOSS', `${LOSS_PERCENT.note}, ${LOSS_PERCENT.review} and ${LOSS_PERCENT.urgent} %`],
      ['CARE-SHARE', `${SHARE_LIMITS.adultPercent} % for adults, ${SHARE_LIMITS.youngPercent} % for young`],
      ['CARE-SHARE', `above ${SHARE_LIMITS.confirmPercent} %`],
      ['CARE-MARK', `above ${MOST_DIFFERENCE_PERCENT} %`],
      ['CARE-RECENT', `${WEIGHT_DAYS.young} days for young animals, ${WEIGHT_DAYS.adult} days for adults`],
      ['CARE-CAP', `${CAP_PERCENT.gavage} % of body mass, at most ${CAP_PERCENT.most} %`],
      ['CARE-TENFOLD', `${TENFOLD_FROM} times`],
      ['CARE-COURSE', `before ${COURSE_SHARES.early * 100} %`],
      ['CARE-TUBE', `${STOMACH_SHARE.from * 100}–${STOMACH_SHARE.to * 100} %`],
      ['CARE-TUBE', `flush ${FLUSH_ML.join('–')} mL`],
      ['CARE-INTERVAL', `counts as ${DEFAULT_GAPS} gaps; the latest ${LEARNED_GAPS} gaps`],
      [
        'CARE-INTERVAL',
        `beyond ${LATE_TIMES} times the default are left out; without a default from ${LEAST_GAPS} gaps`,
      ],
      ['CARE-GROWING', `the power ${WASTE_POWER}`],
      ['CARE-HANDLING', `${NO_HANDLING_DAYS * 24} hours, counted as ${NO_HANDLING_DAYS} days`],
      ['CARE-PACE', `breaks from ${BREAK_MINUTES} minutes on; nothing is said of less than ${LEAST_MINUTES} minutes`],
      [
        'CARE-WEIGH',
        `(${[WEIGH_DAYS.hatchling, WEIGH_DAYS.grower, WEIGH_DAYS.adult].map((days) => days.join('–')).join(', ')}; weekly ${WEIGH_DAYS.weekly[0]})`,
      ],
      ['CARE-ENCLOSURE', `old after ${OLD_LENGTH_DAYS} days`],
      ['CARE-PEOPLE', `from ${PEOPLE_RULE.fromM} m (8 ft), one more per ${PEOPLE_RULE.stepM} m`],
      ['SHOP-SHED', `within ${SHED_DAYS} days`],
      ['SHOP-LONG', `from ${LONG_OFFER_DAYS} days`],
      ['SHOP-OWN', `prefix ${OWN_PREFIX}`],
    ];
    for (const [id, figure] of figures) expect(row(id), id).toContain(figure);
  });
  it('has every interval of the rounds of the code', () => {
    const intervals = Object.values(DEFAULT_INTERVALS);
    const rows = ROWS.filter((row) => row.length === 4 && intervals.some(({ task }) => task === row[0]));
    expect(rows).toEqual(intervals.map(({ task, where, everyDays, mark }) => [task, where, everyDays.join('–'), mark]));
  });
  it('has every prey class of the code', () => {
    const rows = ROWS.filter(([first = '']) => /^(mouse|rat)-/.test(first)).map((row) => row.slice(0, 3));
    expect(rows).toEqual(PREY_CLASSES.map((one) => [one.id, `${one.eachG[0]}–${one.eachG[1]}`, one.mark]));
  });
  it('has every step of the breeding calendar of the code', () => {
    const rows = ROWS.filter(
      ([first = '', , , days = '']) => BREEDING.some((one) => one.name === first) && /–/.test(days),
    );
    const steps = BREEDING.flatMap(({ name, steps }) =>
      steps.map(({ from, to, days, mark, source, weak }) => [
        name,
        from,
        to,
        days.join('–'),
        mark,
        `${source}${weak ? ' (weak)' : ''}`,
      ]),
    );
    expect(rows.filter((row) => row.length === 6)).toEqual(steps);
  });
  it('has every feed plan of the code', () => {
    const rows = ROWS.filter((row) => row.length === 5 && SPECIES.some((one) => one.name === row[0]));
    expect(rows).toEqual(
      SPECIES.flatMap(({ name, bands }) =>
        bands.map(({ belowG, percent, everyDays, mark }) => [
          name,
          belowG === null ? 'largest band' : `under ${belowG} g`,
          percent.join('–'),
          everyDays.join('–'),
          mark,
        ]),
      ),
    );
  });
});

describe('every rule', () => {
  const titles = titlesIn([...filesIn('tests', '.test.ts').values()].join('\n'));
  it.each(DOCUMENTED.map(([id]) => id))('%s is named by the title of a test', (id) => {
    expect(titles).toContain(id);
  });
  it('is looked for in titles only, not in the code under them', () => {
    expect(titlesIn("it('CARE-ONE holds', () => { expect('CARE-TWO'); });")).toBe('CARE-ONE holds');
    expect(titlesIn("it.each(cases)('CARE-THREE %s', () => {});\ndescribe(\n  'CARE-FOUR',")).toBe(
      'CARE-THREE %s\nCARE-FOUR',
    );
  });
});
