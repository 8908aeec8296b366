import { type Problem, problem, type Result } from '../../problems.ts';
import { type LocusRow, showsInOneDose } from '../loci/index.ts';
import { pathAt } from '../notation/index.ts';
import { homozygoteName, nameOf } from '../phenotype.ts';
import { type Entry, hasOneDoseName, type Meaning } from './dictionary.ts';
import type { Said } from './sentence.ts';

/** What one name says of a locus: one or two alleles, the copy beside a single one, and the chance where it is only possible. */
export interface Contribution {
  readonly row: LocusRow;
  readonly alleles: readonly string[];
  readonly beside: 'wild' | 'unknown';
  readonly chance: { readonly p: number; readonly q: number } | null;
  /** Two copies that are only meant because it shows: one is enough where there is one chromosome. */
  readonly shows: boolean;
  readonly at: number;
}

/** Words in brackets that say something of the copies. */
const COPIES: Readonly<Record<string, 'one' | 'two' | 'unknown'>> = {
  'one copy': 'one',
  'two copies': 'two',
  'other copy unknown': 'unknown',
};
/** Words in brackets that say which chromosome is meant; the reader of the whole text takes them. */
export const SIDES: Readonly<Record<string, 'male' | 'female' | 'open'>> = {
  'male-maker': 'male',
  'male maker': 'male',
  'female-maker': 'female',
  'female maker': 'female',
  'x or y not known': 'open',
};

/** The one meaning of a name with its modifier. Errors: `trade-ambiguous`, which lists the choices, and `trade-unfit`. */
export function contributionsOf(said: Said): Result<readonly Contribution[]> {
  const readings = said.partner === null ? said.entries.map((entry) => readingOf(entry, said)) : compounds(said);
  const found = new Map<string, readonly Contribution[]>();
  for (const reading of readings) if (reading.ok) found.set(keyOf(reading.value), reading.value);
  const fitting = [...found.values()].filter((one) => fitsAside(one, said));
  const [first] = fitting;
  if (fitting.length > 1) return refused(ambiguous(said, fitting));
  if (first !== undefined) return askedAgain(said, first) ?? { ok: true, value: first };
  const fault = readings.find((one) => !one.ok);
  return fault !== undefined && !fault.ok
    ? fault
    : refused(unfit(said, `(${said.aside ?? ''})`, 'these words in brackets say nothing of it', said.text));
}

function readingOf({ meaning }: Entry, said: Said): Result<readonly Contribution[]> {
  switch (meaning.kind) {
    case 'allele':
      return alleleReading(meaning, said);
    case 'pair':
      return pairReading(meaning, said);
    case 'combo':
      return comboReading(meaning, said);
    default:
      return meaning satisfies never;
  }
}

function alleleReading(
  { row, symbol }: Extract<Meaning, { kind: 'allele' }>,
  said: Said,
): Result<readonly Contribution[]> {
  const { modifier } = said;
  const name = nameOf(row, symbol);
  const copies = COPIES[said.aside ?? ''];
  const recessive = !showsInOneDose(symbol);
  if (modifier.dose === 'super' && recessive)
    return refused(unfit(said, 'super', 'it is recessive, so two copies have no other name', `visual ${name}`));
  if (modifier.chance !== null && (modifier.dose === 'super' || modifier.dose === 'visual')) {
    return refused(unfit(said, modifier.text, 'a chance is said of one copy', `possible het ${name}`));
  }
  const two =
    modifier.dose === 'super' ||
    copies === 'two' ||
    (modifier.dose !== 'het' && modifier.chance === null && recessive && copies === undefined);
  if (two) return single(row, [symbol, symbol], said, recessive && modifier.dose !== 'super');
  const open =
    copies === 'unknown' ||
    (copies === undefined && modifier.dose !== 'het' && modifier.chance === null && !hasOneDoseName(row, symbol));
  return { ok: true, value: [{ ...plain(row, [symbol], said), beside: open ? 'unknown' : 'wild' }] };
}

function pairReading({ row, pair }: Extract<Meaning, { kind: 'pair' }>, said: Said): Result<readonly Contribution[]> {
  const { dose, chance, text } = said.modifier;
  const [a, b] = pair;
  if (dose === 'super') return refused(unfit(said, 'super', 'it is the name of two copies already', said.text));
  const isPlain = (dose === 'bare' || dose === 'visual') && chance === null && COPIES[said.aside ?? ''] === undefined;
  if (isPlain) return single(row, pair, said, a === b);
  if (a === b) return alleleReading({ kind: 'allele', row, symbol: a }, said);
  const words = `het ${nameOf(row, a)} or het ${nameOf(row, b)}`;
  const what = text === '' ? `(${said.aside ?? ''})` : text;
  return refused(unfit(said, what, `it is ${nameOf(row, a)} and ${nameOf(row, b)} at one locus`, words));
}

