import { useSignal } from '@preact/signals';
import { type AnimalRecord, breedingOf, type Day, marksOfSeason, nameOf } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { SeasonSheet, type SeasonSheetName } from './SeasonActions.tsx';
import { useSeason } from './useSeason.ts';

interface SeasonNowProps {
  readonly animal: AnimalRecord;
}

/** What the season is likely to want next, beside the one thing to do now, so that a lock is a scan and a touch. */
export function SeasonNow({ animal }: SeasonNowProps) {
  const { site, clock } = useApp();
  const doing = useSeason(animal);
  const today = useSignal<Day | null>(null);
  const sheet = useSignal<SeasonSheetName | null>(null);
  const marks = marksOfSeason(animal, clock.today.value);
  const has = (kind: (typeof marks)[number]['kind']): boolean => marks.some((mark) => mark.kind === kind);
  const mate = animal.together.at(-1)?.with;
  if (animal.left !== null) return null;
  if (mate !== undefined)
    return (
      <div class="breeding-now">
        <button type="button" onClick={() => doing.stamp('lock', null)}>
          Lock<small>with {nameOf(site.facility.value, mate)}</small>
        </button>
        <button type="button" onClick={() => doing.stamp('apart', null)}>
          Apart
        </button>
      </div>
    );
  const isGravid = (has('ovulation') || has('pre-lay shed')) && !has('laid') && !has('born');
  if (!isGravid) return null;
  return (
    <div class="breeding-now">
      {!has('pre-lay shed') && (
        <button type="button" onClick={() => doing.female({ do: 'pre-lay-shed' }, null)}>
          Pre-lay shed
        </button>
      )}
      <LaidButton
        animal={animal}
        open={(name) => {
          sheet.value = name;
        }}
      />
      <SeasonSheet animal={animal} sheet={sheet} day={today} doing={doing} />
    </div>
  );
}

/** Boas bear live young; a species that nobody knows of lays eggs until its own part below says otherwise. */
function LaidButton({ animal, open }: SeasonNowProps & { open(name: SeasonSheetName): void }) {
  const isLive = breedingOf(animal.species)?.bears === 'live young';
  return (
    <button type="button" onClick={() => open(isLive ? 'born' : 'laid')}>
      {isLive ? 'Birth …' : 'Laid …'}
    </button>
  );
}
