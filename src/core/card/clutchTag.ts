import { sayAnimal } from '../animal/index.ts';
import { breedingOf, eggsLeft, forecastOf, sayWindow, spansOf, type Window, windowOf } from '../breeding/index.ts';
import { type Day, daysBetween, sayDayShort } from '../days.ts';
import { type ClutchRecord, type Facility, nameOf, sayPlace } from '../facility/index.ts';
import type { Fraction, YoungLook } from '../genetics/index.ts';
import { type Id, sayId } from '../ids.ts';
import { speciesForms } from './card.ts';
import type { Forms } from './content.ts';
import { type LabelContent, type LabelLine, labelLine, labelOf } from './label.ts';

/** Days that lie nearer are of this season: nobody needs their year. */
const SAME_SEASON_DAYS = 180;
/** Looks that a tag names; the record has them all. */
const NAMED_LOOKS = 3;

/**
 * The tag of a clutch or a litter: who laid it by whom, when, how many, where and at what it is kept, when it usually
 * hatches (rule BREED-CALENDAR) and what it can hold. `on` only decides whether the short forms need a year.
 */
export function clutchTag(facility: Facility, clutch: ClutchRecord, on: Day): LabelContent {
  const dam = facility.animals.get(clutch.dam);
  const lines: readonly (LabelLine | null)[] = [
    labelLine('id', true, sayId(clutch.id)),
    labelLine('main', true, parentForms(facility, clutch)),
    dam === undefined ? null : labelLine('body', false, speciesForms(dam.species)),
    labelLine('body', false, begunForms(clutch, on)),
    labelLine('body', false, countForms(clutch)),
    ...(clutch.bears === 'eggs' ? eggLines(facility, clutch, on) : []),
    labelLine('body', false, looksForms(facility, clutch)),
  ];
  return labelOf({
    kind: 'clutch',
    id: clutch.id,
    called: `clutch tag ${sayId(clutch.id)}`,
    code: { says: 'id', id: clutch.id },
    lines: lines.filter((line) => line !== null),
  });
}

function eggLines(facility: Facility, clutch: ClutchRecord, on: Day): readonly (LabelLine | null)[] {
  const where = sayPlace(facility, clutch.incubation?.place ?? null);
  return [
    where === null ? null : labelLine('body', false, where),
    clutch.hatchedOn === null ? labelLine('body', false, warmthForms(clutch)) : null,
    ...hatchLines(facility, clutch, on),
  ];
}

function parentForms(facility: Facility, { dam, sire }: ClutchRecord): Forms {
  const name = (id: Id): string => {
    const animal = facility.animals.get(id);
    return animal === undefined ? nameOf(facility, id) : sayAnimal(animal);
  };
  const by = sire === null ? 'sire not known' : name(sire);
  const plain = `${name(dam)} × ${sire === null ? '?' : by}`;
  return { long: `0.1 ${name(dam)} × ${sire === null ? by : `1.0 ${by}`}`, medium: plain, short: plain };
}

function begunForms({ bears, laidOn }: ClutchRecord, on: Day): Forms {
  const began = bears === 'eggs' ? 'laid' : 'born';
  const long = `${began} ${sayDayShort(laidOn)}`;
  return { long, medium: long, short: `${began} ${sayNear(laidOn, on)}` };
}

function countForms(clutch: ClutchRecord): Forms {
  if (clutch.bears === 'live young') {
    const still = clutch.eggs - (clutch.hatched ?? clutch.eggs);
    const long = `${clutch.hatched ?? clutch.eggs} young${still === 0 ? '' : `, ${still} stillborn`}`;
    return { long, medium: long, short: long };
  }
  const { eggs, slugs } = clutch;
  const medium = `${counted(eggs, 'egg')}${slugs === 0 ? '' : `, ${counted(slugs, 'slug')}`}`;
  const left = eggsLeft(clutch);
  const long = left === eggs || clutch.hatchedOn !== null ? medium : `${medium}, ${left} left`;
  return { long, medium: long, short: long };
}

/** A set temperature that nobody has written yet is left open for a pen. */
function warmthForms({ incubation }: ClutchRecord): Forms {
  const set = incubation?.setC ?? null;
  const said = set === null ? '_____ °C' : `${set} °C`;
  return { long: `incubator set at ${said}`, medium: `set at ${said}`, short: said };
}

