import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type ClutchRecord, type Problem, stillLies } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Egg, type EggLook } from './Egg.tsx';
import { EggList, type EggWord } from './EggList.tsx';
import { candleAllGood, writeAct } from './writing.ts';

const STATES = ['good', 'slug', 'lost'] as const;

/** The eggs as they lie: touch one, then say what it is. */
export function Tray({ clutch }: { readonly clutch: ClutchRecord }) {
  const app = useApp();
  const picked = useSignal<number | null>(null);
  const why = useSignal<Problem | null>(null);
  const looks = looksOf(clutch);
  const unseen = looks.flatMap((look, at) => (look === 'unseen' ? [at + 1] : []));
  const isOpen = stillLies(clutch, app.clock.today.value);
  const out = clutch.hatched ?? 0;
  async function candle(egg: number, state: EggWord): Promise<void> {
    why.value = await writeAct(app, clutch, { do: 'candled', egg, state });
    if (why.value === null) picked.value = unseen.find((one) => one > egg) ?? null;
  }
  return (
    <section class="tray-part" aria-labelledby="tray-title">
      <header class="part-head">
        <h2 id="tray-title">Eggs</h2>
        <p class="soft">{sayLooks(looks)}</p>
      </header>
      <ol class="tray">
        {looks.map((look, at) => (
          <li key={at}>
            <button
              type="button"
              class="tray-egg"
              aria-label={`Egg ${at + 1}: ${sayLook(look)}`}
              aria-pressed={picked.value === at + 1}
              disabled={!isOpen}
              onClick={() => {
                picked.value = picked.value === at + 1 ? null : at + 1;
              }}
            >
              <Egg look={look} mark={`${at + 1}`} />
            </button>
          </li>
        ))}
        {Array.from({ length: clutch.slugs }, (_none, at) => (
          <li key={`slug${at}`} class="tray-slug">
            <Egg look="slug" mark="" />
            <span class="unseen">slug when laid</span>
          </li>
        ))}
      </ol>
      {isOpen && (
        <Candle
          picked={picked.value}
          look={looks[(picked.value ?? 0) - 1] ?? 'unseen'}
          candle={(egg, state) => void candle(egg, state)}
        />
      )}
      {why.value !== null && <ProblemLine problem={why.value} />}
      {isOpen && out > 0 && (
        <p class="soft small">
          {out} of them are out; nobody wrote which. Candle what has failed, so that it is not waited for.
        </p>
      )}
      {isOpen && out === 0 && unseen.length > 0 && (
        <button type="button" class="secondary" onClick={() => void candleAllGood(app, clutch, unseen)}>
          {unseen.length === looks.length ? 'Candle all good' : `Candle the other ${unseen.length} good`}
        </button>
      )}
      <EggList clutch={clutch} candle={isOpen ? (egg, state) => void candle(egg, state) : null} />
    </section>
  );
}

interface CandleProps {
  readonly picked: number | null;
  readonly look: EggLook;
  candle(egg: number, state: EggWord): void;
}

function Candle({ picked, look, candle }: CandleProps) {
  const box = useRef<HTMLFieldSetElement>(null);
  // On a phone the three answers may lie behind the bar at the thumb.
  useEffect(() => box.current?.scrollIntoView({ block: 'nearest' }), [picked]);
  if (picked === null) return <p class="soft candle-hint">Touch an egg to say how it candles.</p>;
  return (
    <fieldset class="candle" ref={box}>
      <legend>
        Egg {picked} <span class="soft">{sayLook(look)}</span>
      </legend>
      {STATES.map((state) => (
        <button key={state} type="button" aria-pressed={look === state} onClick={() => candle(picked, state)}>
          <Egg look={state} mark="" />
          {state}
        </button>
      ))}
    </fieldset>
  );
}

function looksOf({ eggs, eggStates }: ClutchRecord): readonly EggLook[] {
  return Array.from({ length: eggs }, (_none, at) => eggStates[at + 1]?.state ?? 'unseen');
}

function sayLook(look: EggLook): string {
  return look === 'unseen' ? 'not candled yet' : look;
}

/** `5 good, 1 lost, 2 not candled yet`. */
function sayLooks(looks: readonly EggLook[]): string {
  const counts = [...STATES, 'unseen' as const].map(
    (look) => [looks.filter((one) => one === look).length, look] as const,
  );
  return counts
    .filter(([count]) => count > 0)
    .map(([count, look]) => `${count} ${sayLook(look)}`)
    .join(', ');
}
