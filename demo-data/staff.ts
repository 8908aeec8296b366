import type { Hand, Log } from './log.ts';

/** Everybody here is invented. Device 1 is the desk, where cards are printed; the others are phones. */
export const ORLA: Hand = { keeper: 'Orla Venn', device: 1 };
const BRAM: Hand = { keeper: 'Bram Ostley', device: 2 };
const TILDA: Hand = { keeper: 'Tilda Marrowby', device: 3 };
const CORIN: Hand = { keeper: 'Corin Achet', device: 4 };
/** The vet who comes to the house. */
export const VET = 'Dr Linnet Sallowfield';

/** Who walks the rounds. */
export const KEEPERS: readonly Hand[] = [BRAM, TILDA, CORIN];

/** The keeper who has a rack on a day: each has a third of the racks, and the thirds move on each week. */
export function keeperOf(rack: number, week: number): Hand {
  return KEEPERS[(rack + week) % KEEPERS.length] ?? ORLA;
}

/** Names the site and adds the people. */
export function open(log: Log, site: { readonly name: string; readonly host: string }): void {
  log.round(8, 0, ORLA);
  log.write('site-named', [], { name: site.name, timeZone: 'Etc/UTC', host: site.host, currency: 'EUR' });
  // A line of the house's own that no table knows: invented, as everything here.
  log.write('locus-set', [], {
    species: 'Python regius',
    locus: 'Marshlight',
    inheritance: 'recessive',
    alleles: [{ symbol: 'mlt', names: ['Marshlight'] }],
    sources: ['our own line: three visual young from two normal-looking parents'],
    confidence: 'memory',
  });
  log.write('keeper-added', [log.mint()], { name: ORLA.keeper, role: 'breeder' });
  for (const { keeper } of KEEPERS) log.write('keeper-added', [log.mint()], { name: keeper, role: 'keeper' });
  log.write('keeper-added', [log.mint()], { name: VET, role: 'vet' });
}
