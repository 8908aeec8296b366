import './record.css';
import { parseId, problem, sayDayShort, sayId } from '../../core/index.ts';
import { QuarantinePart } from '../arrival/QuarantinePart.tsx';
import { HandlingPart, LengthPart, OriginPart } from '../identity/index.ts';
import { LeavingPart } from '../leaving/LeavingPart.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { PapersPart } from '../papers/index.ts';
import { Proving } from '../pedigree/Proving.tsx';
import { OfferPart } from '../shop/OfferPart.tsx';
import { SetTraits } from '../traits/index.ts';
import { TreatmentPart } from '../treatment/index.ts';
import { Actions } from './Actions.tsx';
import { DueBecause, FeedBecause, WeightBecause } from './Because.tsx';
import { CardFace } from './CardFace.tsx';
import { CardInTub } from './CardInTub.tsx';
import { DangerBand } from './DangerBand.tsx';
import { GrowthPart } from './growth/index.ts';
import { Kin } from './Kin.tsx';
import { Ledger } from './Ledger.tsx';
import { Neighbours } from './Neighbours.tsx';
import { SeasonPart } from './SeasonPart.tsx';
import { type Standing, standingOf } from './standing.ts';

/** An animal's record: its card, what to do now, and its ledger. */
export function RecordScreen({ id }: { readonly id?: string }) {
  const { site, clock } = useApp();
  const read = parseId(id ?? '');
  const animal = read.ok ? site.facility.value.animals.get(read.value.id) : undefined;
  if (animal === undefined) {
    return (
      <section class="page">
        <h1>No record here</h1>
        <ProblemLine problem={read.ok ? problem('unknown-id', { id: sayId(read.value.id) }) : read.problem} />
        <a class="primary" href="/">
          Scan a card
        </a>
      </section>
    );
  }
  return <Record key={animal.id} standing={standingOf(site.facility.value, animal, clock.today.value)} />;
}

function Record({ standing }: { readonly standing: Standing }) {
  const { animal, content, due } = standing;
  const under = {
    due: <DueBecause standing={standing} />,
    feed: <FeedBecause standing={standing} />,
    weight: <WeightBecause standing={standing} />,
  };
  const foot = animal.printed === null ? 'not printed yet' : `printed ${sayDayShort(animal.printed.day)}`;
  return (
    <div class="record">
      <div class="record-card">
        <Neighbours animal={animal} />
        <DangerBand flags={content.flags} />
        <CardFace
          content={content}
          due={due?.state ?? null}
          under={under}
          traits={<SetTraits animal={animal} />}
          foot={foot}
        />
        <CardInTub standing={standing} />
        <Actions standing={standing} />
      </div>
      <div class="record-ledger">
        <QuarantinePart animal={animal} />
        <TreatmentPart animal={animal} />
        <GrowthPart animal={animal} />
        <SeasonPart animal={animal} />
        <Kin animal={animal} />
        <Proving animal={animal} />
        <HandlingPart animal={animal} />
        <LengthPart animal={animal} />
        <OriginPart animal={animal} />
        <OfferPart animal={animal} />
        <LeavingPart animal={animal} />
        <PapersPart animal={animal} />
        <Ledger id={animal.id} />
      </div>
    </div>
  );
}
