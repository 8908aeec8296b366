import { useState } from 'preact/hooks';
import { keptRules, type OrderQuestion, type Problem } from '../../core/index.ts';
import { Field } from '../books/Field.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { orderRulesIn } from './orderDraft.ts';

/** For how long, how soon, and what the freezer holds. The figures are the site's own and stay. */
export function OrderForm({ question }: { readonly question: OrderQuestion }) {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  async function save(form: FormData): Promise<void> {
    const read = orderRulesIn(form);
    if (!read.ok) return setFailed(read.problem);
    const payload = keptRules({ ...site.facility.value.site.rules, ...read.value });
    const written = await site.write([{ kind: 'site-rules-set', subjects: [], payload, day: clock.today.value }]);
    setFailed(written.ok ? null : written.problem);
  }
  const { weeks, leadDays, spaceItems, reserveShare } = question;
  return (
    <form
      key={JSON.stringify(question)}
      class="form order-form"
      onSubmit={(event) => {
        event.preventDefault();
        void save(new FormData(event.currentTarget));
      }}
    >
      <Field name="weeks" words="It is to last so many weeks" type="number" start={String(weeks)} />
      <Field name="lead" words="It comes after so many days" type="number" start={String(leadDays)} />
      <Field
        name="space"
        words="Items that the freezer holds in all"
        type="number"
        start={spaceItems === undefined ? '' : String(spaceItems)}
        hint="Left empty, nothing is cut."
      />
      <Field
        name="reserve"
        words="Reserve, in %"
        start={String(Number((100 * reserveShare).toFixed(6)))}
        hint="On top of what is enough in 90 of 100 cases."
      />
      <button type="submit" class="secondary">
        Keep these figures
      </button>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </form>
  );
}
