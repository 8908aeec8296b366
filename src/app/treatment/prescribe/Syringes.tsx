import { useId } from 'preact/hooks';
import { SYRINGES_ML, saySyringes } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { NO_SYRINGE, tickedSyringes } from './draft.ts';
import { type FormState, faultAt } from './fields.tsx';

interface SyringesProps {
  readonly form: FormState;
  /** Those of the site’s rules; null where it has none. */
  readonly siteMl: readonly number[] | null;
}

/** Which syringes are at hand: those of the site’s rules until somebody ticks others. The volume is rounded to their marks. */
export function Syringes({ form, siteMl }: SyringesProps) {
  const whyId = useId();
  const { draft } = form;
  const ticked = tickedSyringes(draft.value, siteMl) ?? SYRINGES_ML;
  const fault = faultAt(form, 'syringes');
  const sizes = [...new Set([...SYRINGES_ML, ...ticked])].sort((a, b) => a - b);
  function tick(size: number, isOn: boolean): void {
    const next = sizes.filter((one) => (one === size ? isOn : ticked.includes(one)));
    draft.value = { ...draft.value, syringes: next.length === 0 ? NO_SYRINGE : next.join(',') };
  }
  return (
    <fieldset class="form-part syringes" aria-describedby={whyId}>
      <legend>Syringes at hand</legend>
      <p class="hint">
        {siteMl === null ? 'The usual sizes' : 'As the site’s rules say'}: {saySyringes(siteMl ?? SYRINGES_ML)}. Take
        off what you do not have; the volume is rounded to the mark of the smallest that holds it.
      </p>
      <div class="syringe-sizes">
        {sizes.map((size) => (
          <label key={size}>
            <input
              type="checkbox"
              data-field="syringes"
              checked={ticked.includes(size)}
              onChange={(event) => tick(size, event.currentTarget.checked)}
            />
            <span>{size} mL</span>
          </label>
        ))}
      </div>
      <div id={whyId}>{fault !== null && <ProblemLine problem={fault} />}</div>
    </fieldset>
  );
}
