import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Id, type ItemRecord, type Problem, plainPrice, setWare } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { type WareText, wareOf } from './wareDraft.ts';

const LINES: readonly (readonly [keyof WareText, string, string])[] = [
  ['name', 'What it is', 'As it stands on the tag.'],
  ['price', 'Price', 'As it stands on the tag, such as 12.50.'],
  [
    'gtin',
    'Maker’s number, if it has one',
    'The digits under its bar code; scan them into this line. Without one it gets a number of ours.',
  ],
  ['words', 'A line more for the tag', 'Size, colour, what it is made of.'],
  ['lowAt', 'Low from', 'At so many pieces left it shows as low.'],
  ['edition', 'Limited edition of', 'So many will ever be made. Empty: no limit.'],
];

interface WareFormProps {
  readonly start: WareText;
  /** The ware that is set anew; a new one where it is left out. */
  readonly item?: ItemRecord;
  readonly onDone?: () => void;
}

/** A ware, new or set anew. */
export function WareForm({ start, item, onDone }: WareFormProps) {
  const app = useApp();
  const { route } = useLocation();
  const text = useSignal<WareText>(start);
  const failed = useSignal<Problem | null>(null);
  const { currency } = app.site.facility.value.site;
  async function write(): Promise<void> {
    const read = wareOf(text.value, currency);
    failed.value = read.ok ? null : read.problem;
    if (!read.ok) return;
    const today = app.clock.today.value;
    const moment = { day: today, today, nowMs: app.clock.nowMs() };
    const facility = app.site.facility.value;
    if (item !== undefined) {
      const decision = setWare(facility, item.id, read.value, moment);
      failed.value = decision.kind === 'refused' ? decision.problem : null;
      if (decision.kind === 'accepted' && (await app.shelf.decided(item.id, read.value.name, decision)) === 'accepted')
        onDone?.();
      return;
    }
    let made: Id | null = null;
    const written = await app.site.writeNew((mint) => {
      made = mint();
      const decision = setWare(facility, made, read.value, moment);
      failed.value = decision.kind === 'refused' ? decision.problem : null;
      return decision.kind === 'accepted' ? decision.drafts : [];
    });
    if (!written.ok) failed.value = written.problem;
    if (failed.value === null && made !== null) route(`/item/${made}`);
  }
  return (
    <details class="shop-form" open={item !== undefined || start.gtin !== undefined}>
      <summary>{item === undefined ? 'Add a ware' : 'Set it anew'}</summary>
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void write();
        }}
      >
        {LINES.map(([name, label, hint]) => (
          <FormLine
            key={name}
            label={label}
            hint={hint}
            value={text.value[name] ?? ''}
            fault={failed.value?.path === name ? failed.value : null}
            onInput={(value) => {
              text.value = { ...text.value, [name]: value };
            }}
          />
        ))}
        {failed.value !== null && !LINES.some(([name]) => name === failed.value?.path) && (
          <ProblemLine problem={failed.value} />
        )}
        <button type="submit" class="primary">
          {item === undefined ? 'Add the ware' : 'Write it'}
        </button>
      </form>
    </details>
  );
}

/** The start of the form for a ware that is set anew. */
export function textOf(item: ItemRecord, currency: string | null): WareText {
  return {
    name: item.name,
    price: currency === null ? '' : plainPrice(item.priceMinor, currency),
    gtin: item.gtin ?? '',
    words: item.words ?? '',
    lowAt: item.lowAt === null ? '' : String(item.lowAt),
    edition: item.edition === null ? '' : String(item.edition),
  };
}

interface FormLineProps {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly fault: Problem | null;
  readonly onInput: (value: string) => void;
}

/** One line of a form of the shop, with what is wrong under it. */
export function FormLine({ label, hint, value, fault, onInput }: FormLineProps) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        value={value}
        maxLength={200}
        autocomplete="off"
        aria-invalid={fault !== null}
        onInput={(event) => onInput(event.currentTarget.value)}
        {...(hint === undefined ? {} : { 'aria-describedby': `${id}-hint` })}
      />
      {hint !== undefined && <small id={`${id}-hint`}>{hint}</small>}
      {fault !== null && <ProblemLine problem={fault} />}
    </div>
  );
}
