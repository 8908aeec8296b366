import { counted } from './sayClutch.ts';

interface RestChoiceProps {
  readonly rest: number;
  readonly isLast: boolean;
  set(isLast: boolean): void;
}

/** What is thought of the eggs that have not hatched yet: they are waited for, or nobody expects more. */
export function RestChoice({ rest, isLast, set }: RestChoiceProps) {
  return (
    <fieldset class="rest-choice">
      <legend>{rest === 1 ? 'And the other egg?' : `And the other ${counted(rest, 'egg')}?`}</legend>
      <label>
        <input type="radio" name="rest" checked={!isLast} onChange={() => set(false)} />
        <span>
          May still hatch
          <small>what comes later is written then, and added</small>
        </span>
      </label>
      <label>
        <input type="radio" name="rest" checked={isLast} onChange={() => set(true)} />
        <span>
          No more will come
          <small>the clutch is over</small>
        </span>
      </label>
    </fieldset>
  );
}
