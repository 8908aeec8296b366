import {
  type Allele,
  type Confidence,
  type Day,
  type EventDraft,
  type Inheritance,
  type LethalNote,
  type LocusRow,
  type NamedPair,
  ok,
  PLAIN_ROW,
  type Result,
  refuse,
  type SexLink,
  type WelfareNote,
} from '../../../core/index.ts';

export const INHERITANCES = [
  'recessive',
  'incomplete-dominant',
  'dominant',
  'mixed',
] as const satisfies readonly Inheritance[];
export const CONFIDENCES = ['published', 'common practice', 'memory'] as const satisfies readonly Confidence[];

/** How a locus can lie on a sex chromosome, by its name in the form. */
export const SEX_LINKS = {
  none: ['no', null],
  'xy-partial': ['on X and Y, crossing over', { system: 'XY', kind: 'partial' }],
  'xy-full': ['on X and Y, never crossing over', { system: 'XY', kind: 'full' }],
  'zw-full': ['on Z', { system: 'ZW', kind: 'full' }],
} as const satisfies Record<string, readonly [string, Omit<SexLink, 'r'> | null]>;

/** Names stand in one line with this between them; no trade name holds it. */
const BETWEEN = '/';
/** Sources stand in one line with this between them. */
const BETWEEN_SOURCES = ';';

/** The line that a list of names is written on. */
export function namesLine(names: readonly string[]): string {
  return names.join(` ${BETWEEN} `);
}

export function sourcesLine(sources: readonly string[]): string {
  return sources.join(`${BETWEEN_SOURCES} `);
}

/** The row that a form gives; what it has no line for stays as in the row before. Errors: `text-missing`; all else is core’s to judge. */
export function rowIn(form: FormData, species: string, before: LocusRow | null): Result<LocusRow> {
  const read = (name: string): string => String(form.get(name) ?? '').trim();
  const locus = before?.locus ?? read('locus');
  if (locus === '') return refuse('text-missing', { what: 'name of the locus' });
  const sources = listed(read('sources'), BETWEEN_SOURCES);
  if (sources.length === 0) return refuse('text-missing', { what: 'source (your own word counts: say whose)' });
  const alleles = allelesIn(read);
  const group = read('group');
  return ok({
    ...PLAIN_ROW,
    ...before,
    species,
    locus,
    gene: read('gene') || null,
    inheritance: INHERITANCES.find((one) => one === read('inheritance')) ?? 'recessive',
    alleles,
    named: namedIn(read, before),
    sexLink: sexLinkIn(read),
    linkage: group === '' ? null : { group, r: read('group-r') || null },
    lethal: lethalIn(read, alleles, before),
    welfare: welfareIn(read, alleles, before),
    sources,
    confidence: CONFIDENCES.find((one) => one === read('confidence')) ?? 'memory',
    note: read('note') || null,
  });
}

/** The event that sets a row. */
export function locusDraft(row: LocusRow, day: Day): EventDraft {
  const { species, locus, inheritance, confidence } = row;
  const payload = {
    species,
    locus,
    inheritance,
    alleles: row.alleles.map(({ symbol, names }) => ({ symbol, names: [...names] })),
    sources: [...row.sources],
    confidence,
    ...given('gene', row.gene),
    ...given('note', row.note),
    ...given('sexLink', row.sexLink && sexLinkPayload(row.sexLink)),
    ...given('linkage', row.linkage && { group: row.linkage.group, ...rOf(row.linkage.r) }),
    ...some('named', row.named.map(namedPayload)),
    ...some(
      'lethal',
      row.lethal.map((one) => ({ ...one, carrying: [...one.carrying] })),
    ),
    ...some(
      'masks',
      row.masks.map((one) => ({ ...one, carrying: [...one.carrying], hides: [...one.hides] })),
    ),
    ...some(
      'welfare',
      row.welfare.map(({ anyOf, sex, says, source }) => ({
        anyOf: anyOf.map((one) => [...one]),
        says,
        source,
        ...given('sex', sex),
      })),
    ),
  };
  return { kind: 'locus-set', subjects: [], payload, day };
}

type Read = (name: string) => string;

