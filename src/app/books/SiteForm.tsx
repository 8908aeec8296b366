import { useState } from 'preact/hooks';
import { type Problem, UNNAMED_SITE } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Field } from './Field.tsx';
import { siteDraft } from './siteDraft.ts';

/** The site's own facts; saving writes one event with all of them. */
export function SiteForm() {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [saved, setSaved] = useState(false);
  const known = site.facility.value.site;
  const named = known.name !== UNNAMED_SITE.name;
  async function save(form: FormData): Promise<void> {
    setSaved(false);
    const draft = siteDraft(form, clock.today.value);
    const result = draft.ok ? await site.write([draft.value]) : draft;
    setFailed(result.ok ? null : result.problem);
    if (!result.ok) return;
    clock.setTimeZone(site.facility.value.site.timeZone);
    setSaved(true);
  }
  return (
    <form
      key={JSON.stringify(known)}
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        void save(new FormData(event.currentTarget));
      }}
    >
      <Field name="site-name" words="Site’s name" start={named ? known.name : ''} />
      <Field
        name="time-zone"
        words="Time zone"
        most={60}
        start={named ? known.timeZone : hereZone()}
        list="time-zones"
      />
      <datalist id="time-zones">
        {Intl.supportedValuesOf('timeZone').map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
      <Field
        name="host"
        words="Host in the codes"
        most={60}
        start={known.host ?? ''}
        hint="Where this app is served, such as cards.example: a phone’s own camera then opens the record. Empty: the code holds the id alone."
      />
      <Field
        name="currency"
        words="Currency of the shop"
        most={3}
        start={known.currency ?? ''}
        hint="Its three letters after ISO 4217, such as EUR. Empty: the site sells nothing."
      />
      <Field
        name="safety-line"
        words="Safety line on cards of venomous animals"
        most={120}
        start={known.safetyLine ?? ''}
      />
      <button type="submit" class="secondary">
        Save the site
      </button>
      <p role="status">{saved ? 'Saved.' : ''}</p>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </form>
  );
}

function hereZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}
