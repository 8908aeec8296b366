import { useEffect, useState } from 'preact/hooks';
import './own/own.css';
import type { What } from './batch.ts';
import { aboutPaper } from './own/back.ts';
import { FormLine } from './own/FormLine.tsx';
import { readPages, sayPages } from './pages.ts';
import type { Paper } from './paper.ts';

interface MorePaperProps {
  readonly what: What;
  readonly paper: Paper;
  readonly lay: (paper: Paper) => void;
}

/** What is seldom needed, folded away; whatever is set otherwise than usual is said on the fold. */
export function MorePaper({ what, paper, lay }: MorePaperProps) {
  const said = sayChoices(paper);
  return (
    <details class="paper-more">
      <summary>
        More about the paper
        {said === '' ? null : <small>{said}</small>}
      </summary>
      <div class="field">
        <label for="paper-flip">Two-sided</label>
        <select
          id="paper-flip"
          value={paper.flip ?? 'front'}
          onChange={({ currentTarget: { value } }) =>
            lay({ ...paper, flip: value === 'long' || value === 'short' ? value : null, pages: null })
          }
        >
          <option value="front">No: a second face gets a label of its own</option>
          <option value="long">Second faces on the back, turned over the long edge</option>
          <option value="short">Second faces on the back, turned over the short edge</option>
        </select>
      </div>
      <label class="paper-check">
        <input
          type="checkbox"
          checked={paper.cutMarks}
          onChange={(event) => lay({ ...paper, cutMarks: event.currentTarget.checked })}
        />
        Marks in the margins to cut along
      </label>
      <PagesLine paper={paper} lay={lay} />
      <PaperLinks what={what} paper={paper} />
    </details>
  );
}

function PagesLine({ paper, lay }: Omit<MorePaperProps, 'what'>) {
  const [typed, setTyped] = useState(sayPages(paper.pages));
  const [isLeft, setLeft] = useState(false);
  const read = readPages(typed);
  // A run that was printed, or another side of the paper, makes it all pages again.
  useEffect(() => {
    if (paper.pages === null && read.ok) setTyped('');
  }, [paper.pages]);
  return (
    <FormLine
      name="pages"
      label="Only pages"
      value={typed}
      most={12}
      hint={`Such as 3-7, counted as in the whole run${paper.flip === null ? '' : ', front and back each'}; empty for all.`}
      fault={read.ok || !isLeft ? null : read.problem}
      onLeave={() => setLeft(true)}
      put={(value) => {
        setTyped(value);
        setLeft(false);
        const next = readPages(value);
        lay({ ...paper, pages: next.ok ? next.value : null });
      }}
    />
  );
}

function PaperLinks({ what, paper: { stock, printer } }: Omit<MorePaperProps, 'lay'>) {
  const isOwn = (id: string): boolean => id.startsWith('own-');
  return (
    <ul class="paper-links">
      <li>
        <a href={aboutPaper('stock', what, isOwn(stock.id) ? { id: stock.id } : {})}>
          {isOwn(stock.id) ? 'Change this stock, or add one' : 'Paper of your own'}
        </a>
      </li>
      <li>
        <a href={aboutPaper('printer', what, isOwn(printer.id) ? { id: printer.id } : {})}>
          {isOwn(printer.id) ? 'Change this printer, or add one' : 'Printer of your own'}
        </a>
      </li>
      <li>
        <a href={aboutPaper('calibration', what, { stock: stock.id, printer: printer.id })}>
          Calibrate this printer on this stock
        </a>
      </li>
    </ul>
  );
}

function sayChoices({ flip, cutMarks, pages }: Paper): string {
  return [
    flip === null ? '' : `two-sided, over the ${flip} edge`,
    cutMarks ? 'cut marks' : '',
    pages === null ? '' : `only pages ${sayPages(pages)}`,
  ]
    .filter(Boolean)
    .join(' · ');
}