/** The lines of a kind that were written on, by their numbers; the form numbers them from 0 without gaps. */
function linesOf<T>(read: Read, name: string, line: (at: number) => T | null): readonly T[] {
  const all: T[] = [];
  for (let at = 0; at < Number(read(`${name}-lines`)); at++) {
    const one = line(at);
    if (one !== null) all.push(one);
  }
  return all;
}

function allelesIn(read: Read): readonly Allele[] {
  return linesOf(read, 'allele', (at) => {
    const [symbol, names] = [read(`sign-${at}`), listed(read(`names-${at}`), BETWEEN)];
    return symbol === '' && names.length === 0 ? null : { symbol, names };
  });
}

function namedIn(read: Read, before: LocusRow | null): readonly NamedPair[] {
  return linesOf(read, 'pair', (at) => {
    const [a = '', b = ''] = listed(read(`pair-${at}`), BETWEEN);
    const [name, ...also] = listed(read(`pair-names-${at}`), BETWEEN);
    if (name === undefined) return null;
    const same = before?.named.find(({ pair }) => pair[0] === a && pair[1] === b);
    return { pair: [a, b], name, also, looks: same?.looks ?? null, note: same?.note ?? null };
  });
}

function sexLinkIn(read: Read): SexLink | null {
  const found = Object.entries(SEX_LINKS).find(([name]) => name === read('sex-link'))?.[1][1] ?? null;
  return found === null ? null : { ...found, r: read('sex-r') || null };
}

/** Two copies of an own allele by their ticks; other lethal notes of the row stay. */
function lethalIn(read: Read, alleles: readonly Allele[], before: LocusRow | null): readonly LethalNote[] {
  const isOwn = ({ carrying: [a, b] }: LethalNote): boolean =>
    a !== undefined && a === b && (before?.alleles.some(({ symbol }) => symbol === a) ?? false);
  const ticked = alleles.filter((_, at) => read(`lethal-${at}`) !== '');
  return [
    ...(before?.lethal.filter((one) => !isOwn(one)) ?? []),
    ...ticked.map(({ symbol, names }) => {
      const same = before?.lethal.find((one) => isOwn(one) && one.carrying[0] === symbol);
      const says = `two copies of ${names[0] ?? symbol}: not known alive`;
      return { carrying: [symbol, symbol], says: same?.says ?? says, basis: same?.basis ?? 'the site’s own row' };
    }),
  ];
}

/** Welfare notes: of any allele of the row, of two copies of one, or of what the note was about before. */
function welfareIn(read: Read, alleles: readonly Allele[], before: LocusRow | null): readonly WelfareNote[] {
  return linesOf(read, 'welfare', (at) => {
    const [says, source, about] = [read(`welfare-${at}`), read(`welfare-source-${at}`), read(`welfare-of-${at}`)];
    if (says === '') return null;
    const same = before?.welfare[at];
    if (about === 'same' && same !== undefined) return { ...same, says, source };
    const anyOf = alleles.map(({ symbol }) => (about === 'two' ? [symbol, symbol] : [symbol]));
    return { anyOf, sex: null, says, source };
  });
}

function listed(line: string, between: string): readonly string[] {
  return line
    .split(between)
    .map((one) => one.trim())
    .filter(Boolean);
}

function sexLinkPayload({ system, kind, r }: SexLink) {
  return { system, kind, ...rOf(r) };
}

function namedPayload({ pair, name, also, looks, note }: NamedPair) {
  return {
    pair: [pair[0], pair[1]] as [string, string],
    name,
    ...some('also', also),
    ...given('looks', looks),
    ...given('note', note),
  };
}

function rOf(r: string | null): { readonly r?: string } {
  return r === null ? {} : { r };
}

function given<K extends string, T>(key: K, value: T | null): { readonly [P in K]?: T } {
  return (value === null ? {} : { [key]: value }) as { readonly [P in K]?: T };
}

function some<K extends string, T>(key: K, list: readonly T[]): { readonly [P in K]?: T[] } {
  return (list.length === 0 ? {} : { [key]: [...list] }) as { readonly [P in K]?: T[] };
}
