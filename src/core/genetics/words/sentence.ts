import { type Problem, problem, type Result } from '../../problems.ts';
import { nearest, nearFirst, pathAt } from '../notation/index.ts';
import { type Dictionary, type Entry, namesHolding } from './dictionary.ts';
import type { Token } from './tokens.ts';

/** What stands before names: how sure, how many names it is for, and the dose. */
export interface Modifier {
  readonly dose: 'bare' | 'het' | 'visual' | 'super';
  readonly chance: { readonly p: number; readonly q: number } | null;
  readonly names: number;
  readonly text: string;
}

/** A trade name with what was said of it; `aside` holds words in brackets behind it. */
export interface Said {
  readonly modifier: Modifier;
  readonly entries: readonly Entry[];
  /** The other name of a compound written with a slash. */
  readonly partner: readonly Entry[] | null;
  readonly aside: string | null;
  readonly at: number;
  readonly text: string;
  /** A name that follows a het without a comma between may be meant as het, too. */
  readonly afterHet: boolean;
}

/** A text in trade words, understood word by word but not yet in its meaning. */
export interface Sentence {
  readonly said: readonly Said[];
  readonly codes: readonly { readonly text: string; readonly at: number }[];
  /** Which chromosome a sex-linked allele of a male lies on, if it is said. */
  readonly maker: 'male' | 'female' | null;
}

const BARE: Modifier = { dose: 'bare', chance: null, names: 1, text: '' };
const COUNTS: Readonly<Record<string, number>> = { double: 2, triple: 3, quadruple: 4, quad: 4, dh: 2, th: 3 };
const HETS: ReadonlySet<string> = new Set(['het', 'hets', 'heterozygous', 'dh', 'th']);
const POSSIBLE: ReadonlySet<string> = new Set(['possible', 'poss', 'pos', 'ph', 'maybe']);
const VISUAL: ReadonlySet<string> = new Set(['visual', 'vis', 'homozygous', 'hom', 'homo']);
const FILLERS: ReadonlySet<string> = new Set(['and', 'for', 'with', 'proven', 'gene', 'the', 'a']);
const WILD: readonly (readonly string[])[] = [['wild', 'type'], ['wildtype'], ['normal'], ['wt']];

/** Reads tokens into names with their modifiers. Errors: `trade-unknown`, `trade-ambiguous`, `trade-chance`, `trade-incomplete`. */
export function sentenceOf(tokens: readonly Token[], dictionary: Dictionary, species: string): Result<Sentence> {
  const walk = new Walk(tokens, dictionary, species);
  return walk.read();
}

class Walk {
  readonly #tokens: readonly Token[];
  readonly #dictionary: Dictionary;
  readonly #species: string;
  readonly #said: Said[] = [];
  readonly #codes: { text: string; at: number }[] = [];
  #at = 0;
  #maker: 'male' | 'female' | null = null;
  #afterHet = false;

  constructor(tokens: readonly Token[], dictionary: Dictionary, species: string) {
    this.#tokens = tokens;
    this.#dictionary = dictionary;
    this.#species = species;
  }

