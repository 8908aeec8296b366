import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LocusTable, makeTraits, parseTraits, printTraits, type Sex } from '../../../src/core/genetics/index.ts';
import { anyTraits, BALL, CORN, fault, HOGNOSE, INVENTED, value } from './given.ts';

const code = (text: string, loci: LocusTable = BALL, sex: Sex | null = null): string =>
  printTraits(value(parseTraits(text, loci, sex)));

describe('the trait code', () => {
  // The examples of the project's own notation, after the rules for mice and rats.
  it.each([
    ['normal', 'wt', BALL],
    ['two alleles of one series', 'alb/cdy', BALL],
    ['het piebald', 'pie/+', BALL],
    ['66 % het clown', '[cln 2:3]/+', BALL],
    ['double het, 50 % het ghost', 'alb/+; pie/+; [gho 1:2]/+', BALL],
    ['spider pastel', 'Pas/+; Spi/+', BALL],
    ['pinstripe of unknown dose', 'Pin/-', BALL],
    ['banana male-maker', '+/Y:Ban', BALL],
    ['banana female-maker', 'Ban/Y:+', BALL],
    ['banana male, X or Y unknown', 'Ban/Y?+', BALL],
    ['corn snake, two series', 'amel/ultr; mot/str', CORN],
  ] as const)('says %s and comes back as it was', (_, text, loci) => expect(code(text, loci)).toBe(text));

  it.each([
    ['copies', '+/alb', 'alb/+'],
    ['loci', 'pie/+; alb/+', 'alb/+; pie/+'],
    ['alleles of a series', 'cdy/alb', 'alb/cdy'],
    ['capitals', 'pas/+; ALB/Cdy', 'alb/cdy; Pas/+'],
    ['spaces', '  alb /cdy ;[ cln  2 : 3 ]/ + ', 'alb/cdy; [cln 2:3]/+'],
    ['chances', '[cln 4:6]/+', '[cln 2:3]/+'],
    ['two possible alleles', '[cdy 1:2]/[alb 1:3]', '[alb 1:3]/[cdy 1:2]'],
    ['two chances of one allele', '[alb 1:3]/[alb 1:2]', '[alb 1:2]/[alb 1:3]'],
    ['unknown sides', '+/Y?Ban', 'Ban/Y?+'],
    ['sides that do not matter', 'Ban/Y?Ban', 'Ban/Y:Ban'],
  ])('puts %s in order', (_, text, canonical) => expect(code(text)).toBe(canonical));

  it('keeps linked loci in phase', () => {
    expect(code('aa Bb/+ +', INVENTED)).toBe('aa Bb/+ +');
    expect(code('+ aa/Bb +', INVENTED)).toBe('aa +/+ Bb');
    expect(code('Zed zre/W', INVENTED, 'F')).toBe('Zed zre/W');
  });

  it('keeps linked loci of unknown phase apart', () => expect(code('Bb/+; aa/+', INVENTED)).toBe('aa/+; Bb/+'));

  it('is plain data', () => {
    const traits = value(parseTraits('alb/cdy; +/Y:Ban', BALL));
    expect(JSON.parse(JSON.stringify(traits))).toEqual(traits);
  });
});

