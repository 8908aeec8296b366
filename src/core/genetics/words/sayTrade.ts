import { type LocusRow, type LocusTable, rowOf, showsInOneDose } from '../loci/index.ts';
import { printPiece, printSlot, type Second, type Slot, type TraitPiece, type Traits } from '../notation/index.ts';
import { homozygoteName, namedPair, nameOf } from '../phenotype.ts';
import { pairAside } from './contribution.ts';
import { hasOneDoseName } from './dictionary.ts';

/** The same in three lengths, so that a card can take the first that fits. */
export interface TradeWords {
  readonly long: string;
  readonly medium: string;
  readonly short: string;
}

/** What one locus says, and whether it shows, is carried, or is only possible: the order of the trade. */
export interface LocusWords extends TradeWords {
  readonly locus: string;
  readonly standing: 'shows' | 'het' | 'possible';
}

const NORMAL: TradeWords = { long: 'normal', medium: 'normal', short: 'normal' };
const COUNTED: Readonly<Record<number, string>> = { 2: 'double het', 3: 'triple het' };

/**
 * Traits in trade words: what shows, then hets, then possible hets, each in table order. What the trade has no words for
 * is said in the trait code. The long form can be read back.
 */
export function sayTrade(traits: Traits, loci: LocusTable): TradeWords {
  return joinWords(locusWords(traits, loci));
}

/** The words of every locus that is named, in the order of the table. */
export function locusWords(traits: Traits, loci: LocusTable): readonly LocusWords[] {
  return traits.pieces.flatMap((piece) =>
    piece.loci.flatMap((locus, at) => {
      const row = rowOf(loci, locus);
      const [first, second] = [piece.copies[0][at], piece.copies[1][at]];
      if (row === null || first === undefined || second === undefined) return [codeWords(locus, printPiece(piece))];
      return [pairWords(row, first, second, piece.second)];
    }),
  );
}

/** Puts the words of loci together. */
export function joinWords(all: readonly LocusWords[]): TradeWords {
  if (all.length === 0) return NORMAL;
  const of = (standing: LocusWords['standing']): readonly LocusWords[] =>
    all.filter((one) => one.standing === standing);
  const ordered = [...of('shows'), ...of('het'), ...of('possible')];
  const long = [
    ...of('shows').map((one) => one.long),
    ...countedHets(of('het').map((one) => one.long)),
    ...of('possible').map((one) => one.long),
  ];
  return {
    long: long.join(', '),
    medium: ordered.map((one) => one.medium).join(' '),
    short: ordered.map((one) => one.short).join(' '),
  };
}

/** Two and three hets are counted, as the trade does. */
function countedHets(words: readonly string[]): readonly string[] {
  const counted = COUNTED[words.length];
  const regular = words.every((one) => one.startsWith('het ') && !one.endsWith(')'));
  if (counted === undefined || !regular) return words;
  const bare = words.map((one) => one.replace(/^het /, ''));
  return [`${counted} ${bare.slice(0, -1).join(', ')} and ${bare.at(-1) ?? ''}`];
}

function pairWords(row: LocusRow, first: Slot, second: Slot, on: Second): LocusWords {
  const code = codeOf(first, second, on);
  const said = on === 'W' ? oneZ(row, first) : likePair(row, first, second);
  if (said === null) return codeWords(row.locus, code);
  const side = sideWords(first, second, on);
  if (side === null) return codeWords(row.locus, code);
  if (side === '') return { ...said, locus: row.locus };
  return { ...said, long: `${said.long} (${side})`, medium: `${said.medium} (${side})`, short: code, locus: row.locus };
}

type Words = Omit<LocusWords, 'locus'>;

function oneZ(row: LocusRow, slot: Slot): Words | null {
  if (slot.kind === 'maybe') return possibleWords(row, slot, false);
  return slot.kind === 'allele' ? showing(nameOf(row, slot.symbol), slot.symbol) : null;
}