  read(): Result<Sentence> {
    while (this.#at < this.#tokens.length) {
      const fault = this.#step();
      if (fault !== null) return { ok: false, problem: fault };
    }
    return { ok: true, value: { said: this.#said, codes: this.#codes, maker: this.#maker } };
  }

  #step(): Problem | null {
    const token = this.#tokens[this.#at];
    if (token === undefined) return null;
    if (token.kind === 'code') this.#codes.push({ text: token.text, at: token.at });
    if (token.kind === 'comma') this.#afterHet = false;
    if (token.kind === 'aside') return this.#aside(token);
    if (token.kind === 'code' || token.kind === 'comma' || token.kind === 'slash' || this.#isFiller()) {
      this.#at++;
      return null;
    }
    if (this.#takeWild() || this.#takeMaker()) return null;
    if (this.#match() !== null) return this.#takeNames(BARE);
    const modifier = this.#takeModifier();
    return modifier.ok ? this.#takeNames(modifier.value) : modifier.problem;
  }

  /** Words in brackets with nothing before them are refused, not skipped. */
  #aside(token: Token): Problem | null {
    this.#at++;
    return problem('trade-incomplete', { word: `(${token.text})`, why: 'no name stands before it' }, pathAt(token.at));
  }

  #word(ahead = 0): string {
    const token = this.#tokens[this.#at + ahead];
    return token?.kind === 'word' ? token.text.toLowerCase() : '';
  }

  #isFiller(): boolean {
    return FILLERS.has(this.#word()) && this.#match() === null;
  }

  #takeWild(): boolean {
    const found = WILD.find((words) => words.every((word, ahead) => this.#word(ahead) === word));
    if (found !== undefined) this.#at += found.length;
    return found !== undefined;
  }

  #takeMaker(): boolean {
    const sex = this.#word();
    if ((sex !== 'male' && sex !== 'female') || this.#word(1) !== 'maker') return false;
    this.#maker = sex;
    this.#at += 2;
    return true;
  }

  /** `[chance] [possible] [double] [het | visual | super]`; something of it must be there. */
  #takeModifier(): Result<Modifier> {
    const start = this.#at;
    const first = this.#tokens[start];
    const chance = first?.kind === 'chance' ? { p: first.p, q: first.q } : null;
    if (chance !== null) this.#at++;
    const possible = this.#takeOf(POSSIBLE);
    const count = COUNTS[this.#word()] ?? 1;
    if (count > 1 && !HETS.has(this.#word())) this.#at++;
    const isHet = this.#takeOf(HETS);
    const dose = isHet ? 'het' : this.#takeOf(VISUAL) ? 'visual' : this.#word() === 'super' ? this.#super() : 'bare';
    const text = this.#tokens
      .slice(start, this.#at)
      .map((token) => token.text)
      .join(' ');
    const path = pathAt(first?.at ?? 0);
    if (this.#at === start) return { ok: false, problem: this.#unknown() };
    if (possible && chance === null) return { ok: false, problem: problem('trade-chance', { word: text }, path) };
    if (count > 1 && !isHet) return incomplete(text, 'how many of what? Double and triple go with het', path);
    if (chance !== null && !possible && !isHet) return incomplete(text, 'a chance goes with possible or het', path);
    const certain = chance !== null && chance.p === chance.q;
    return { ok: true, value: { dose, chance: certain ? null : chance, names: count, text } };
  }

  #super(): 'super' {
    this.#at++;
    return 'super';
  }

  #takeOf(words: ReadonlySet<string>): boolean {
    if (!words.has(this.#word())) return false;
    this.#at++;
    return true;
  }

  #takeNames(modifier: Modifier): Problem | null {
    for (let left = modifier.names; left > 0; left--) {
      const isLater = left < modifier.names;
      while (
        this.#isFiller() ||
        (isLater && (this.#tokens[this.#at]?.kind === 'comma' || this.#tokens[this.#at]?.kind === 'slash'))
      )
        this.#at++;
      const token = this.#tokens[this.#at];
      if (token === undefined || token.kind === 'comma') {
        return problem(
          'trade-incomplete',
          { word: modifier.text, why: 'a name must follow' },
          pathAt(token?.at ?? this.#tokens.at(-1)?.at ?? 0),
        );
      }
      const entries = this.#takeMatch();
      if (entries === null) return this.#unknown();
      const partner = modifier.names === 1 ? this.#takePartner() : null;
      const aside = this.#takeAside();
      const afterHet = modifier === BARE && this.#afterHet;
      this.#said.push({
        modifier,
        entries,
        partner,
        aside,
        at: token.at,
        text: entries[0]?.name ?? token.text,
        afterHet,
      });
    }
    if (modifier.dose === 'het') this.#afterHet = true;
    return null;
  }

  #takePartner(): readonly Entry[] | null {
    if (this.#tokens[this.#at]?.kind !== 'slash') return null;
    this.#at++;
    const found = this.#takeMatch();
    if (found === null) this.#at--;
    return found;
  }

  #takeAside(): string | null {
    const token = this.#tokens[this.#at];
    if (token?.kind !== 'aside') return null;
    this.#at++;
    return token.text;
  }

  #takeMatch(): readonly Entry[] | null {
    const found = this.#match();
    if (found === null) return null;
    this.#at += found.length;
    return found.entries;
  }

  /** The longest name that stands here; all meanings of it. */
  #match(): { readonly entries: readonly Entry[]; readonly length: number } | null {
    const candidates = (this.#dictionary.get(this.#word()) ?? []).map((entry) => ({
      entry,
      length: this.#length(entry),
    }));
    const longest = candidates.reduce((most, one) => Math.max(most, one.length), 0);
    const entries = candidates.filter((one) => one.length === longest).map((one) => one.entry);
    return longest === 0 ? null : { entries, length: longest };
  }

  /** How many tokens a name takes up here, 0 if it does not stand here; its commas may be left out. */
  #length(entry: Entry): number {
    let ahead = 0;
    for (const word of entry.words) {
      const token = this.#tokens[this.#at + ahead];
      const isComma = word === ',';
      if (isComma && token?.kind !== 'comma') continue;
      if (!isComma && (token?.kind !== 'word' || token.text.toLowerCase() !== word)) return 0;
      ahead++;
    }
    return ahead;
  }

  /** A word that is no name: a question if it is part of several names, else the nearest names. */
  #unknown(): Problem {
    const token = this.#tokens[this.#at];
    const typed = token?.text ?? '';
    const path = pathAt(token?.at ?? 0);
    const holding = namesHolding([typed.toLowerCase()], this.#dictionary);
    const names = [...new Set(holding.map((entry) => entry.name))];
    if (names.length > 1) return problem('trade-ambiguous', { word: typed, choices: names.join(' / ') }, path);
    const all = [...this.#dictionary.values()].flat().map((entry) => entry.name);
    const two = [typed, this.#word(1)].join(' ').trim();
    const near = names.length > 0 ? names : [...new Set([...nearest(two, all), ...nearest(typed, all)])].slice(0, 3);
    return problem('trade-unknown', { word: typed.slice(0, 40), species: this.#species, near: nearFirst(near) }, path);
  }
}

function incomplete(word: string, why: string, path: string | undefined): Result<never> {
  return { ok: false, problem: problem('trade-incomplete', { word, why }, path) };
}
