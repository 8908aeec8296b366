import { sayGramRange, sayPrey } from '../../core/index.ts';
import type { Doing } from './doing.ts';
import { SeasonNow } from './SeasonNow.tsx';
import { type Standing, whatNow } from './standing.ts';

/** The one thing to do now, full width, with the caution that belongs to it. */
export function Primary(props: PrimaryProps) {
  return (
    <section class="record-now" aria-label="Now">
      <Now {...props} />
      <SeasonNow animal={props.standing.animal} />
    </section>
  );
}

interface PrimaryProps {
  readonly standing: Standing;
  readonly doing: Doing;
}

function Now({ standing, doing }: PrimaryProps) {
  const { animal, due, meal, weightAge } = standing;
  const now = whatNow(standing);
  switch (now) {
    case 'feed':
      return <Feed standing={standing} doing={doing} />;
    case 'soon':
      return (
        <>
          <p class="wait">
            <strong>Not due yet.</strong> {standing.dueIn === null ? '' : `The next meal is due ${standing.dueIn}.`}
          </p>
          <FeedAllTheSame doing={doing} />
        </>
      );
    case 'weigh-first':
      return (
        <>
          <button type="button" class="now" onClick={doing.weigh}>
            Weigh first
            <small>{weightAge === null ? 'there is no weight yet' : `the weight is ${weightAge.days} days old`}</small>
          </button>
          {meal !== null && <FeedAllTheSame doing={doing} />}
          <Caution standing={standing} />
        </>
      );
    case 'shed':
      return (
        <button type="button" class="now" onClick={() => doing.act({ do: 'shed', whole: true })}>
          Shed seen<small>it is opaque; not fed until then</small>
        </button>
      );
    case 'vet':
      return (
        <>
          <p class="stop">
            <strong>Not to be fed without a vet’s word.</strong>
          </p>
          <button type="button" class="now" onClick={() => doing.open('vet')}>
            Vet cleared<small>with the vet’s name</small>
          </button>
        </>
      );
    case 'wait':
      return (
        <p class="wait">
          <strong>Nothing to feed now.</strong> {due?.hold?.reason}.
        </p>
      );
    case 'gone':
      return (
        <p class="wait">
          <strong>No longer here:</strong> {animal.left?.how},{' '}
          <time dateTime={animal.left?.day}>{animal.left?.day}</time>.
        </p>
      );
    default:
      now satisfies never;
      return null;
  }
}

function FeedAllTheSame({ doing }: { readonly doing: Doing }) {
  return (
    <button type="button" class="secondary" onClick={() => doing.act({ do: 'fed-as-planned' })}>
      Feed as planned all the same
    </button>
  );
}

function Feed({ standing, doing }: PrimaryProps) {
  const { meal } = standing;
  return (
    <>
      <button type="button" class="now" onClick={() => doing.act({ do: 'fed-as-planned' })}>
        Feed as planned
        {meal !== null && (
          <small>
            {meal.count} × {sayPrey(meal.prey)}, {sayGramRange(meal.eachG)}
            {meal.count > 1 ? ' each' : ''}
          </small>
        )}
      </button>
      <Caution standing={standing} />
    </>
  );
}

/** The rule's own caution, which ends its reasons. */
function Caution({ standing }: { readonly standing: Standing }) {
  const { meal } = standing;
  if (meal === null) return null;
  return (
    <p class="caution">
      {meal.smaller !== null && <strong>{meal.smaller}. </strong>}
      {meal.why.at(-1)}
    </p>
  );
}
