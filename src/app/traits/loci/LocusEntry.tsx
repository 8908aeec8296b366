import { GENETIC_SOURCES, type LocusRow, type LocusTable, type WelfareWord } from '../../../core/index.ts';
import { Notch } from '../../look/Notch.tsx';
import { sayConfidence, sayInheritance } from '../rowWords.ts';
import { Welfare } from '../Welfare.tsx';

interface LocusEntryProps {
  readonly row: LocusRow;
  readonly loci: LocusTable;
  readonly isOwn: boolean;
  readonly onAmend: () => void;
}

/** One row of the table: what it is called, how it shows, what is to be told of it, and on what it rests. */
export function LocusEntry({ row, loci, isOwn, onAmend }: LocusEntryProps) {
  return (
    <li class="locus-entry">
      <div>
        <h2>
          {row.locus}
          {row.gene !== null && row.gene !== row.locus && <small> gene {row.gene}</small>}
          {isOwn && <Notch word="site" kind="quiet" />}
        </h2>
        <dl class="locus-alleles">
          {row.alleles.map(({ symbol, names }) => (
            <div key={symbol}>
              <dt>{symbol}</dt>
              <dd>
                {names[0]}
                {names.length > 1 && <small> {names.slice(1).join(', ')}</small>}
              </dd>
            </div>
          ))}
        </dl>
      </div>
      <div class="locus-told">
        <p>{sayInheritance(row)}</p>
        <Links row={row} />
        {row.named.length > 0 && (
          <p class="locus-named">
            {row.named.map(({ pair, name, also }) => (
              <span key={pair.join('/')}>
                {pair.join('/')} {[name, ...also].join(', ')}
              </span>
            ))}
          </p>
        )}
        <Welfare words={notesOf(row)} loci={loci} />
        {row.note !== null && <p class="soft">{row.note}</p>}
      </div>
      <div class="locus-rests">
        <details>
          <summary>{sayConfidence(row.confidence)}</summary>
          {row.sources.map((source) => (
            <p key={source}>{GENETIC_SOURCES[source] ?? source}</p>
          ))}
        </details>
        <button type="button" class="link" aria-label={`Amend ${row.locus}`} onClick={onAmend}>
          Amend
        </button>
      </div>
    </li>
  );
}

function Links({ row: { sexLink, linkage } }: { readonly row: LocusRow }) {
  if (linkage !== null)
    return (
      <p>
        linkage group {linkage.group}
        {linkage.r !== null && `, crosses over at ${linkage.r} with the row before`}
      </p>
    );
  if (sexLink === null) return null;
  if (sexLink.kind === 'full')
    return <p>{sexLink.system === 'ZW' ? 'lies on Z' : 'lies on X and Y, never crosses over'}</p>;
  return <p>lies on X and Y, crosses over at {sexLink.r ?? 'a rate that nobody has said'}</p>;
}

/** The notes of a row as they would be told of an animal that has it. */
function notesOf({ locus, welfare, lethal }: LocusRow): readonly WelfareWord[] {
  return [
    ...welfare.flatMap(({ anyOf: [carrying = []], sex, says, source }) => [
      { says, source, kind: 'welfare', sure: true, carrying, sex, locus } as const,
    ]),
    ...lethal.map(
      ({ carrying, says, basis }) =>
        ({ says, source: basis, kind: 'lethal', sure: true, carrying, sex: null, locus }) as const,
    ),
  ];
}
