import type { Signal } from '@preact/signals';
import { type Picture, wayOf } from '../../../core/index.ts';
import { PhotoField } from '../../papers/index.ts';
import { Choose, type FormState, Line } from './fields.tsx';
import { Syringes } from './Syringes.tsx';

interface PrescriptionFormProps {
  readonly form: FormState;
  readonly pictures: Signal<readonly Picture[]>;
  /** The syringes of the site’s rules; null where it has none. */
  readonly syringesMl: readonly number[] | null;
}

/** The vet’s words, line by line, in the order in which a paper gives them. */
export function PrescriptionForm({ form, pictures, syringesMl }: PrescriptionFormProps) {
  return (
    <>
      <fieldset class="form-part">
        <legend>Drug and dose</legend>
        <Line form={form} name="drug" label="Drug, as the vet wrote it" most={120} />
        <Choose
          form={form}
          name="by"
          legend="How the vet wrote the dose"
          choices={[
            ['mass', 'by body mass, in mg per kg'],
            ['volume', 'a fixed volume, in mL'],
          ]}
        />
        <Figures form={form} />
        <Line
          form={form}
          name="route"
          label="Route, as the vet wrote it"
          most={60}
          hint={sayRoute(form.draft.value.route)}
        />
      </fieldset>
      <Syringes form={form} siteMl={syringesMl} />
      <Course form={form} />
      <Paper form={form} pictures={pictures} />
    </>
  );
}

function Figures({ form }: { readonly form: FormState }) {
  const { by } = form.draft.value;
  if (by === '') return <p class="hint">Choose one; then its figures are asked for here.</p>;
  if (by === 'volume')
    return (
      <>
        <Line form={form} name="ml" label="Volume of one dose, in mL" kind="figure" hint="Such as 0.3, never .3" />
        <StrengthLines form={form} label="Strength on the bottle (may stay empty)" />
      </>
    );
  return (
    <>
      <Line
        form={form}
        name="dose"
        label="Dose, in mg per kg of body mass"
        kind="figure"
        hint="Such as 0.5, never .5"
      />
      <StrengthLines form={form} label="Strength on the bottle" />
      <details class="cap-lines">
        <summary>More than 2 % of body mass at once</summary>
        <p class="hint">
          Only where the vet wrote that volume for this animal: both lines then, and the figures must come to it.
        </p>
        <div class="two-lines">
          <Line form={form} name="capPercent" label="Cap, in % of body mass" kind="figure" />
          <Line form={form} name="capMl" label="Volume that the vet wrote, in mL" kind="figure" />
        </div>
      </details>
    </>
  );
}

function StrengthLines({ form, label }: { readonly form: FormState; readonly label: string }) {
  return (
    <div class="two-lines">
      <Line form={form} name="strength" label={label} kind="figure" />
      <Choose
        form={form}
        name="strengthUnit"
        legend="Unit of the strength"
        choices={[
          ['mgPerMl', 'mg per mL'],
          ['percentWv', '% w/v'],
        ]}
      />
    </div>
  );
}

function Course({ form }: { readonly form: FormState }) {
  return (
    <fieldset class="form-part">
      <legend>When</legend>
      <div class="two-lines">
        <Line form={form} name="every" label="One dose every" kind="figure" />
        <Choose
          form={form}
          name="everyUnit"
          legend="Hours or days"
          choices={[
            ['hours', 'hours'],
            ['days', 'days'],
          ]}
        />
      </div>
      <Line form={form} name="startsOn" label="First day" kind="date" />
      <div class="two-lines">
        <Line form={form} name="count" label="Number of doses" kind="figure" hint="This, or the last day, or both." />
        <Line form={form} name="endsOn" label="Last day" kind="date" />
      </div>
      <Choose
        form={form}
        name="withholdFood"
        legend="Is food withheld while it lasts?"
        choices={[
          ['yes', 'yes, no food'],
          ['no', 'no, feed as planned'],
        ]}
      />
    </fieldset>
  );
}

function Paper({ form, pictures }: Pick<PrescriptionFormProps, 'form' | 'pictures'>) {
  return (
    <fieldset class="form-part">
      <legend>Vet and paper</legend>
      <Line form={form} name="prescriber" label="Name of the vet" />
      <div class="two-lines">
        <Line form={form} name="recheckOn" label="Recheck on (may stay empty)" kind="date" />
        <Line form={form} name="validUntil" label="Paper valid until (may stay empty)" kind="date" />
        <Line form={form} name="drugExpiresOn" label="Drug expires on (may stay empty)" kind="date" />
        <Line form={form} name="lot" label="Lot on the bottle (may stay empty)" most={60} />
      </div>
      <Line form={form} name="paper" label="Where the paper lies, or a note (may stay empty)" most={340} />
      <PhotoField pictures={pictures} />
    </fieldset>
  );
}

/** How a route is understood, since the cap for the stomach hangs on it. */
function sayRoute(route: string): string {
  if (route.trim() === '') return 'Such as by injection, or by stomach tube.';
  switch (wayOf(route)) {
    case 'stomach':
      return 'Into the stomach: at most 2 % of body mass at once.';
    case 'other':
      return 'Not into the stomach.';
    case 'unknown':
      return 'Not known here, so the cap for the stomach is used: at most 2 % of body mass at once.';
  }
}
