import '../../look/parts.css';
import '../press.css';
import './own.css';
import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { useApp } from '../../model/app.ts';
import { Opening } from '../../shell/Opening.tsx';
import { backFrom } from './back.ts';
import { lastKept } from './keptForms.ts';
import { PrinterForm } from './PrinterForm.tsx';

/** A printer of the site's own: new, or one to change. */
export function PrinterScreen() {
  const { query } = useLocation();
  const { site } = useApp();
  const own = site.facility.value.site.paper.printers;
  const [picked, pick] = useState<string | null>(null);
  // As it was when the screen opened, and not of a printer that was taken off the list since.
  const [halfTyped] = useState(() => lastKept('printer'));
  const kept = own.find(({ printer }) => printer === halfTyped)?.printer;
  const back = backFrom(query);
  if (site.state.value === 'opening') return <Opening />;
  const id = picked ?? query['id'] ?? kept ?? '';
  return (
    <section class="screen press own-paper" aria-labelledby="own-title">
      <p class="own-back">
        <a href={back.address}>Print</a>
      </p>
      <h1 id="own-title">Printer of your own</h1>
      {own.length === 0 ? null : (
        <div class="field press-kind">
          <label for="own-printer">Begin with</label>
          <select id="own-printer" value={id} onChange={(event) => pick(event.currentTarget.value)}>
            <option value="">A new printer</option>
            <optgroup label="Change one of yours">
              {own.map(({ printer, name }) => (
                <option key={printer} value={printer}>
                  {name}
                </option>
              ))}
            </optgroup>
          </select>
        </div>
      )}
      <PrinterForm key={id} changes={own.find(({ printer }) => printer === id) ?? null} back={back} />
    </section>
  );
}
