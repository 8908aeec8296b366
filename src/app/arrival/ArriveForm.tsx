import { useSignalEffect } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  ARRIVAL_DAYS,
  type Day,
  geneticSex,
  isDay,
  QUARANTINE_DAYS,
  readMicrochip,
  SEXES,
  SPECIES,
  sayDay,
  sayDistance,
  sayMicrochip,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { SaidBack, TraitText, useTraits } from '../traits/index.ts';
import { type ArrivalDraft, arrivalDraft, usualDays } from './draft.ts';
import { type FormState, faultAt, Line, put } from './fields.tsx';
import { PlaceLine } from './PlaceLine.tsx';
import { usePlaceScan } from './usePlaceScan.ts';

interface PartProps {
  readonly form: FormState;
}

/** The lines of an arrival, in the order in which it is unpacked. */
export function ArriveForm({ form, notes }: PartProps & { readonly notes: readonly string[] }) {
  return (
    <div class="arrive-lines">
      <Who form={form} />
      <Origin form={form} notes={notes} />
      <Home form={form} />
    </div>
  );
}

function Who({ form }: PartProps) {
  const { clock } = useApp();
  const listId = useId();
  const sexId = useId();
  return (
    <fieldset class="arrive-part">
      <legend>Who it is</legend>
      <Line
        form={form}
        name="species"
        label="Species"
        list={listId}
        hint="Its scientific name. A species that is not in the list needs a feed plan of your own."
      />
      <datalist id={listId}>
        {SPECIES.map(({ name, tradeName }) => (
          <option key={name} value={name}>
            {tradeName}
          </option>
        ))}
      </datalist>
      <div class="arrive-two">
        <Line form={form} name="name" label="Name" />
        <Line form={form} name="number" label="Number" most={20} />
      </div>
      <div class="arrive-two">
        <div class="field">
          <label for={sexId}>Sex</label>
          <select
            id={sexId}
            value={arrivalDraft.value.sex}
            onChange={(event) => put({ sex: event.currentTarget.value })}
          >
            {['unsexed', ...SEXES.filter((sex) => sex !== 'unsexed')].map((sex) => (
              <option key={sex}>{sex}</option>
            ))}
          </select>
        </div>
        <Line form={form} name="hatched" label="Hatched on, if known" kind="date" max={clock.today.value} />
      </div>
      <TraitLine />
    </fieldset>
  );
}

/** The traits as the seller said them; they can be mended on the record. */
function TraitLine() {
  const { site } = useApp();
  const { species, sex, traits: start } = arrivalDraft.value;
  const known = SEXES.find((one) => one === sex) ?? 'unsexed';
  const traits = useTraits(site.facility.value, species.trim(), geneticSex(known), start);
  useSignalEffect(() => {
    const text = traits.text.value;
    if (text !== arrivalDraft.peek().traits) put({ traits: text });
  });
  return (
    <>
      <TraitText label="Traits as they were told, if any" text={traits.text} typed={traits.typed} />
      {traits.typed.kind === 'said' && <SaidBack said={traits.typed.said} />}
    </>
  );
}

function Origin({ form, notes }: PartProps & { readonly notes: readonly string[] }) {
  const { clock } = useApp();
  return (
    <fieldset class="arrive-part">
      <legend>Where it came from</legend>
      <Line form={form} name="acquired" label="Came on" kind="date" usual={clock.today.value} max={clock.today.value} />
      <Line form={form} name="source" label="Acquired from" hint="Full name: inspectors ask for it." />
      <Line form={form} name="licence" label="Supplier’s licence" most={120} />
      <Line
        form={form}
        name="papers"
        label="Papers that came with it"
        most={400}
        hint="What they are and their numbers. A photo of each can be added on the record."
      />
      <Line
        form={form}
        name="microchip"
        label="Microchip"
        most={40}
        hint={notes.length > 0 ? notes.join(' ') : sayChip(arrivalDraft.value.microchip)}
      />
      <Line form={form} name="weight" label="Weight, if it was weighed" kind="figure" most={12} hint={WEIGHT_HINT} />
    </fieldset>
  );
}

const WEIGHT_HINT = '900, 1.2 kg; without a unit it is grams.';

function Home({ form }: PartProps) {
  const scan = usePlaceScan();
  const { clock } = useApp();
  const today = clock.today.value;
  const draft = arrivalDraft.value;
  const usual = usualDays(draft, today);
  const noFood = draft.noFood || usual.noFoodUntil;
  return (
    <fieldset class="arrive-part">
      <legend>Quarantine and rest</legend>
      <PlaceLine form={form} scan={scan} />
      <Apart form={form} usual={usual.quarantineUntil} />
      <Line
        form={form}
        name="noFood"
        path="no-food"
        label="No food before"
        kind="date"
        usual={usual.noFoodUntil}
        hint={`${sayDayOf(noFood, today)}. ${ARRIVAL_DAYS[0]} days after transport, hatchlings ${ARRIVAL_DAYS.join('–')} (S: veterinary web pages); water always.`}
      />
    </fieldset>
  );
}

const APART: readonly (readonly [ArrivalDraft['apart'], string])[] = [
  ['until', 'Quarantine until a day'],
  ['open', 'Quarantine until the vet’s or keeper’s word'],
  ['no', 'No quarantine'],
];

function Apart({ form, usual }: PartProps & { readonly usual: string }) {
  const group = useId();
  const { clock } = useApp();
  const { apart, until } = arrivalDraft.value;
  const fault = faultAt(form, 'quarantine');
  return (
    <fieldset class="arrive-choice">
      <legend class="unseen">Quarantine</legend>
      {APART.map(([value, words]) => (
        <label key={value} class="arrive-line">
          <input type="radio" name={group} checked={apart === value} onChange={() => put({ apart: value })} />
          <span>{words}</span>
        </label>
      ))}
      {apart === 'until' && (
        <Line
          form={form}
          name="until"
          path="quarantine"
          label="Quarantine until"
          kind="date"
          usual={usual}
          hint={`${sayDayOf(until || usual, clock.today.value)}. ${QUARANTINE_DAYS.join('–')} days at least (S: a veterinary web page), longer where certain viruses are a risk. The vet decides; it ends by word only.`}
        />
      )}
      {apart !== 'until' && fault !== null && <ProblemLine problem={fault} />}
    </fieldset>
  );
}

function sayDayOf(text: string, today: Day): string {
  return isDay(text) ? `${sayDay(text)}, ${sayDistance(today, text)}` : '';
}

/** What a number says of itself while it is typed. */
function sayChip(text: string): string {
  if (text.trim() === '') return '15 digits after ISO 11784; older numbers are taken as they are. Scan or type it.';
  const read = readMicrochip(text);
  if (!read.ok) return `${read.problem.message} ${read.problem.remedy}`;
  const { code, issuer, note } = read.value;
  return note ?? `${sayMicrochip(code)}: the form of ISO 11784, number of a ${issuer}.`;
}
