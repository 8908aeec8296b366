import { useState } from 'preact/hooks';
import {
  keptRules,
  ok,
  type Payload,
  PEOPLE_CAUTION,
  PEOPLE_RULE,
  type Problem,
  peopleNeeded,
  type Result,
  refuse,
  type SiteRules,
  SYRINGES_ML,
  syringesFault,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { written } from './Field.tsx';

/** The site’s own rules; saving writes one event with all of them. */
export function RulesForm() {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [saved, setSaved] = useState(false);
  const { rules } = site.facility.value.site;
  const [fromM, setFromM] = useState(rules.twoPeopleFromM === null ? '' : String(rules.twoPeopleFromM));
  async function save(form: FormData): Promise<void> {
    setSaved(false);
    const payload = rulesIn(form, rules);
    const result = payload.ok
      ? await site.write([{ kind: 'site-rules-set', subjects: [], payload: payload.value, day: clock.today.value }])
      : payload;
    setFailed(result.ok ? null : result.problem);
    setSaved(result.ok);
  }
  return (
    <form
      key={JSON.stringify(rules)}
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        void save(new FormData(event.currentTarget));
      }}
    >
      <label class="check-line">
        <input type="checkbox" name="second-at-doses" defaultChecked={rules.secondAtDoses} />
        <span>A second person checks each dose and writes their name</span>
      </label>
      <div class="field">
        <label for="people-from">Large constrictors: two people from this length, in m</label>
        <input
          id="people-from"
          name="people-from"
          inputMode="decimal"
          autocomplete="off"
          maxLength={6}
          defaultValue={fromM}
          aria-describedby="people-says"
          onInput={(event) => setFromM(event.currentTarget.value)}
        />
        <small id="people-says" role="status">
          {sayPeople(fromM)} {PEOPLE_CAUTION}
        </small>
      </div>
      <fieldset class="syringe-rule">
        <legend>Syringes at hand, in mL</legend>
        <div class="syringe-rule-choices">
          {SYRINGES_ML.map((size) => (
            <label key={size} class="check-line">
              <input
                type="checkbox"
                name="syringe"
                value={size}
                defaultChecked={(rules.syringesMl ?? SYRINGES_ML).includes(size)}
              />
              <span>{size}</span>
            </label>
          ))}
        </div>
        <small>
          Each new prescription begins with these; a volume is rounded to the mark of the smallest that holds it.
        </small>
      </fieldset>
      <button type="submit" class="secondary">
        Save the rules
      </button>
      <p role="status">{saved ? 'Saved.' : ''}</p>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </form>
  );
}

/** Reads the form; what it does not ask for stays as it is. Errors: `not-a-number`, those of a length. */
function rulesIn(form: FormData, known: SiteRules): Result<Payload<'site-rules-set'>> {
  const from = metresIn(written(form, 'people-from'));
  if (!from.ok) return from;
  const syringes = syringesIn(form);
  if (!syringes.ok) return syringes;
  const { twoPeopleFromM: _length, syringesMl: _sizes, ...kept } = keptRules(known);
  return ok({
    ...kept,
    secondAtDoses: form.has('second-at-doses'),
    ...(from.value === null ? {} : { twoPeopleFromM: from.value }),
    ...(syringes.value === null ? {} : { syringesMl: syringes.value }),
  });
}

/** The syringes that are ticked; null for all the usual ones. Error: `syringe-missing`. */
function syringesIn(form: FormData): Result<number[] | null> {
  const sizes = form.getAll('syringe').map(Number);
  const fault = syringesFault(sizes);
  if (fault !== null) return { ok: false, problem: fault };
  return ok(sizes.length === SYRINGES_ML.length ? null : sizes);
}

function metresIn(text: string): Result<number | null> {
  if (text === '') return ok(null);
  if (!/^\d{1,2}([.,]\d{1,2})?$/.test(text)) return refuse('not-a-number', { text, example: `${PEOPLE_RULE.fromM}` });
  const metres = Number(text.replace(',', '.'));
  const sound = peopleNeeded(metres, { ...PEOPLE_RULE, fromM: metres });
  return sound.ok ? ok(metres) : sound;
}

/** What a rule comes to, said while it is typed. */
function sayPeople(typed: string): string {
  const from = metresIn(typed.trim());
  if (!from.ok) return `${from.problem.message} ${from.problem.remedy}`;
  const rule = from.value === null ? PEOPLE_RULE : { ...PEOPLE_RULE, fromM: from.value };
  const own = from.value === null ? 'Without a rule of your own: ' : '';
  const at = (steps: number): string => `${Number((rule.fromM + steps * rule.stepM).toFixed(2))} m`;
  return `${own}two people from ${at(0)}, three from ${at(1)}, four from ${at(2)}.`;
}
