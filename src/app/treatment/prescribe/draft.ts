import {
  type AnimalRecord,
  type Day,
  enteredDose,
  isDay,
  type Payload,
  type Prescription,
  type Problem,
  prescriptionFault,
  problem,
  type Result,
  type Strength,
  sayMl,
} from '../../../core/index.ts';
import { readFigure } from '../figures.ts';

type Written = Payload<'prescription-written'>;

/** The form as it is typed: every field is empty at first, and every choice unmade. */
export interface Draft {
  readonly drug: string;
  readonly by: '' | 'mass' | 'volume';
  readonly dose: string;
  readonly strength: string;
  readonly strengthUnit: '' | 'mgPerMl' | 'percentWv';
  readonly ml: string;
  readonly route: string;
  readonly every: string;
  readonly everyUnit: '' | 'hours' | 'days';
  readonly count: string;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly validUntil: string;
  readonly drugExpiresOn: string;
  readonly recheckOn: string;
  readonly capPercent: string;
  readonly capMl: string;
  /** Sizes in mL with commas between them; empty: those of the site’s rules, `none`: nothing is ticked. */
  readonly syringes: string;
  readonly withholdFood: '' | 'yes' | 'no';
  readonly prescriber: string;
  readonly lot: string;
  readonly paper: string;
}

export type DraftField = keyof Draft;
export type Faults = { readonly [field in DraftField]?: Problem };

export const BLANK: Draft = {
  ...{ drug: '', by: '', dose: '', strength: '', strengthUnit: '', ml: '', route: '', every: '', everyUnit: '' },
  ...{ count: '', startsOn: '', endsOn: '', validUntil: '', drugExpiresOn: '', recheckOn: '' },
  ...{ capPercent: '', capMl: '', syringes: '', withholdFood: '', prescriber: '', lot: '', paper: '' },
};

/** What stands beside the vet’s words: today, and the syringes of the site’s rules, null where it has none. */
export interface DraftSetting {
  readonly today: Day;
  readonly syringesMl: readonly number[] | null;
}

/** What a draft comes to: the whole prescription, or every problem at its field. Nothing is filled in, and nothing half taken. */
export function readDraft(
  draft: Draft,
  animal: AnimalRecord,
  { today, syringesMl }: DraftSetting,
): { written: Written | null; faults: Faults } {
  const faults: { [field in DraftField]?: Problem } = {};
  const read = reader(draft, faults);
  const amount = amountOf(draft, read);
  const cap = draft.by === 'mass' && draft.capPercent.trim() !== '' ? read.figure('capPercent', 'cap') : null;
  const capMl = cap === null ? null : read.figure('capMl', 'volume that the vet wrote');
  const every = read.figure('every', 'time between doses');
  if (draft.everyUnit === '') faults.everyUnit = notChosen('Hours or days');
  if (draft.withholdFood === '') faults.withholdFood = notChosen('Food');
  const base = {
    ...{ drug: read.text('drug', 'drug'), route: read.text('route', 'route') },
    ...{ startsOn: read.day('startsOn', 'first day'), prescriber: read.text('prescriber', 'name of the vet') },
  };
  const count = draft.count.trim() === '' ? undefined : read.figure('count', 'number of doses');
  if (count === undefined && !isDay(draft.endsOn)) faults.count = problem('course-open');
  const syringes = tickedSyringes(draft, syringesMl);
  const isWhole = Object.keys(faults).length === 0;
  if (!isWhole || amount === null) return { written: null, faults };
  const written: Written = {
    ...base,
    amount,
    everyHours: (every ?? 0) * (draft.everyUnit === 'days' ? 24 : 1),
    ...(count !== undefined && count !== null && { count }),
    ...daysOf(draft),
    ...(cap !== null && { capPercent: cap }),
    ...(syringes !== null && { syringesMl: [...syringes] }),
    withholdFood: draft.withholdFood === 'yes',
    ...(draft.lot.trim() !== '' && { lot: draft.lot.trim() }),
    ...paperOf(draft, capMl),
  };
  const wrong = prescriptionFault(written as Prescription) ?? capFault(written, animal, { capMl, today });
  if (wrong === null) return { written, faults };
  return { written: null, faults: { [fieldOf(wrong, draft)]: wrong } };
}

/** The syringes that are ticked; null where nobody ticked any here and the site’s rules name none. */
export function tickedSyringes({ syringes }: Draft, syringesMl: readonly number[] | null): readonly number[] | null {
  if (syringes === '') return syringesMl;
  return syringes === NO_SYRINGE ? [] : syringes.split(',').map(Number);
}

