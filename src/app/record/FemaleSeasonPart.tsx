import type { ComponentChildren } from 'preact';
import { type FemaleSeason, type Id, nameOf, type SeasonMark, sayDayShort } from '../../core/index.ts';
import { counted, sayClutch, sayCount } from '../clutch/sayClutch.ts';
import { WindowLine } from '../clutch/WindowLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { StageLine } from './StageLine.tsx';
import { STAGE_WORDS, sayMark } from './seasonWords.ts';

const FEW_MARKS = 4;

/** A female's stage and since when, what is expected next and why, who is with her, her marks, and her care. */
export function FemaleSeasonPart({ season }: { readonly season: FemaleSeason }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const { animal, stage, since, next, clutch, care, mates } = season;
  const others = mates.filter((id) => !season.with.includes(id));
  return (
    <>
      <header class="breeding-head">
        <h2 id="season-title">Season</h2>
        <p>
          <strong>{STAGE_WORDS[stage]}</strong>
          {since !== null && (
            <span class="breeding-soft">
              {' '}
              <SpokenDay day={since} today={today} />
            </span>
          )}
        </p>
      </header>
      <StageLine season={season} />
      <dl class="breeding-facts">
        {next.map((window) => (
          <Fact key={window.step.to} term={`Next: ${window.step.to}`}>
            <WindowLine window={window} today={today} />
          </Fact>
        ))}
        {animal.together.map((one) => (
          <Fact key={one.with} term="With her">
            <Mate id={one.with} /> <span class="breeding-soft">since {sayDayShort(one.since)}</span>
          </Fact>
        ))}
        {others.length > 0 && (
          <Fact term="Before">
            {others.map((id, at) => (
              <span key={id}>
                {at > 0 && ', '}
                <Mate id={id} />
              </span>
            ))}
          </Fact>
        )}
        {clutch !== null && (
          <Fact term={clutch.bears === 'eggs' ? 'Clutch' : 'Litter'}>
            <a href={`/clutch/${clutch.id}`}>{sayClutch(facility, clutch)}</a>{' '}
            <span class="breeding-soft">{sayCount(clutch)}</span>
          </Fact>
        )}
      </dl>
      {care.length > 0 && (
        <ul class="breeding-care">
          {care.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      <Marks marks={season.marks} />
    </>
  );
}

export function Fact({ term, children }: { readonly term: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

export function Mate({ id }: { readonly id: Id }) {
  const { site } = useApp();
  return <a href={`/animal/${id}`}>{nameOf(site.facility.value, id)}</a>;
}

/** The marks of this season, the latest first; older ones than a few are behind a line. */
export function Marks({ marks }: { readonly marks: readonly SeasonMark[] }) {
  const latest = marks.toReversed();
  const line = (mark: SeasonMark, at: number) => (
    <li key={`${mark.day}${mark.kind}${at}`}>
      <time dateTime={mark.day} title={mark.day}>
        {sayDayShort(mark.day)}
      </time>
      <span>
        {sayMark(mark)}
        {mark.with !== null && (
          <>
            , <Mate id={mark.with} />
          </>
        )}
      </span>
    </li>
  );
  return (
    <>
      <ol class="breeding-marks" aria-label="Marks of this season">
        {latest.slice(0, FEW_MARKS).map(line)}
      </ol>
      {latest.length > FEW_MARKS && (
        <details class="breeding-more">
          <summary>{counted(latest.length - FEW_MARKS, 'mark')} before</summary>
          <ol class="breeding-marks">{latest.slice(FEW_MARKS).map(line)}</ol>
        </details>
      )}
    </>
  );
}
