import { type Signal, useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  type AnimalRecord,
  decideMeasured,
  FLUIDS_CAUTION,
  isYoung,
  lastWeight,
  measuredBody,
  type Problem,
  prescriptionNumber,
  type Result,
  sayAnimal,
  sayDaily,
  sayDayShort,
  sayFluids,
  sayId,
  sayMl,
  type Treatment,
  TUBE_CAUTION,
  type TubeSheet as TubeFeeding,
  tubeSheet,
} from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { LookAt } from '../record/Because.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { BodyRuler } from './BodyRuler.tsx';
import { Caution } from './Caution.tsx';
import { readLengthMm } from './figures.ts';
import { NoVolume } from './NoVolume.tsx';
import { Syringe } from './Syringe.tsx';
import { TextLine } from './TextLine.tsx';
import { LargeVolume } from './Volume.tsx';

interface TubeSheetProps {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  /** The volume before it is rounded to a mark: the sheet rounds it once, itself. */
  readonly exactMl: number;
  readonly onClose: () => void;
}

/** What a tube feeding needs besides its volume: the flush, and where the stomach lies in an animal that was measured. */
export function TubeSheet({ animal, treatment, exactMl, onClose }: TubeSheetProps) {
  const { clock } = useApp();
  const known = measuredBody(animal);
  const length = useSignal(known === null ? '' : `${known.lengthMm / 10} cm`);
  const slurry = useSignal<boolean | null>(null);
  const read = readLengthMm(length.value);
  const asked = { animal, treatment, exactMl, slurry: slurry.value ?? false, on: clock.today.value };
  const measured = sheetOf(asked, read.ok ? (read.value ?? undefined) : undefined);
  const isLength = !measured.ok && measured.problem.path === 'snoutVentMm';
  // A length that cannot be takes nothing away from the volume.
  const sheet = isLength ? sheetOf(asked, undefined) : measured;
  const fault = read.ok ? (isLength ? measured.problem : null) : read.problem;
  return (
    <Sheet title={`Tube feeding of ${sayAnimal(animal)}`} onClose={onClose}>
      <div class="give-sheet">
        <p class="slide-sheet-id">
          {sayId(animal.id)} · {treatment.record.written.drug}
        </p>
        <Caution words={TUBE_CAUTION} />
        {sheet.ok ? (
          <>
            <LargeVolume drawn={sheet.value} />
            <Syringe drawn={sheet.value} />
            <p>The most at once for this animal by the cap: {sayMl(sheet.value.capMl)}, the flush counted in.</p>
            <SlurryChoice slurry={slurry} />
            <Flush sheet={sheet.value} slurry={slurry.value} />
            {slurry.value === false && (
              <FluidsRange animal={animal} ml={sheet.value.ml} everyHours={treatment.record.written.everyHours} />
            )}
            <Depth
              animal={animal}
              sheet={sheet.value}
              length={length}
              typedMm={read.ok ? read.value : null}
              fault={fault}
            />
            <LookAt words={sheet.value.warnings} />
          </>
        ) : (
          <NoVolume animal={animal} problem={sheet.problem} />
        )}
        {sheet.ok && (
          <a
            class="secondary"
            href={`/print?what=tube&only=${animal.id}/${prescriptionNumber(animal, treatment.record)}`}
          >
            Print the tube feeding sheet
          </a>
        )}
        <button type="button" class="give-leave" onClick={onClose}>
          Close
        </button>
      </div>
    </Sheet>
  );
}

interface Asked {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly exactMl: number;
  readonly slurry: boolean;
  readonly on: ReturnType<typeof useApp>['clock']['today']['value'];
}

function sheetOf(
  { animal, treatment, exactMl, slurry, on }: Asked,
  snoutVentMm: number | undefined,
): Result<TubeFeeding> {
  const weight = lastWeight(animal);
  // Without a weight there is no cap, and tubeSheet says so at the mass.
  const mass = weight === null ? {} : { massG: weight.weightG };
  return tubeSheet({
    ...mass,
    massDate: weight?.day ?? on,
    flagged: weight?.doubted === true,
    on,
    young: weight === null ? undefined : isYoung(animal.species, weight.weightG),
    volumeMl: exactMl,
    slurry,
    snoutVentMm,
    capPercent: treatment.prescription.capPercent,
    syringesMl: treatment.prescription.syringesMl,
  });
}

function SlurryChoice({ slurry }: { readonly slurry: { value: boolean | null } }) {
  const name = useId();
  return (
    <fieldset class="choose">
      <legend>Is it a slurry?</legend>
      {[true, false].map((value) => (
        <label key={String(value)}>
          <input
            type="radio"
            name={name}
            checked={slurry.value === value}
            onChange={() => {
              slurry.value = value;
            }}
          />
          <span>{value ? 'Yes, it needs water after it' : 'No, a liquid'}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Flush({ sheet, slurry }: { readonly sheet: TubeFeeding; readonly slurry: boolean | null }) {
  if (slurry === null) return <p class="hint">Say whether it is a slurry; then the flush stands here.</p>;
  if (!slurry) return <p>No flush: it is no slurry.</p>;
  if (sheet.flushMl === null) return null;
  const [least, most] = sheet.flushMl;
  return (
    <p>
      Flush: <strong>{least === most ? sayMl(least) : `${least}–${sayMl(most)}`}</strong> of water after it (common
      practice, no source).
    </p>
  );
}

interface FluidsProps {
  readonly animal: AnimalRecord;
  readonly ml: number;
  readonly everyHours: number;
}

/** Where a fluid goes in, the published range stands beside what the vet wrote; it proposes nothing. */
function FluidsRange({ animal, ml, everyHours }: FluidsProps) {
  const weight = lastWeight(animal);
  if (weight === null) return null;
  const daily = sayDaily(ml, everyHours);
  return (
    <p class="fluids">
      {sayFluids(weight.weightG)} {daily} {FLUIDS_CAUTION}
    </p>
  );
}

interface DepthProps {
  readonly animal: AnimalRecord;
  readonly sheet: TubeFeeding;
  readonly length: Signal<string>;
  /** The length that is typed, in mm; null where it is empty or wrong. */
  readonly typedMm: number | null;
  readonly fault: Problem | null;
}

function Depth({ animal, sheet, length, typedMm, fault }: DepthProps) {
  const { desk, clock } = useApp();
  const known = measuredBody(animal);
  const isNew = typedMm !== null && fault === null && typedMm !== known?.lengthMm;
  function keep(): void {
    if (typedMm === null) return;
    const today = clock.today.value;
    const measuring = { lengthMm: Math.round(typedMm), of: 'snout-vent', guessed: false } as const;
    void desk.decided(animal.id, decideMeasured(animal, measuring, { day: today, today, nowMs: clock.nowMs() }));
  }
  return (
    <>
      <TextLine
        label="Snout to vent, as measured, with its unit"
        value={length}
        most={12}
        inputMode="text"
        fault={fault}
        hint={
          known === null
            ? 'Such as 90 cm. It is never guessed; without it nothing is said about depth.'
            : `Measured ${sayDayShort(known.day)}. It is never guessed; measure again if the animal has grown.`
        }
      />
      {isNew && (
        <button type="button" class="secondary" onClick={keep}>
          Write this length on the record
        </button>
      )}
      {sheet.stomachMm !== null && <BodyRuler stomachMm={sheet.stomachMm} />}
    </>
  );
}