/** What stands for no syringe at all, which is another thing than nothing said. */
export const NO_SYRINGE = 'none';

function reader(draft: Draft, faults: { [field in DraftField]?: Problem }) {
  const take = <T>(field: DraftField, result: Result<T>): T | null => {
    if (result.ok) return result.value;
    faults[field] = result.problem;
    return null;
  };
  return {
    figure: (field: DraftField, what: string) => take(field, readFigure(draft[field], what)),
    text(field: DraftField, what: string): string {
      const text = draft[field].trim();
      if (text === '') faults[field] = problem('text-missing', { what });
      return text;
    },
    day(field: DraftField, what: string): string {
      if (!isDay(draft[field])) faults[field] = problem('text-missing', { what });
      return draft[field];
    },
    miss(field: DraftField, why: Problem): void {
      faults[field] = why;
    },
  };
}

function amountOf(draft: Draft, read: ReturnType<typeof reader>): Written['amount'] | null {
  switch (draft.by) {
    case '':
      read.miss('by', notChosen('By body mass or as a volume'));
      return null;
    case 'volume': {
      const ml = read.figure('ml', 'volume');
      const strength = draft.strength.trim() === '' && draft.strengthUnit === '' ? undefined : strengthOf(draft, read);
      if (ml === null || strength === null) return null;
      return { by: 'volume', ml, ...(strength !== undefined && { strength }) };
    }
    case 'mass': {
      const [mgPerKg, strength] = [read.figure('dose', 'dose'), strengthOf(draft, read)];
      return mgPerKg === null || strength === null ? null : { by: 'mass', dose: { mgPerKg }, strength };
    }
    default:
      return draft.by satisfies never;
  }
}

/** The strength with its unit, which nobody but the bottle chooses. */
function strengthOf({ strength, strengthUnit }: Draft, read: ReturnType<typeof reader>): Strength | null {
  const figure = read.figure('strength', 'strength');
  if (strengthUnit === '') {
    const text = strength.trim();
    const noUnit = problem('unit-missing', { text, example: '10 mg per mL or 1 % w/v' });
    read.miss('strengthUnit', text === '' ? notChosen('Unit of the strength') : noUnit);
    return null;
  }
  return figure === null ? null : { [strengthUnit]: figure };
}

function daysOf(draft: Draft): Partial<Written> {
  const fields = ['endsOn', 'validUntil', 'drugExpiresOn', 'recheckOn'] as const;
  return Object.fromEntries(fields.flatMap((field) => (isDay(draft[field]) ? [[field, draft[field]]] : [])));
}

/** The volume that lifts the cap is the vet’s own figure, so it stays with the words about the paper. */
function paperOf(draft: Draft, capMl: number | null): Partial<Written> {
  const words = [draft.paper.trim(), ...(capMl === null ? [] : [`the vet wrote ${sayMl(capMl)} at once`])];
  const paper = words.filter((one) => one !== '').join('; ');
  return paper === '' ? {} : { paper };
}

/** As far off as the rounding of a syringe may be, and no further. */
const UNLIKE_SHARE = 0.05;

/** More than the usual cap goes in only with the volume that the vet wrote, so the figures must come to that volume. */
function capFault(
  written: Written,
  animal: AnimalRecord,
  { capMl, today }: { readonly capMl: number | null; readonly today: Day },
): Problem | null {
  if (capMl === null) return null;
  const worked = enteredDose(animal, written, today);
  if (!worked.ok || Math.abs(worked.value.exactMl - capMl) <= UNLIKE_SHARE * capMl) return null;
  return problem('cap-unlike', { written: sayMl(capMl), worked: sayMl(worked.value.exactMl) }, 'capMl');
}

/** At which field a problem of the core stands. */
function fieldOf({ code, path = '' }: Problem, draft: Draft): DraftField {
  if (code === 'course-backwards') return 'endsOn';
  if (code === 'course-impossible') return 'every';
  const [first = ''] = path.split('.');
  if (first === 'everyHours') return 'every';
  if (first === 'syringesMl') return 'syringes';
  return isField(first, draft) ? first : 'by';
}

function isField(name: string, draft: Draft): name is DraftField {
  return name in draft;
}

function notChosen(what: string): Problem {
  return problem('not-chosen', { what });
}
