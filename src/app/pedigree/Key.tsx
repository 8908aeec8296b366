import { SexShape } from './SexShape.tsx';

/** What the shapes mean. */
export function Key() {
  return (
    <p class="tree-key soft">
      <span>
        <SexShape sex="male" /> male
      </span>
      <span>
        <SexShape sex="female" /> female
      </span>
      <span>
        <SexShape sex="unsexed" /> unsexed
      </span>
      <span>
        <svg class="sex-mark" viewBox="-13 -13 26 26" width="22" height="22" aria-hidden="true">
          <path class="sex-dead" d="M-11 11L11 -11" />
        </svg>
        died
      </span>
      <span>
        <svg class="sex-mark" viewBox="-13 -13 26 26" width="22" height="22" aria-hidden="true">
          <path class="tree-line" d="M-2 -11V11M2 -11V11" />
        </svg>
        parents related
      </span>
    </p>
  );
}