/** When it hatched, or when it usually does and from what that is known. */
function hatchLines(facility: Facility, clutch: ClutchRecord, on: Day): readonly LabelLine[] {
  if (clutch.hatchedOn !== null) {
    const young = clutch.hatched === null ? '' : `: ${clutch.hatched} of ${counted(clutch.eggs, 'egg')}`;
    const last = clutch.hatchings.at(-1)?.day ?? clutch.hatchedOn;
    const until = (say: (day: Day) => string): string => (last === clutch.hatchedOn ? '' : ` to ${say(last)}`);
    const long = `hatched ${sayDayShort(clutch.hatchedOn)}${until(sayDayShort)}${young}`;
    const near = (day: Day): string => sayNear(day, on);
    const short = `hatched ${near(clutch.hatchedOn)}${until(near)}${young}`;
    return [labelLine('body', true, { long, medium: long, short })];
  }
  const window = hatchWindow(facility, clutch);
  if (window === null) {
    const long = 'hatch: no figure for this species yet';
    return [labelLine('body', true, { long, medium: 'hatch: no figure yet', short: 'hatch: no figure' })];
  }
  const { step, from, to, herSpans } = window;
  const short = `usually ${step.days[0]}–${step.days[1]} d${step.weak ? ' (weak)' : ''}`;
  const medium = herSpans.length === 0 ? short : `${short}, hers ${herSpans.join(', ')}`;
  const first = from.slice(0, 4) === to.slice(0, 4) ? withoutYear(from) : sayDayShort(from);
  const days = `hatch ${first} – ${sayDayShort(to)}`;
  return [
    labelLine('body', true, { long: days, medium: days, short: `hatch ${sayNear(from, on)} – ${sayNear(to, on)}` }),
    labelLine('body', false, { long: sayWindow(window), medium, short }),
  ];
}

function hatchWindow(facility: Facility, clutch: ClutchRecord): Window | null {
  const species = facility.animals.get(clutch.dam)?.species;
  if (species === undefined) return null;
  const step = breedingOf(species)?.steps.find((one) => one.from === 'laid' && one.to === 'hatched');
  if (step === undefined) return null;
  const spans = spansOf(facility, species, step);
  const others = [...spans].flatMap(([female, days]) => (female === clutch.dam ? [] : days));
  return windowOf(step, clutch.laidOn, others, spans.get(clutch.dam) ?? []);
}

function looksForms(facility: Facility, clutch: ClutchRecord): Forms {
  const forecast = forecastOf(facility, clutch);
  if (!forecast.ok) {
    const why = clutch.sire === null ? 'sire not known' : 'see the record';
    return { long: `can hold: ${why}`, medium: `can hold: ${why}`, short: 'can hold: ?' };
  }
  const { looks, count } = forecast.value;
  const all = counted(Number(count), 'look');
  const named = looks.slice(0, NAMED_LOOKS).map(sayLook);
  const more = Number(count) - named.length;
  const first = named[0] ?? 'nothing that lives';
  return {
    long: `can hold: ${named.length === 0 ? first : named.join('; ')}${more > 0 ? `; ${counted(more, 'rarer look')}` : ''}`,
    medium: `can hold: ${first}${count > 1n ? `; ${counted(Number(count) - 1, 'more look')}` : ''}`,
    short: all,
  };
}

function sayLook({ shows, carries, p }: YoungLook): string {
  const hets = carries.filter((one) => one.sure).map((one) => one.words);
  return `${sayShare(p)} ${[shows, ...hets].join(' ')}`;
}

/** A share in percent; `≈` where it is rounded, and never 0 for what is possible. */
function sayShare({ top, bottom }: Fraction): string {
  const tenths = (2n * top * 1000n + bottom) / (2n * bottom);
  if (tenths === 0n) return '< 0.1 %';
  const figure = tenths % 10n === 0n ? `${tenths / 10n}` : `${tenths / 10n}.${tenths % 10n}`;
  return `${tenths * bottom === top * 1000n ? '' : '≈ '}${figure} %`;
}

function sayNear(day: Day, on: Day): string {
  return Math.abs(daysBetween(on, day)) <= SAME_SEASON_DAYS ? withoutYear(day) : sayDayShort(day);
}

function withoutYear(day: Day): string {
  return sayDayShort(day).replace(/ \d{4}$/, '');
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
