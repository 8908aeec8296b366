import { type Day, isDay } from '../days.ts';
import { ok, type Result, refuse } from '../problems.ts';

/** What the pack tells of an animal itself; everything else of it stands in tables. */
export const PACK_FIELDS = [
  'id',
  'name',
  'number',
  'species',
  'common-name',
  'sex',
  'age',
  'hatched',
  'acquired',
  'supplier',
  'licence',
  'origin-papers',
  'papers',
  'treatment',
  'under-treatment',
  'health',
  'sold',
  'left-to',
  'died',
  'cause',
  'microchip',
  'length',
  'people',
  'enclosure',
  'size',
  'animals-there',
  'rule-set',
  'owner',
  'protocol',
  'cites',
  'lacey',
  'large-constrictor',
] as const;
/** One of them. */
export type PackField = (typeof PACK_FIELDS)[number];

/** One point of a rule, and the fields that answer it; `point` is empty where the text’s own number was not seen. */
export interface AskedPoint {
  readonly point: string;
  readonly asks: string;
  readonly fields: readonly PackField[];
}

/** What the records of a country have to hold, as data. A site picks one; it is no legal advice. */
export interface CountryProfile {
  readonly id: string;
  readonly name: string;
  /** The text it follows; null for the plain one, which follows none. */
  readonly law: string | null;
  /** The day on which that text came into force as it was first made. */
  readonly inForce: Day | null;
  /** What is known of its date where that day was not seen. */
  readonly dated: string | null;
  readonly source: string;
  /** How far back the pack goes, in years. */
  readonly years: number;
  readonly asked: readonly AskedPoint[];
  /** What else the text says about these records. */
  readonly rules: readonly string[];
}

const REGISTER: readonly AskedPoint[] = [
  { point: '(a)', asks: 'Supplier, full name', fields: ['supplier'] },
  { point: '(b)', asks: 'Sex, where known', fields: ['sex'] },
  { point: '(c)', asks: 'Age, where known', fields: ['age'] },
  { point: '(d)', asks: 'Veterinary treatment, where known', fields: ['treatment'] },
  { point: '(e)', asks: 'Born, or acquired', fields: ['hatched', 'acquired'] },
  { point: '(f)', asks: 'Sold', fields: ['sold'] },
  { point: '(g)', asks: 'Died', fields: ['died'] },
];
const MARKED = { asks: 'Under treatment: so marked, not sold', fields: ['under-treatment'] } as const;
const LISTED =
  'Pythons and boas are in general in Appendix II of CITES: keep the papers that came with them, and check the current list.';
const LISTED_FIELDS = { point: '', asks: 'CITES', fields: ['cites', 'origin-papers'] } as const;
const LACEY_FIELDS = { point: '', asks: 'Lacey Act, 50 CFR 16.15', fields: ['lacey'] } as const;
const KEPT = 'Records are kept for three years, can be produced at once, and are backed up.';
const NOTED = 'the three years: through the project’s notes';

