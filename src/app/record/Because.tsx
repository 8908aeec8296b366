import type { Standing } from './standing.ts';

interface BecauseProps {
  readonly about: string;
  readonly why: readonly string[];
  /** What stands before the word: how far off a day is. */
  readonly lead?: string | undefined;
}

/** The reasons behind a computed line, with the mark and source of each figure. */
export function Because({ about, why, lead }: BecauseProps) {
  if (why.length === 0) return null;
  return (
    <details class="because">
      <summary aria-label={`${lead === undefined ? '' : `${lead}. `}Because: ${about}`}>
        {lead !== undefined && `${lead} ·`}
        <span>because</span>
      </summary>
      <ul>
        {why.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </details>
  );
}

/** A thing to look at before acting on the line above it. */
export function LookAt({ words }: { readonly words: readonly string[] }) {
  return (
    <>
      {words.map((one) => (
        <p key={one} class="look-at">
          {one}
        </p>
      ))}
    </>
  );
}

export function DueBecause({ standing }: { readonly standing: Standing }) {
  const { due, dueProblem, dueIn } = standing;
  if (dueProblem !== null) return <LookAt words={[`${dueProblem.message} ${dueProblem.remedy}`]} />;
  return <Because about="due" why={due?.why ?? []} lead={dueIn ?? undefined} />;
}

export function FeedBecause({ standing }: { readonly standing: Standing }) {
  const { meal, mealProblem } = standing;
  if (mealProblem !== null) return <LookAt words={[`${mealProblem.message} ${mealProblem.remedy}`]} />;
  return (
    <>
      <LookAt words={meal?.warnings ?? []} />
      <Because about="feed" why={meal?.why ?? []} />
    </>
  );
}

export function WeightBecause({ standing }: { readonly standing: Standing }) {
  const { loss, weightAge } = standing;
  if (weightAge === null) return null;
  const sinceReset =
    loss.level === 'none' ? `Since the last reset: ${loss.words}.` : `Since the last reset ${loss.words}.`;
  return (
    <>
      {loss.level !== 'none' && <LookAt words={[`Weight ${loss.words}.`]} />}
      <Because
        about="weight"
        why={[
          `Weighed ${weightAge.days} days ago; this species and size is weighed every ${weightAge.everyDays} days (C: common practice, no source).`,
          sinceReset,
          'A loss is noted at 5 %, reviewed at 10 %, urgent at 15 % of the highest weight since the first one or the last laying (S: 10 and 20; C: 5 and 15).',
        ]}
      />
    </>
  );
}
