import { type LeftOut, PAGES_LEFT, type Warning } from '../../../print/manifest.ts';
import { nameOf, parseId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { addressOf, sayPieces, type What } from './batch.ts';

/** What was asked for and is not on the paper, each with its reason. */
export function LeftOutList({ what, left }: { readonly what: What; readonly left: readonly LeftOut[] }) {
  const { site } = useApp();
  const pieces = left.filter(({ id }) => !id.startsWith(PAGES_LEFT));
  const pages = left.filter(({ id }) => id.startsWith(PAGES_LEFT));
  const name = (id: string): string => {
    const read = parseId(id);
    return read.ok ? nameOf(site.facility.value, read.value.id) : id;
  };
  return (
    <>
      {pages.map(({ id, why }) => (
        <p key={id} class="problem-line" role="alert">
          {why}
        </p>
      ))}
      {pieces.length === 0 ? null : (
        <div class="left-out" role="alert">
          <h3>
            {sayPieces(what, pieces.length)} {pieces.length === 1 ? 'is' : 'are'} not on the paper
          </h3>
          <ul>
            {pieces.map(({ id, why }) => (
              <li key={why}>
                <LeftName address={addressOf(what, id)} name={name(id)} /> {why}
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

/** What is on the paper otherwise than it was written, each reason once. */
export function WarningList({ warnings }: { readonly warnings: readonly Warning[] }) {
  const reasons = [...new Set(warnings.map(({ why }) => why))];
  if (reasons.length === 0) return null;
  return (
    <div class="left-out" role="note" aria-label="Printed otherwise">
      <ul>
        {reasons.map((why) => (
          <li key={why}>{why}</li>
        ))}
      </ul>
    </div>
  );
}

function LeftName({ address, name }: { readonly address: string | null; readonly name: string }) {
  return address === null ? <strong>{name}</strong> : <a href={address}>{name}</a>;
}