/** The profiles that there are; later amendments of a text were not looked up. */
export const COUNTRY_PROFILES: readonly CountryProfile[] = [
  {
    id: 'england',
    name: 'England, selling animals as pets',
    law: 'Animal Welfare (Licensing of Activities Involving Animals) (England) Regulations 2018, SI 2018/486, Schedule 3, paragraph 2',
    inForce: dayOf('2018-10-01'),
    dated: null,
    source: `legislation.gov.uk, uksi/2018/486/schedule/3, as first made; ${NOTED}`,
    years: 3,
    asked: [...REGISTER, { point: '2(2)', ...MARKED }],
    rules: [
      'A register holds every animal on the premises.',
      'An animal under treatment is marked so in writing, next to it or on its label, and is not sold.',
      KEPT,
      LISTED,
    ],
  },
  {
    id: 'scotland',
    name: 'Scotland, selling animals as pets',
    law: 'Animal Welfare (Licensing of Activities Involving Animals) (Scotland) Regulations 2021, SSI 2021/84',
    inForce: dayOf('2021-09-01'),
    dated: null,
    source: `gov.scot, guidance for pet sellers on the Regulations of 2021, Annex B, 2; ${NOTED}`,
    years: 3,
    asked: [
      ...REGISTER,
      { point: '(h)', asks: 'Microchip number, if any', fields: ['microchip'] },
      { point: '', ...MARKED },
    ],
    rules: ['A register holds every animal on the premises.', KEPT, LISTED],
  },
  {
    id: 'north-carolina',
    name: 'North Carolina, large constricting snakes',
    law: 'General Statutes of North Carolina, 14-417.1',
    inForce: null,
    dated: 'session law 2009-344, section 1; the day on which it came into force was not looked up',
    source: 'ncleg.net, chapter 14, article 55, as copied there and at statutes.laws.com',
    years: 3,
    asked: [
      { point: '(a)', asks: 'A snake that the text names', fields: ['large-constrictor'] },
      { point: '(c)', asks: 'Label: scientific name', fields: ['species'] },
      { point: '(c)', asks: 'Label: common name', fields: ['common-name'] },
      { point: '(c)', asks: 'Label: number of specimens', fields: ['animals-there'] },
      { point: '(c)', asks: 'Label: owner’s identifying information', fields: ['owner'] },
      { point: '(c)', asks: 'Written safety protocol', fields: ['protocol'] },
      { point: '(b)', asks: 'Enclosure', fields: ['enclosure', 'size'] },
      LISTED_FIELDS,
      LACEY_FIELDS,
    ],
    rules: [
      'An enclosure is sturdy, secure and escape-proof, and has a lock that works.',
      'The label is clear and in sight. A written safety protocol and a plan for an escape are within sight, and a copy goes along on transport: whom to call, the local animal control office, first aid.',
      'An escape is told to local law enforcement at once.',
      'The three years of this pack are common practice; the text names none.',
    ],
  },
  {
    id: 'united-states',
    name: 'United States, listed snakes',
    law: 'Lacey Act, 50 CFR 16.15(a), as amended by 80 FR 12702 of 10 March 2015; CITES, Appendix II',
    inForce: dayOf('2015-04-09'),
    dated: null,
    source: 'the final rule as copied at regulations.justia.com; the list of Appendix II as copied in 2008',
    years: 3,
    asked: [
      { point: '', asks: 'Species', fields: ['species'] },
      LACEY_FIELDS,
      LISTED_FIELDS,
      { point: '', asks: 'From whom, and when', fields: ['supplier', 'acquired', 'hatched'] },
      { point: '', asks: 'To whom, and when', fields: ['left-to', 'sold'] },
    ],
    rules: [
      'Import of a listed species needs a permit, and so, as the rule was made, does transport between States: ask before an animal, an egg or a shed skin is moved.',
      'The three years of this pack are common practice; the lists change, so check the current ones.',
    ],
  },
  {
    id: 'plain',
    name: 'Plain, no country’s rules',
    law: null,
    inForce: null,
    dated: null,
    source: 'common practice, no source',
    years: 3,
    asked: [
      { point: '', asks: 'Species', fields: ['species'] },
      { point: '', asks: 'Sex', fields: ['sex'] },
      { point: '', asks: 'Hatched', fields: ['hatched'] },
      { point: '', asks: 'From whom, and when', fields: ['supplier', 'acquired'] },
      { point: '', asks: 'Where it lives', fields: ['enclosure'] },
      { point: '', asks: 'Treatment', fields: ['treatment', 'under-treatment'] },
      { point: '', asks: 'Sold', fields: ['sold'] },
      { point: '', asks: 'Died', fields: ['died'] },
    ],
    rules: ['Ask your inspector which records the law of your place wants.'],
  },
];

/** The profile with that id. Error: `profile-unknown`. */
export function profileById(id: string): Result<CountryProfile> {
  const found = COUNTRY_PROFILES.find((one) => one.id === id);
  const known = COUNTRY_PROFILES.map((one) => one.id).join(', ');
  return found === undefined ? refuse('profile-unknown', { profile: id, known }) : ok(found);
}

/** The profile that a site picked; the plain one where it picked none, or one that this version does not know. */
export function profileOfSite(picked: string | null): CountryProfile {
  const found = COUNTRY_PROFILES.find((one) => one.id === (picked ?? 'plain')) ?? COUNTRY_PROFILES.at(-1);
  if (found === undefined) throw new RangeError('there is no profile');
  return found;
}

function dayOf(text: string): Day | null {
  return isDay(text) ? text : null;
}