/** What is to be said of the side: nothing for likes, null if words do not suffice. */
function sideWords(first: Slot, second: Slot, on: Second): string | null {
  if (on === 'same' || on === 'W') return '';
  const alike = first.kind === 'allele' && second.kind === 'allele' && first.symbol === second.symbol;
  if (on === 'Y' && alike) return '';
  const [a, b] = [first.kind === 'allele', second.kind === 'allele'];
  if (on === 'Y?') return second.kind === 'wild' ? (a ? 'X or Y not known' : null) : null;
  if (a && second.kind === 'wild') return 'female-maker';
  return b && first.kind === 'wild' ? 'male-maker' : null;
}

function likePair(row: LocusRow, first: Slot, second: Slot): Words | null {
  const [a, b] = first.kind === 'wild' ? [second, first] : [first, second];
  if (a.kind === 'allele' && b.kind === 'allele') return twoWords(row, a.symbol, b.symbol);
  if (a.kind === 'allele' && b.kind === 'wild') return oneCopy(row, a.symbol);
  if (a.kind === 'allele' && b.kind === 'unknown') return openCopy(row, a.symbol);
  return a.kind === 'maybe' && b.kind === 'wild' ? possibleWords(row, a, !showsInOneDose(a.symbol)) : null;
}

function twoWords(row: LocusRow, a: string, b: string): Words {
  const code = `${a}/${b}`;
  const pair = namedPair(row, a, b);
  if (pair !== null) {
    const shared = row.named.filter((one) => one.name === pair.name).length > 1;
    return {
      ...showing(shared ? `${pair.name} (${pairAside(row, [a, b])})` : pair.name, code),
      medium: pair.name,
    };
  }
  if (a !== b) return showing(pairAside(row, [a, b]), code);
  const name = homozygoteName(row, a);
  return showing(showsInOneDose(a) && name === nameOf(row, a) ? `${name} (two copies)` : name, code);
}

function oneCopy(row: LocusRow, symbol: string): Words {
  const name = nameOf(row, symbol);
  if (!showsInOneDose(symbol))
    return { standing: 'het', long: `het ${name}`, medium: `het ${name}`, short: `het ${symbol}` };
  return hasOneDoseName(row, symbol) ? showing(name, symbol) : showing(`${name} (one copy)`, `${symbol}/+`);
}

function openCopy(row: LocusRow, symbol: string): Words {
  const name = nameOf(row, symbol);
  const plain = showsInOneDose(symbol) && !hasOneDoseName(row, symbol);
  const words = showing(plain ? name : `${name} (other copy unknown)`, `${symbol}/-`);
  return { ...words, standing: showsInOneDose(symbol) ? 'shows' : 'het' };
}

function possibleWords(row: LocusRow, slot: Extract<Slot, { kind: 'maybe' }>, het: boolean): Words {
  const [chance, name] = [sayChance(slot.p, slot.q), nameOf(row, slot.symbol)];
  const long = `${chance} possible ${het ? 'het ' : ''}${name}`;
  return { standing: 'possible', long, medium: `${chance} ph ${name}`, short: `${chance} ph ${slot.symbol}` };
}

/** A chance as the trade says it where that is exact or its usual rounding: 66 % is 2/3, 33 % is 1/3; else `p in q`. */
export function sayChance(p: number, q: number): string {
  if (q === 3) return p === 2 ? '66 %' : '33 %';
  const percent = (100 * p) / q;
  const isRounded = percent === 66 || percent === 67 || percent === 33;
  return Number.isInteger(percent) && !isRounded ? `${percent} %` : `${p} in ${q}`;
}

function showing(name: string, short: string): Words {
  return { standing: 'shows', long: name, medium: name, short: short.length < name.length ? short : name };
}

function codeWords(locus: string, code: string): LocusWords {
  return { locus, standing: 'shows', long: code, medium: code, short: code };
}

function codeOf(first: Slot, second: Slot, on: Second): string {
  const piece: TraitPiece = { loci: [''], copies: [[first], [second]], second: on };
  return on === 'W' ? `${printSlot(first)}/W` : printPiece(piece);
}