describe('a wrong trait code', () => {
  it.each<[string, string, string, string | undefined, RegExp]>([
    ['nothing at all', '', 'traits-malformed', 'char 1', /an allele, \+, - or \[ was expected/],
    ['one copy only', 'alb', 'traits-malformed', 'char 4', /its end where a slash/],
    ['no copy after the slash', 'alb/; pie/+', 'traits-malformed', 'char 5', /“;” where an allele/],
    ['three copies', 'alb/+/+', 'traits-malformed', 'char 6', /semicolon or the end/],
    ['a comma', 'alb/+, pie/+', 'traits-malformed', 'char 6', /“,”/],
    ['something after wt', 'wt; alb/+', 'traits-malformed', 'char 3', /end after wt/],
    ['half a bracket', '[cln 2:3/+', 'traits-malformed', 'char 9', /\] was expected/],
    ['a chance without a colon', '[cln 2]/+', 'traits-malformed', 'char 7', /colon/],
    ['a chance of seven digits', '[cln 1:1234567]/+', 'traits-malformed', 'char 8', /whole number/],
    ['a chance of 0', '[cln 0:3]/+', 'traits-chance', 'char 6', /0:3/],
    ['a chance of 1', '[cln 3:3]/+', 'traits-chance', 'char 6', /without brackets/],
    ['a chance over 1', '[cln 4:3]/+', 'traits-chance', 'char 6', /between 0 and 1/],
    ['a sign nobody knows', 'alb/+; pei/+', 'traits-unknown', 'char 8', /“pei”.*Take pie.* or another sign/],
    ['a trade name for a sign', 'Pastel/+', 'traits-unknown', 'char 1', /Take Pas or another sign/],
    ['a sign far from all', 'qqqqqq/+', 'traits-unknown', 'char 1', /Take another sign/],
    ['two loci in one pair', 'alb/pie', 'traits-apart', 'char 5', /alb\/\+; pie\/\+/],
    ['a pair without a name', '+/-', 'traits-nameless', 'char 1', /which locus/],
    ['a series that is full', 'alb/cdy; tof/+', 'traits-full', 'char 10', /alb, cdy, tof are named/],
    ['a locus twice', 'alb/+; pie/+; cdy/+', 'traits-twice', 'char 15', /alb\/cdy/],
    ['unlinked loci with a space', 'alb pie/+ +', 'traits-not-linked', 'char 1', /TYR and TFEC/],
    ['copies of unlike length', 'alb pie/+', 'traits-malformed', 'char 9', /2 loci/],
    ['W in an XY species', 'alb/W', 'traits-chromosome', 'char 5', /Python regius has X and Y/],
    ['Y at a locus that is not on it', 'alb/Y:+', 'traits-chromosome', 'char 5', /not sex-linked/],
    ['a control character', 'alb\u0000/+', 'traits-malformed', 'char 4', /slash/],
  ])('with %s is refused at its place', (_, text, problem, path, words) => {
    const found = fault(parseTraits(text, BALL));
    expect([found.code, found.path]).toEqual([problem, path]);
    expect(found.words).toMatch(words);
  });

  it.each<[string, string, LocusTable, Sex | null, RegExp]>([
    ['a female with a Y', '+/Y:Ban', BALL, 'F', /a female has no Y.*Ban/],
    ['a male with two X', 'Ban/+', BALL, 'M', /one on Y.*\+\/Y:Ban, Ban\/Y:\+ or Ban\/Y\?\+/],
    ['a male with a W', 'Zed/W', INVENTED, 'M', /no W.*Zed\/\+/],
    ['a female with two Z', 'Zed/+', INVENTED, 'F', /one Z.*Zed\/W/],
    ['one animal of two sexes', 'Zed/W; zre/+', INVENTED, null, /a male’s and one a female’s/],
  ])('says that %s cannot be', (_, text, loci, sex, words) => {
    const found = fault(parseTraits(text, loci, sex));
    expect(found.code).toBe('traits-sex');
    expect(found.words).toMatch(words);
  });

  it('names W where a ZW locus is not sex-linked', () =>
    expect(fault(parseTraits('alb/W', HOGNOSE)).words).toMatch(/not sex-linked/));

  it('is refused from data as from text', () => {
    const wild = { kind: 'wild' } as const;
    const maybe = { kind: 'maybe', symbol: 'alb', p: 0.5, q: 1 } as const;
    expect(fault(makeTraits([{ copies: [[maybe], [wild]], second: 'same' }], BALL)).code).toBe('traits-chance');
    expect(fault(makeTraits([{ copies: [[wild], [wild]], second: 'same' }], BALL)).code).toBe('traits-nameless');
  });
});

describe('laws of the trait code', () => {
  it.each([
    ['ball python', BALL],
    ['corn snake', CORN],
    ['invented', INVENTED],
  ])('any %s comes back from its code', (_, loci) => {
    fc.assert(
      fc.property(anyTraits(loci), ({ traits, sex }) => {
        const text = printTraits(traits);
        const again = value(parseTraits(text, loci, sex));
        expect(again).toEqual(traits);
        expect(printTraits(again)).toBe(text);
      }),
      { numRuns: 300 },
    );
  });

  it('any text gives traits or a problem with a place, and never throws', () => {
    const alphabet = fc.constantFrom(
      'alb',
      'cdy',
      'Pas',
      'Ban',
      'pie',
      '/',
      '+',
      '-',
      ';',
      '[',
      ']',
      ':',
      ' ',
      '2',
      '3',
      'Y:',
      'Y?',
      'W',
      'wt',
      'é',
      '\u{1d11e}',
      '\ud800',
      '\u0000',
    );
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: 'binary-ascii' }),
      fc.array(alphabet, { maxLength: 12 }).map((all) => all.join('')),
    );
    fc.assert(
      fc.property(text, (any) => {
        const found = parseTraits(any, BALL);
        if (found.ok) expect(value(parseTraits(printTraits(found.value), BALL))).toEqual(found.value);
        else expect(Number(found.problem.path?.replace('char ', ''))).toBeLessThanOrEqual(any.length + 1);
      }),
      { numRuns: 1000 },
    );
  });
});
