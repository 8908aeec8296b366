import { type Fraction, type LocusTable, parseTraits, sayTrade, WILD_CODE, type YoungLook } from '../../core/index.ts';
import { Chance } from '../genetics/index.ts';
import type { Brood } from './brood.ts';

interface WithinProps {
  readonly look: YoungLook;
  readonly loci: LocusTable;
  readonly brood: Brood;
}

/** What young of one look may be underneath, locus by locus: what is worth knowing of them. */
export function Within({ look, loci, brood }: WithinProps) {
  const open = [...look.within].filter(([, keys]) => keys.size > 1);
  return (
    <div class="within">
      <h3>What {brood.youngs} of this look are underneath</h3>
      {open.length === 0 ? (
        <p class="soft">All the same, in everything that these two can give.</p>
      ) : (
        <dl>
          {open.map(([locus, keys]) => (
            <div key={locus}>
              <dt>{locus}</dt>
              <dd>
                {[...keys].map(([key, p]) => (
                  <Genotype key={key} genotype={key} p={p} loci={loci} />
                ))}
              </dd>
            </div>
          ))}
        </dl>
      )}
    </div>
  );
}

function Genotype({
  genotype,
  p,
  loci,
}: {
  readonly genotype: string;
  readonly p: Fraction;
  readonly loci: LocusTable;
}) {
  const code = codeOf(genotype);
  return (
    <p class="genotype">
      <span>
        {wordsOf(code, loci)} <code>{code}</code>
      </span>
      <Chance of={p} />
    </p>
  );
}

/** A genotype as the trait code has it: of a sex chromosome it says which copy lies on the Y, or that W has none. */
function codeOf(genotype: string): string {
  const [first = '+', second] = genotype.split('|');
  if (second === undefined) return genotype === '+/+' ? WILD_CODE : genotype;
  return second === 'W' ? `${first}/W` : `${first}/Y:${second}`;
}

function wordsOf(code: string, loci: LocusTable): string {
  const read = parseTraits(code, loci, code.includes('Y:') ? 'M' : code.endsWith('/W') ? 'F' : null);
  return read.ok ? sayTrade(read.value, loci).long : '';
}
