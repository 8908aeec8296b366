import type { PaperUnit } from '../../../../print/stocks/lengths.ts';
import { sayPaperMm } from '../../../../print/stocks/lengths.ts';
import type { Problem } from '../../../core/index.ts';
import { Lens } from '../../look/Lens.tsx';
import { FormLine } from './FormLine.tsx';
import {
  type CountField,
  inUnit,
  type LengthField,
  type StockField,
  type StockText,
  shownFields,
} from './stockDraft.ts';

interface StockLinesProps {
  readonly text: StockText;
  readonly put: (text: StockText) => void;
  readonly fault: (field: StockField) => Problem | null;
  readonly leave: (field: StockField) => void;
}

type Words = readonly [label: string, hint?: string];

/** What is measured on the sheet in hand, line by line. */
export function StockLines(props: StockLinesProps) {
  const { text, put, fault, leave } = props;
  const shown = shownFields(text);
  const line = (
    field: StockField,
    [label, hint]: Words,
    more: { readonly most?: number; readonly unit?: string } = {},
  ) => (
    <FormLine
      key={field}
      name={field}
      label={label}
      value={text[field]}
      fault={fault(field)}
      put={(value) => put({ ...text, [field]: value })}
      onLeave={() => leave(field)}
      isFigure={field !== 'name'}
      {...(hint === undefined ? {} : { hint })}
      {...more}
    />
  );
  const unit = { unit: text.unit === 'mm' ? 'mm' : 'in' };
  const length = (field: LengthField, words: Words) => (shown.includes(field) ? line(field, words, unit) : null);
  const count = (field: CountField, words: Words) => (shown.includes(field) ? line(field, words) : null);
  return (
    <>
      {line('name', ['Name', 'As you will look for it in the list, such as the words on its box.'], { most: 80 })}
      <Lens<PaperUnit>
        label="Measured in"
        chosen={text.unit}
        choose={(next) => put(inUnit(text, next))}
        choices={[
          { id: 'mm', words: 'Millimetres' },
          { id: 'inch', words: 'Inches' },
        ]}
      />
      <p class="soft">
        {text.unit === 'mm'
          ? 'A length with another unit behind it is converted: 2 5/8 in, 6.6 cm.'
          : 'Fractions are read: 2 5/8. A length with another unit behind it is converted: 66.7 mm.'}
      </p>
      {text.isRoll ? null : (
        <fieldset>
          <legend>Sheet</legend>
          <PageSizes text={text} put={put} />
          <div class="paper-pair">
            {length('pageWidthMm', ['Width'])}
            {length('pageHeightMm', ['Height'])}
          </div>
        </fieldset>
      )}
      <fieldset>
        <legend>{text.isRoll ? 'One label, or one card' : 'Labels'}</legend>
        <div class="paper-pair">
          {length('labelWidthMm', ['Label width'])}
          {length('labelHeightMm', ['Label height'])}
          {count('columns', ['Labels across'])}
          {count('rows', ['Labels down'])}
          {length('firstXMm', ['First label from the left', 'From the sheet’s left edge.'])}
          {length('firstYMm', ['First label from the top', 'From the sheet’s top edge.'])}
          {length('pitchXMm', ['Step across', 'From one label’s left edge to the next one’s.'])}
          {length('pitchYMm', ['Step down', 'From one label’s top edge to the next one’s.'])}
        </div>
      </fieldset>
      {length('printerInsetMm', [
        'Margin that the printer leaves',
        'What it cannot print at the sheet’s edge, dashed in the drawing: about 5 mm on office printers, 1.5 mm on label printers (common practice).',
      ])}
    </>
  );
}

const PAGES = [
  ['A4', 210, 297],
  ['Letter', 215.9, 279.4],
] as const;

function PageSizes({ text, put }: Pick<StockLinesProps, 'text' | 'put'>) {
  const say = (mm: number): string => sayPaperMm(mm, text.unit);
  return (
    <p class="paper-sizes">
      {PAGES.map(([name, width, height]) => (
        <button
          key={name}
          type="button"
          class="link"
          onClick={() => put({ ...text, pageWidthMm: say(width), pageHeightMm: say(height) })}
        >
          {name}
        </button>
      ))}
    </p>
  );
}
