import { type Signal, useSignal } from '@preact/signals';
import type { Day } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { SetTraits } from '../traits/index.ts';
import { DayChoice } from './DayChoice.tsx';
import type { Doing } from './doing.ts';
import { Primary } from './Primary.tsx';
import type { Standing } from './standing.ts';
import { type SheetName, WordSheet } from './WordSheets.tsx';

/** The one thing to do now, then four common ones, then all. */
export function Actions({ standing }: { readonly standing: Standing }) {
  const { desk, clock } = useApp();
  const { id } = standing.animal;
  const otherDay = useSignal<Day | null>(null);
  const sheet = useSignal<SheetName | null>(null);
  const day = () => otherDay.value ?? clock.today.value;
  const doing: Doing = {
    act: (action) => void desk.act(id, action, day()),
    weigh: () => desk.weigh(id, day()),
    open: (name) => {
      sheet.value = name;
    },
  };
  return (
    <>
      <Primary standing={standing} doing={doing} />
      <section class="actions" aria-label="Actions">
        <Common standing={standing} doing={doing} />
        <AllActions standing={standing} doing={doing} day={otherDay} />
      </section>
      {sheet.value !== null && (
        <WordSheet
          name={sheet.value}
          standing={standing}
          onWrite={doing.act}
          onClose={() => {
            sheet.value = null;
          }}
        />
      )}
    </>
  );
}

function Common({ standing, doing }: { readonly standing: Standing; readonly doing: Doing }) {
  const opaque = standing.animal.opaqueOn !== null;
  return (
    <div class="common">
      <button type="button" onClick={() => doing.act({ do: 'refused' })}>
        Refused
      </button>
      <button type="button" onClick={doing.weigh}>
        Weighed
      </button>
      {opaque ? (
        <button type="button" onClick={() => doing.act({ do: 'shed', whole: true })}>
          Shed
        </button>
      ) : (
        <button type="button" onClick={() => doing.act({ do: 'opaque' })}>
          Opaque
        </button>
      )}
      <button type="button" onClick={() => doing.open('prey')}>
        Other prey
      </button>
    </div>
  );
}

interface AllActionsProps {
  readonly standing: Standing;
  readonly doing: Doing;
  readonly day: Signal<Day | null>;
}

function AllActions({ standing, doing, day }: AllActionsProps) {
  const { animal } = standing;
  const lines: readonly (readonly [words: string, go: () => void])[] = [
    ['Fed as planned', () => doing.act({ do: 'fed-as-planned' })],
    ['Opaque', () => doing.act({ do: 'opaque' })],
    ['Shed', () => doing.act({ do: 'shed', whole: true })],
    ['Shed in pieces', () => doing.act({ do: 'shed', whole: false })],
    ['Spot cleaned', () => doing.act({ do: 'cleaned', how: 'spot' })],
    ['Cleaned in full', () => doing.act({ do: 'cleaned', how: 'full' })],
    ['Water changed', () => doing.act({ do: 'water' })],
    ['Note', () => doing.open('note')],
    ['Regurgitated', () => doing.open('regurgitated')],
    ['Vet cleared', () => doing.open('vet')],
  ];
  return (
    <details class="all-actions">
      <summary>All actions, and on another day</summary>
      <DayChoice day={day} />
      <ul>
        {lines.map(([words, go]) => (
          <li key={words}>
            <button type="button" onClick={go}>
              {words}
            </button>
          </li>
        ))}
        <li>
          <SetTraits animal={animal} look="action" />
        </li>
        <li>
          <a class="action-link" href={`/animal/${animal.id}/parents`}>
            Set parents
          </a>
        </li>
      </ul>
    </details>
  );
}
