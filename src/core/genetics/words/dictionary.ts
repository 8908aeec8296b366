import { alleleOf, type Carrying, type Combo, type LocusRow, type LocusTable, showsInOneDose } from '../loci/index.ts';

/** What a trade name can mean: an allele, a pair of one locus with a name of its own, or several genes. */
export type Meaning =
  | { readonly kind: 'allele'; readonly row: LocusRow; readonly symbol: string }
  | { readonly kind: 'pair'; readonly row: LocusRow; readonly pair: readonly [string, string] }
  | {
      readonly kind: 'combo';
      readonly name: string;
      readonly means: readonly { readonly row: LocusRow; readonly carrying: Carrying }[];
    };

/** A trade name as it is printed, its words in small letters (a comma stands alone), and what it means. */
export interface Entry {
  readonly name: string;
  readonly words: readonly string[];
  readonly meaning: Meaning;
}

/** Every name of a species by its first word, longest first. */
export type Dictionary = ReadonlyMap<string, readonly Entry[]>;

const made = new WeakMap<LocusTable, Dictionary>();

/** The trade names of a table: alleles by name and sign, named pairs, and combo names. */
export function dictionaryOf(loci: LocusTable): Dictionary {
  const known = made.get(loci);
  if (known !== undefined) return known;
  const found = new Map<string, Entry[]>();
  for (const entry of [...loci.rows.flatMap(rowEntries), ...loci.combos.map((combo) => comboEntry(combo, loci))]) {
    const first = entry.words[0] ?? '';
    found.set(first, [...(found.get(first) ?? []), entry]);
  }
  for (const entries of found.values()) entries.sort((a, b) => b.words.length - a.words.length);
  made.set(loci, found);
  return found;
}

function rowEntries(row: LocusRow): readonly Entry[] {
  const alleles = row.alleles.flatMap(({ symbol, names }) =>
    [...names, symbol].map((name) => entryOf(name, { kind: 'allele', row, symbol })),
  );
  const pairs = row.named.flatMap(({ pair, name, also }) =>
    [name, ...also].map((one) => entryOf(one, { kind: 'pair', row, pair })),
  );
  return [...alleles, ...pairs];
}

function comboEntry({ name, means }: Combo, loci: LocusTable): Entry {
  const placed = means.flatMap((carrying) => {
    const place = alleleOf(loci, carrying[0] ?? '');
    return place === null ? [] : [{ row: place.row, carrying }];
  });
  return entryOf(name, { kind: 'combo', name, means: placed });
}

function entryOf(name: string, meaning: Meaning): Entry {
  return { name, words: wordsOf(name), meaning };
}

/** The words of a name as the reader of a text sees them. */
export function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/,|[^\s,;/&()-]+/g) ?? [];
}

/** Names near to some words: those that hold them whole, or else nearest by letters; the caller says how near. */
export function namesHolding(words: readonly string[], dictionary: Dictionary): readonly Entry[] {
  const all = [...dictionary.values()].flat();
  return all.filter((entry) => words.length > 0 && words.every((word) => entry.words.includes(word)));
}

/** Whether two copies of an allele can be told from one, so that one trade name means one dose. */
export function hasOneDoseName(row: LocusRow, symbol: string): boolean {
  if (row.inheritance !== 'dominant') return showsInOneDose(symbol);
  return (
    row.lethal.some(({ carrying }) => carrying.length === 2 && carrying.every((one) => one === symbol)) ||
    row.named.some(({ pair }) => pair.every((one) => one === symbol))
  );
}
