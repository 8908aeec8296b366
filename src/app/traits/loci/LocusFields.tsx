import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { LocusRow } from '../../../core/index.ts';
import { sayConfidence, sayInheritance } from '../rowWords.ts';
import { CONFIDENCES, INHERITANCES, namesLine, SEX_LINKS, sourcesLine } from './locusDraft.ts';

interface LocusFieldsProps {
  readonly row: LocusRow | null;
  readonly isNew: boolean;
}

/** The lines of a locus, filled in from a row. */
export function LocusFields({ row, isNew }: LocusFieldsProps) {
  const alleles = useSignal(Math.max(1, row?.alleles.length ?? 0));
  const pairs = useSignal((row?.named.length ?? 0) + (isNew ? 1 : 0));
  const welfare = useSignal(row?.welfare.length ?? 0);
  return (
    <>
      {isNew && (
        <Line name="locus" words="Name of the locus" hint="Short, such as MOS; it is never printed." most={80} />
      )}
      <Choice name="inheritance" words="How it shows" start={row?.inheritance ?? 'recessive'}>
        {INHERITANCES.map((one) => (
          <option key={one} value={one}>
            {sayInheritance({ inheritance: one, sexLink: null })}
          </option>
        ))}
      </Choice>
      <Lines
        name="allele"
        title="Alleles"
        hint="A sign with a capital shows in one copy (Mos), one without only in two (mos). Of the trade names the first is printed; others follow behind a slash."
        count={alleles}
        more="Another allele"
      >
        {(at) => <AlleleLine at={at} row={row} />}
      </Lines>
      <Lines
        name="pair"
        title="Names of two copies"
        hint="Such as Mos/Mos. What stays empty is called Super and the name, or visual."
        count={pairs}
        more="Another name of two copies"
      >
        {(at) => <PairLine at={at} row={row} />}
      </Lines>
      <Links row={row} />
      <Lines name="welfare" title="Welfare" hint="" count={welfare} more="A welfare note">
        {(at) => <WelfareLine at={at} row={row} />}
      </Lines>
      <Line
        name="sources"
        words="Source"
        start={sourcesLine(row?.sources ?? [])}
        hint="A paper, a page, or whose word it is; several with a semicolon."
      />
      <Choice name="confidence" words="How well it is known" start={row?.confidence ?? 'memory'}>
        {CONFIDENCES.map((one) => (
          <option key={one} value={one}>
            {sayConfidence(one)}
          </option>
        ))}
      </Choice>
      <Line name="gene" words="Gene, if known" start={row?.gene ?? ''} most={80} />
      <Line name="note" words="Note" start={row?.note ?? ''} />
    </>
  );
}

interface RowLineProps {
  readonly at: number;
  readonly row: LocusRow | null;
}

function AlleleLine({ at, row }: RowLineProps) {
  const allele = row?.alleles[at];
  const isLethal =
    row?.lethal.some(({ carrying: [a, b] }) => a !== undefined && a === allele?.symbol && a === b) ?? false;
  return (
    <div class="locus-two">
      <Line name={`sign-${at}`} words="Sign" start={allele?.symbol ?? ''} most={10} />
      <Line name={`names-${at}`} words="Trade names" start={namesLine(allele?.names ?? [])} />
      <label class="locus-tick">
        <input type="checkbox" name={`lethal-${at}`} defaultChecked={isLethal} />
        <span>two copies are taken as lethal</span>
      </label>
    </div>
  );
}

function PairLine({ at, row }: RowLineProps) {
  const pair = row?.named[at];
  return (
    <div class="locus-two">
      <Line name={`pair-${at}`} words="Copies" start={pair?.pair.join('/') ?? ''} most={21} />
      <Line
        name={`pair-names-${at}`}
        words="Are called"
        start={namesLine(pair === undefined ? [] : [pair.name, ...pair.also])}
      />
    </div>
  );
}

function Links({ row }: { readonly row: LocusRow | null }) {
  const { sexLink, linkage } = row ?? { sexLink: null, linkage: null };
  const chosen = Object.entries(SEX_LINKS).find(
    ([, [, link]]) => link?.system === sexLink?.system && link?.kind === sexLink?.kind,
  );
  return (
    <details class="locus-links" open={sexLink !== null || linkage !== null}>
      <summary>Sex-linked or linked to another locus</summary>
      <Choice name="sex-link" words="Sex-linked" start={chosen?.[0] ?? 'none'}>
        {Object.entries(SEX_LINKS).map(([name, [words]]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </Choice>
      <Line
        name="sex-r"
        words="Crosses over with the sex at"
        start={sexLink?.r ?? ''}
        most={40}
        hint="A fraction such as 1/20; empty if nobody knows."
      />
      <Line
        name="group"
        words="Linkage group"
        start={linkage?.group ?? ''}
        most={80}
        hint="The same word in the rows that lie on one chromosome."
      />
      <Line
        name="group-r"
        words="Crosses over with the row before at"
        start={linkage?.r ?? ''}
        most={40}
        hint="A fraction; empty in the first row of the group."
      />
    </details>
  );
}

function WelfareLine({ at, row }: RowLineProps) {
  const note = row?.welfare[at];
  return (
    <div class="locus-welfare">
      <Line name={`welfare-${at}`} words="What is to be told" start={note?.says ?? ''} />
      <Choice name={`welfare-of-${at}`} words="Of animals with" start={note === undefined ? 'one' : 'same'}>
        {note !== undefined && <option value="same">{note.anyOf.map((one) => one.join('+')).join(' or ')}</option>}
        <option value="one">any allele of this row</option>
        <option value="two">two copies of one</option>
      </Choice>
      <Line name={`welfare-source-${at}`} words="Source of it" start={note?.source ?? ''} />
    </div>
  );
}

interface LinesProps {
  readonly name: string;
  readonly title: string;
  readonly hint: string;
  readonly count: Signal<number>;
  readonly more: string;
  readonly children: (at: number) => ComponentChildren;
}

/** Lines of one kind, with a button for one more; how many there are is sent with the form. */
function Lines({ name, title, hint, count, more, children }: LinesProps) {
  return (
    <fieldset class="locus-lines">
      <legend>{title}</legend>
      {hint !== '' && <p class="locus-hint">{hint}</p>}
      <input type="hidden" name={`${name}-lines`} value={count.value} />
      {Array.from({ length: count.value }, (_, at) => (
        <div key={`${name} ${at}`}>{children(at)}</div>
      ))}
      <button
        type="button"
        class="locus-more"
        onClick={() => {
          count.value++;
        }}
      >
        {more}
      </button>
    </fieldset>
  );
}

interface LineProps {
  readonly name: string;
  readonly words: string;
  readonly start?: string;
  readonly hint?: string;
  readonly most?: number;
}

function Line({ name, words, start = '', hint = '', most = 400 }: LineProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{words}</label>
      <input
        id={id}
        name={name}
        maxLength={most}
        defaultValue={start}
        autocomplete="off"
        aria-describedby={`${id}-hint`}
      />
      <small id={`${id}-hint`}>{hint}</small>
    </div>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly words: string;
  readonly start: string;
  readonly children: ComponentChildren;
}

function Choice({ name, words, start, children }: ChoiceProps) {
  const id = useId();
  // Another line makes the form draw itself anew, which must not undo what was chosen.
  const chosen = useSignal(start);
  return (
    <div class="field">
      <label for={id}>{words}</label>
      <select
        id={id}
        name={name}
        value={chosen}
        onChange={(event) => {
          chosen.value = event.currentTarget.value;
        }}
      >
        {children}
      </select>
    </div>
  );
}
