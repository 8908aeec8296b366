import type { EnclosureRule, EnclosureVerdict } from '../../core/index.ts';
import { Verdict } from './Verdict.tsx';

interface VerdictsProps {
  readonly verdicts: readonly EnclosureVerdict[];
  /** The rule set that the site picked; it alone stands open. Null: all do. */
  readonly picked: EnclosureRule | null;
}

/** What every rule set says; the one that the site picked first, the others behind a touch. */
export function Verdicts({ verdicts, picked }: VerdictsProps) {
  const open = verdicts.filter(({ rule }) => picked === null || rule === picked);
  const others = verdicts.filter((one) => !open.includes(one));
  return (
    <div class="verdicts">
      {open.map((verdict) => (
        <Verdict key={verdict.rule} verdict={verdict} />
      ))}
      {others.length > 0 && (
        <details>
          <summary>The other rule sets</summary>
          {others.map((verdict) => (
            <Verdict key={verdict.rule} verdict={verdict} />
          ))}
        </details>
      )}
    </div>
  );
}
