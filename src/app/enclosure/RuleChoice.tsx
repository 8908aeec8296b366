import { useId, useState } from 'preact/hooks';
import {
  ENCLOSURE_RULES,
  ENCLOSURE_TITLES,
  enclosureRuleOf,
  keptRules,
  type Payload,
  type Problem,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

/** Which rule set the site sees first, here and in the inspector’s pack; it is a choice of what to read, and no more. */
export function RuleChoice() {
  const { site, clock, signs } = useApp();
  const fieldId = useId();
  const [failed, setFailed] = useState<Problem | null>(null);
  const { rules } = site.facility.value.site;
  async function pick(value: string): Promise<void> {
    const { enclosureRule: _before, ...others } = keptRules(rules);
    const picked = enclosureRuleOf(value);
    const payload: Payload<'site-rules-set'> = picked === null ? others : { ...others, enclosureRule: picked };
    const written = await site.write([{ kind: 'site-rules-set', subjects: [], payload, day: clock.today.value }]);
    signs.give(written.ok ? 'accepted' : 'refused');
    setFailed(written.ok ? null : written.problem);
  }
  return (
    <div class="field">
      <label for={fieldId}>Shown first</label>
      <select
        id={fieldId}
        value={enclosureRuleOf(rules.enclosureRule) ?? ''}
        onChange={(event) => void pick(event.currentTarget.value)}
      >
        <option value="">All three side by side</option>
        {ENCLOSURE_RULES.map((rule) => (
          <option key={rule} value={rule}>
            {ENCLOSURE_TITLES[rule]}
          </option>
        ))}
      </select>
      <small>For the whole site, and for the inspector’s pack.</small>
      {failed !== null && <ProblemLine problem={failed} />}
    </div>
  );
}