function comboReading(combo: Extract<Meaning, { kind: 'combo' }>, said: Said): Result<readonly Contribution[]> {
  const all: Contribution[] = [];
  for (const { row, carrying } of combo.means) {
    const [a, b] = carrying;
    if (a === undefined) continue;
    const part: Said = { ...said, aside: null, text: combo.name };
    const reading =
      b === undefined
        ? alleleReading({ kind: 'allele', row, symbol: a }, part)
        : pairReading({ kind: 'pair', row, pair: [a, b] }, part);
    if (!reading.ok) return reading;
    if (b === undefined && said.modifier.dose !== 'bare')
      return refused(unfit(said, said.modifier.text, 'it names genes that show', said.text));
    all.push(...reading.value);
  }
  return { ok: true, value: all };
}

/** `Hypo/Strawberry`: one allele of each name, at one locus. */
function compounds(said: Said): readonly Result<readonly Contribution[]>[] {
  const pairs = said.entries.flatMap((one) =>
    (said.partner ?? []).map((other) => [one.meaning, other.meaning] as const),
  );
  const found = pairs.flatMap(([one, other]) =>
    one.kind === 'allele' && other.kind === 'allele' && one.row === other.row
      ? [single(one.row, [one.symbol, other.symbol], said, false)]
      : [],
  );
  const names = `${said.entries[0]?.name ?? ''}/${said.partner?.[0]?.name ?? ''}`;
  if (found.length === 0)
    return [
      refused(
        unfit(said, '/', 'the slash joins two alleles of one locus, and these are not', names.replace('/', ', ')),
      ),
    ];
  return said.modifier.dose === 'bare' && said.modifier.chance === null
    ? found
    : [refused(unfit(said, said.modifier.text, 'both copies are named', names))];
}

function single(
  row: LocusRow,
  alleles: readonly string[],
  said: Said,
  shows: boolean,
): Result<readonly Contribution[]> {
  return { ok: true, value: [{ ...plain(row, alleles, said), shows }] };
}

function plain(row: LocusRow, alleles: readonly string[], said: Said): Contribution {
  return { row, alleles, beside: 'wild', chance: said.modifier.chance, shows: false, at: said.at };
}

/** Words in brackets are of copies or sides, or name the pair that is meant, as in `(Lesser/Mojave)`. */
function fitsAside(contributions: readonly Contribution[], { aside }: Said): boolean {
  if (aside === null || COPIES[aside] !== undefined || SIDES[aside] !== undefined) return true;
  const [one] = contributions;
  return (
    one !== undefined &&
    contributions.length === 1 &&
    one.alleles.length === 2 &&
    pairAside(one.row, one.alleles).toLowerCase() === aside
  );
}

/** The words in brackets that tell pairs of one name apart. */
export function pairAside(row: LocusRow, pair: readonly string[]): string {
  return pair.map((symbol) => nameOf(row, symbol)).join('/');
}

/** A bare recessive right behind a het: the trade writes both meanings like this. */
function askedAgain(said: Said, [one]: readonly Contribution[]): Result<never> | null {
  if (!said.afterHet || one === undefined || !one.shows || said.aside !== null) return null;
  const [symbol = ''] = one.alleles;
  const choices = `het ${nameOf(one.row, symbol)} / a comma before ${homozygoteName(one.row, symbol)} for a visual`;
  return refused(problem('trade-ambiguous', { word: said.text, choices }, pathAt(said.at)));
}

function ambiguous(said: Said, readings: readonly (readonly Contribution[])[]): Problem {
  const choices = readings
    .map((one) => one.map(({ row, alleles }) => `${said.text} (${pairAside(row, alleles)}, ${row.locus})`).join(' + '))
    .join(' / ');
  return problem('trade-ambiguous', { word: said.text, choices }, pathAt(said.at));
}

function unfit(said: Said, modifier: string, why: string, instead: string): Problem {
  return problem('trade-unfit', { modifier, name: said.text, why, instead }, pathAt(said.at));
}

function keyOf(contributions: readonly Contribution[]): string {
  return contributions.map((one) => `${one.row.locus} ${[...one.alleles].sort().join('/')} ${one.beside}`).join(';');
}

function refused(fault: Problem): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: fault };
}
