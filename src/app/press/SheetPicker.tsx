import { slots } from '../../../print/stocks/slots.ts';
import { labelBox, labelsPerPage } from '../../../print/stocks/stock.ts';
import type { Paper } from './paper.ts';

interface SheetPickerProps {
  readonly paper: Paper;
  readonly count: number;
  readonly touch: (first: number) => void;
}

/** The sheet on top, drawn to scale: touch its first free label. Numbers are the cards' order in the walk. */
export function SheetPicker({ paper, count, touch }: SheetPickerProps) {
  const { stock, first, order } = paper;
  const laid = slots(stock, count, { first, order });
  const onTop = new Map<number, number>();
  if (laid.ok)
    laid.value.forEach((slot, at) => {
      if (slot.page === 1) onTop.set(slot.label, at + 1);
    });
  const sheets = laid.ok ? Math.max(0, ...laid.value.map((slot) => slot.page)) : 0;
  return (
    <div class="sheet-picker">
      <p class="soft">
        Touch the first free label of the sheet on top; hatched ones are used up.{' '}
        {count > 0 ? `Label ${first} is the first of ${sheets} ${sheets === 1 ? 'sheet' : 'sheets'}.` : null}
      </p>
      <div
        class="label-sheet"
        role="radiogroup"
        aria-label="First free label"
        style={{ aspectRatio: `${stock.pageWidthMm} / ${stock.pageHeightMm}` }}
      >
        {Array.from({ length: labelsPerPage(stock) }, (_none, at) => (
          <Label key={at} paper={paper} label={at + 1} card={onTop.get(at + 1) ?? null} touch={touch} />
        ))}
      </div>
    </div>
  );
}

interface LabelProps {
  readonly paper: Paper;
  readonly label: number;
  readonly card: number | null;
  readonly touch: (first: number) => void;
}

function Label({ paper: { stock, first }, label, card, touch }: LabelProps) {
  const [x, y, width, height] = labelBox(stock, label);
  const kind = label < first ? 'label-used' : card === null ? 'label-free' : 'label-taken';
  const part = (mm: number, of: number): string => `${(mm / of) * 100}%`;
  return (
    <label
      class={`sheet-label ${kind}`}
      style={{
        left: part(x, stock.pageWidthMm),
        top: part(y, stock.pageHeightMm),
        width: part(width, stock.pageWidthMm),
        height: part(height, stock.pageHeightMm),
      }}
    >
      <input
        type="radio"
        name="first-label"
        aria-label={`Label ${label}`}
        checked={label === first}
        onChange={() => touch(label)}
      />
      <span aria-hidden="true">{card}</span>
    </label>
  );
}
