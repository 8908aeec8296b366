import { breedingOf, type FemaleSeason, type SeasonMark } from '../../core/index.ts';

/** A stop of the line: reached, passed without a mark, or still to come. */
interface Stop {
  readonly words: string;
  readonly state: 'seen' | 'passed' | 'ahead';
}

const [WIDTH, Y] = [340, 14];

/** The season as one line: filled stops were seen, open ones are to come, a bare tick was passed unseen. */
export function StageLine({ season }: { readonly season: FemaleSeason }) {
  const stops = stopsOf(season);
  const step = (WIDTH - 40) / (stops.length - 1);
  const last = stops.findLastIndex(({ state }) => state === 'seen');
  const x = (at: number): number => 20 + at * step;
  const label = stops.map(({ words, state }) => `${words} ${STATE_WORDS[state]}`).join(', ');
  return (
    <svg class="stage-line" viewBox={`0 0 ${WIDTH} 42`} role="img" aria-label={label}>
      <path class="stage-ahead" d={`M${x(0)} ${Y}H${x(stops.length - 1)}`} />
      {last > 0 && <path class="stage-done" d={`M${x(0)} ${Y}H${x(last)}`} />}
      {stops.map(({ words, state }, at) => (
        <g key={words}>
          {state === 'passed' ? (
            <path class="stage-done" d={`M${x(at)} ${Y - 5}v10`} />
          ) : (
            <circle class={`stage-${state === 'seen' ? 'seen' : 'open'}`} cx={x(at)} cy={Y} r={at === last ? 7 : 5} />
          )}
          <text class={at === last ? 'stage-now' : undefined} x={x(at)} y="38">
            {words}
          </text>
        </g>
      ))}
    </svg>
  );
}

const STATE_WORDS = { seen: 'seen', passed: 'not written', ahead: 'to come' } as const;

const OF_EGGS: readonly (readonly [string, SeasonMark['kind']])[] = [
  ['paired', 'paired'],
  ['lock', 'lock'],
  ['ovulation', 'ovulation'],
  ['shed', 'pre-lay shed'],
  ['laid', 'laid'],
];

function stopsOf({ animal, marks, clutch }: FemaleSeason): readonly Stop[] {
  const isLive = clutch === null ? breedingOf(animal.species)?.bears === 'live young' : clutch.bears === 'live young';
  const kinds = isLive ? [...OF_EGGS.slice(0, -1), ['born', 'born'] as const] : OF_EGGS;
  const seen = kinds.map(([words, kind]) => ({ words, seen: marks.some((mark) => mark.kind === kind) }));
  const all = isLive ? seen : [...seen, { words: 'hatched', seen: clutch?.hatchedOn != null }];
  const last = all.findLastIndex((one) => one.seen);
  return all.map((one, at) => ({ words: one.words, state: one.seen ? 'seen' : at < last ? 'passed' : 'ahead' }));
}
