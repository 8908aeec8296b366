import './record.css';
import { type AnimalRecord, sayDayShort } from '../../core/index.ts';
import { QuarantinePart } from '../arrival/QuarantinePart.tsx';
import { HandlingPart, LengthPart, OriginPart } from '../identity/index.ts';
import { LeavingPart } from '../leaving/LeavingPart.tsx';
import { useApp } from '../model/app.ts';
import { PapersPart } from '../papers/index.ts';
import { Proving } from '../pedigree/Proving.tsx';
import { AnimalPage } from '../shell/AnimalPage.tsx';
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
  const record = (animal: AnimalRecord) => (
    <Record key={animal.id} standing={standingOf(site.facility.value, animal, clock.today.value)} />
  );
  return <AnimalPage id={id}>{record}</AnimalPage>;
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
