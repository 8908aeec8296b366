import { type LocusTable, PROBLEMS, type Problem, readTraits, type Sex } from '../../core/index.ts';

/** Words that a refusal holds out, and the whole text with them put in. */
export interface Offered {
  readonly words: string;
  readonly text: string;
}

/**
 * The choices and near words that a refusal names, as texts to go on with. Only those are given that lead further: the
 * text with them is read, or what is wrong then stands behind the next comma.
 */
export function offeredBy(fault: Problem, typed: string, loci: LocusTable, sex: Sex | null): readonly Offered[] {
  const at = placeOf(fault);
  if (at === null) return [];
  const about: Typed = { typed, loci, sex };
  return choicesIn(fault, about).flatMap(
    (choice) => fitting(phrasesOf(choice), spansIn(fault, typed, at), about) ?? [],
  );
}

/** Where a text went wrong, counted from 0; null where the whole of it is meant. */
export function placeOf({ path }: Problem): number | null {
  const found = /^char (\d+)$/.exec(path ?? '');
  return found === null ? null : Number(found[1]) - 1;
}

/** How many characters the words take up that a refusal is about; one where it is a mark. */
export function lengthOf(fault: Problem, typed: string): number {
  const rest = typed.slice(placeOf(fault) ?? 0);
  // A name is told as it is printed, and may be typed with other blanks, hyphens and capitals.
  const words = subjectOf(fault).match(/[^\s,-]+/g) ?? [];
  const named = new RegExp(`^${words.map(escaped).join('[\\s,-]+')}`, 'i').exec(rest)?.[0].length ?? 0;
  return named || Math.max(1, /^[^\s,;/&()[\]]+/.exec(rest)?.[0].length ?? 1);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

interface Typed {
  readonly typed: string;
  readonly loci: LocusTable;
  readonly sex: Sex | null;
}

function choicesIn(fault: Problem, about: Typed): readonly string[] {
  const { code } = fault;
  if (code === 'trade-ambiguous') return valueIn(fault, 'choices').split(' / ');
  if (code === 'trade-unknown' || code === 'traits-unknown') return nearWords(valueIn(fault, 'near'), about);
  if (code === 'trade-unfit' || code === 'traits-sex') return valueIn(fault, 'instead').split(/, | or /);
  if (code === 'traits-apart') return [`${valueIn(fault, 'first')}/+; ${valueIn(fault, 'second')}/+`];
  if (code === 'trade-chance') return ['66 %', '50 %'].map((chance) => `${chance} ${valueIn(fault, 'word')}`);
  return [];
}

/** `Clown, cln or ` as words; a trade name may hold a comma of its own, so neighbours are tried together as one name. */
function nearWords(near: string, { loci, sex }: Typed): readonly string[] {
  const words = near.replace(/ or $/, '').split(', ').filter(Boolean);
  const joined = words.slice(1).map((word, at) => `${words[at]}, ${word}`);
  const isName = (text: string): boolean => {
    const read = readTraits(text, loci, sex);
    return read.ok && read.value.traits.pieces.length === 1;
  };
  return [...words, ...joined.filter(isName)];
}

/** The ways to write a choice: without the name of its locus, as its allele alone, or as a name of its own behind a comma. */
function phrasesOf(choice: string): readonly string[] {
  const visual = /^a comma before (.+) for a visual$/.exec(choice);
  if (visual !== null) return [`, visual ${visual[1]}`];
  const [, allele] = /\(([^,()/]+), [^,()]+\)$/.exec(choice) ?? [];
  return [choice, choice.replace(/, [^,()]+\)$/, ')'), ...(allele === undefined ? [] : [allele])];
}

/** What may be replaced: the word itself, the part up to the next comma, the part with the word before it. */
function spansIn(fault: Problem, typed: string, at: number): readonly Span[] {
  const length = lengthOf(fault, typed);
  const rest = /^[^;,]*/.exec(typed.slice(at))?.[0].trimEnd().length ?? length;
  const begin = Math.max(typed.lastIndexOf(';', at - 1), typed.lastIndexOf(',', at - 1)) + 1;
  const from = begin + (/^\s*/.exec(typed.slice(begin))?.[0].length ?? 0);
  const ends = [at + length, at + rest];
  return [at, Math.min(from, at)].flatMap((start) => ends.map((to) => ({ from: start, to })));
}

function fitting(phrases: readonly string[], spans: readonly Span[], { typed, loci, sex }: Typed): Offered | null {
  let later: Offered | null = null;
  for (const { from, to } of spans) {
    for (const phrase of phrases) {
      const before = phrase.startsWith(',') ? typed.slice(0, from).trimEnd() : typed.slice(0, from);
      const text = before + phrase + typed.slice(to);
      const offered = { words: phrase.replace(/^, /, ''), text };
      const read = readTraits(text, loci, sex);
      if (read.ok) return offered;
      const next = text.slice(before.length + phrase.length).search(/[,;]/);
      const isBehind = next >= 0 && (placeOf(read.problem) ?? 0) > before.length + phrase.length + next;
      if (isBehind) later ??= offered;
    }
  }
  return later;
}

function subjectOf(fault: Problem): string {
  const { code } = fault;
  if (code === 'traits-unknown') return valueIn(fault, 'symbol');
  if (code === 'trade-unfit') return valueIn(fault, 'name');
  return code.startsWith('trade-') ? valueIn(fault, 'word') : '';
}

/** What stands for a mark of the table of problems in this one. */
function valueIn({ code, message, remedy }: Problem, name: string): string {
  const { says, remedy: cure } = PROBLEMS[code];
  return filledIn(says, message, name) ?? filledIn(cure, remedy, name) ?? '';
}

function filledIn(template: string, text: string, name: string): string | null {
  const pattern = template
    .split(/\{(\w+)\}/)
    .map((part, at) => (at % 2 === 0 ? escaped(part) : part === name ? '([\\s\\S]*?)' : '[\\s\\S]*?'))
    .join('');
  return new RegExp(`^${pattern}$`).exec(text)?.[1] ?? null;
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
