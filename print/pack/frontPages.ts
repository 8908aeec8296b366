import { type Pack, type PackAnimal, sayDay, sayDayShort, sayNumber } from '../../src/core/index.ts';
import {
  type Bench,
  type Column,
  heading,
  type PagePiece,
  type Pair,
  pairs,
  pairsAbreast,
  paragraph,
  table,
} from './pieces.ts';

/** The first pages: whose records, by which rules, what is in the pack, and where each animal stands in it. */
export function frontPieces(pack: Pack, pageOf: ReadonlyMap<PackAnimal, number>, bench: Bench): readonly PagePiece[] {
  const { site, profile, from, on, animals } = pack;
  return [
    paragraph('Inspector’s pack', bench, { sizePt: 24, cut: 'bold', gapMm: 0 }),
    paragraph(site, bench, { sizePt: 15, cut: 'bold', gapMm: 1.5 }),
    paragraph(
      `Made on ${sayDay(on)}, from ${sayDayShort(from)} on. Read from the log; nothing was written into it.`,
      bench,
      {
        sizePt: 10,
        gapMm: 1.5,
      },
    ),
    ...profilePieces(pack, bench),
    heading('In this pack', bench),
    ...pairsAbreast(contents(pack), bench),
    ...pack.left.map(({ id, problem }) => paragraph(`Not in it: ${id}. ${problem.message} ${problem.remedy}`, bench)),
    ...(animals.length < 2
      ? []
      : [
          heading('Animals', bench),
          ...table(
            ANIMALS,
            animals.map((one) => animalRow(one, pageOf)),
            bench,
          ),
        ]),
    heading('How to read it', bench),
    ...HOW.map((words) => paragraph(words, bench)),
    ...(profile.law === null ? [] : [paragraph(NO_ADVICE, bench)]),
  ];
}

const NO_ADVICE =
  'This follows the text named above as it was read, and is no legal advice: your licence, your local authority and the text in force decide.';
const HOW = [
  '“Not recorded” means that nobody wrote it down; it does not mean that there is none.',
  'Age is worked out from the hatching day. Weighings that the entry check asked about and a keeper confirmed are marked so.',
  'Entries that were taken back are left out; those that were amended stand as amended.',
  'A sign that the type lacks stands as its Unicode number, such as U+65E5.',
] as const;

const ANIMALS: readonly Column[] = [
  { words: 'animal', share: 26 },
  { words: 'id', share: 14 },
  { words: 'species', share: 34 },
  { words: 'stands', share: 18 },
  { words: 'page', share: 8, align: 'end' },
];

function animalRow(animal: PackAnimal, pageOf: ReadonlyMap<PackAnimal, number>): readonly string[] {
  const { called, display, facts, moves } = animal;
  const species = facts.find(({ field }) => field === 'species')?.says ?? '';
  const off = moves.findLast(({ where }) => where.startsWith('off the site'));
  const stands = off === undefined ? 'here' : `left ${sayDayShort(off.day)}`;
  return [called, display, species, stands, String(pageOf.get(animal) ?? '')];
}

function profilePieces({ profile }: Pack, bench: Bench): readonly PagePiece[] {
  const { name, law, inForce, dated, source, rules, asked } = profile;
  const asks = asked.map(({ point, asks: words }) => `${point} ${words}`.trim());
  return [
    heading('Profile', bench),
    ...pairs(
      [
        ['Profile', name],
        ...(law === null ? [] : [['Text', law] as const]),
        ...(inForce === null
          ? []
          : [['In force since', `${sayDayShort(inForce)}; later amendments were not looked up`] as const]),
        ...(dated === null ? [] : [['Date', dated] as const]),
        ['Source', source],
        ['Asks for', `${asks.join('; ')}.`],
        ...rules.map((rule, at) => [at === 0 ? 'Also' : '', rule] as const),
      ],
      bench,
    ),
  ];
}

function contents({ animals, gone, from }: Pack): readonly Pair[] {
  const sum = (count: (animal: PackAnimal) => number): string =>
    sayNumber(animals.reduce((all, animal) => all + count(animal), 0));
  return [
    ['Animals', sayNumber(animals.length)],
    ['Feeds', sum(({ feeds }) => feeds.length)],
    ['Weighings', sum(({ weights }) => weights.length)],
    ['Lengths', sum(({ lengths }) => lengths.length)],
    ['Health and treatment', sum(({ treatments }) => treatments.length)],
    ['Health looks', sum(({ looks }) => looks.length)],
    ['Notes', sum(({ notes }) => notes.length)],
    ['Photographed papers', sum(({ papers }) => papers.length)],
    ['Skipped on purpose', sum(({ skipped }) => skipped.length)],
    ['Cleaning and water', sum(({ cleaning }) => cleaning.length)],
    ...(gone === 0 ? [] : [['Left out', `${sayNumber(gone)} that left before ${sayDayShort(from)}`] as const]),
  ];
}
