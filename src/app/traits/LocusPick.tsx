import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { LocusRow, LocusTable, Sex } from '../../core/index.ts';
import { OtherChance } from './OtherChance.tsx';
import { type AllelePicks, type Copies, type Pick, picksOf } from './picks.ts';

interface LocusPickProps {
  readonly row: LocusRow;
  readonly loci: LocusTable;
  readonly sex: Sex | null;
  /** What stands there now, as a code; null for wild type. */
  readonly code: string | null;
  /** Puts these copies there; null is wild type. */
  readonly put: (copies: Copies | null) => void;
}

/** The copies that may be chosen at one locus. */
export function LocusPick({ row, loci, sex, code, put }: LocusPickProps) {
  const { alleles, pairs } = picksOf(row, loci, sex);
  const all = [...alleles.flatMap((one) => one.picks), ...pairs];
  const elsewhere = code !== null && !all.some((one) => one.code === code);
  return (
    <div class="locus-picks">
      <div class="picks">
        <PickButton words="none" says="wild type" chosen={code === null} onPick={() => put(null)} />
      </div>
      {alleles.map((allele) => (
        <AlleleGroup key={allele.symbol} allele={allele} isAlone={alleles.length === 1} code={code} put={put} />
      ))}
      {pairs.length > 0 && <Together pairs={pairs} code={code} put={put} />}
      {elsewhere && <p class="hint">It stands as {code}.</p>}
      {row.sexLink !== null && sex === null && (
        <p class="look-at">
          Sex-linked: which chromosome it lies on can be said once the animal’s sex is on its record.
        </p>
      )}
      {row.note !== null && <p class="hint">{row.note}</p>}
    </div>
  );
}

interface AlleleGroupProps extends PuttingProps {
  readonly allele: AllelePicks;
  readonly isAlone: boolean;
}

interface PuttingProps {
  readonly code: string | null;
  readonly put: (copies: Copies | null) => void;
}

function AlleleGroup({ allele, isAlone, code, put }: AlleleGroupProps) {
  const asks = useSignal(false);
  return (
    <fieldset class="picks">
      <legend class={isAlone ? 'unseen' : ''}>{allele.name}</legend>
      {allele.picks.map((one) => (
        <PickButton
          key={one.code}
          words={one.words}
          says={one.says}
          chosen={one.code === code}
          onPick={() => put(one.copies)}
        />
      ))}
      <button
        type="button"
        class="pick"
        aria-expanded={asks.value}
        onClick={() => {
          asks.value = !asks.value;
        }}
      >
        other chance
      </button>
      {asks.value && <OtherChance name={allele.name} put={(p, q) => put(allele.possible(p, q))} />}
    </fieldset>
  );
}

interface PickButtonProps {
  readonly words: string;
  readonly says: string;
  readonly chosen: boolean;
  readonly onPick: () => void;
}

function PickButton({ words, says, chosen, onPick }: PickButtonProps) {
  return (
    <button type="button" class="pick" aria-pressed={chosen} aria-label={`${words}: ${says}`} onClick={onPick}>
      {words}
    </button>
  );
}

/** Two alleles of a series are too many for buttons. */
function Together({ pairs, code, put }: PuttingProps & { readonly pairs: readonly Pick[] }) {
  const id = useId();
  return (
    <p class="field pick-pair">
      <label for={id}>Two of the series</label>
      <select
        id={id}
        value={pairs.find((one) => one.code === code)?.code ?? ''}
        onChange={(event) => {
          const pair = pairs.find((one) => one.code === event.currentTarget.value);
          if (pair !== undefined) put(pair.copies);
        }}
      >
        <option value="">none</option>
        {pairs.map((one) => (
          <option key={one.code} value={one.code}>
            {one.words === one.says.replace('/', ' with ') ? one.words : `${one.words}: ${one.says}`}
          </option>
        ))}
      </select>
    </p>
  );
}
