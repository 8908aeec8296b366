import { useState } from 'preact/hooks';
import type { Decision, Problem } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** A decision about the site itself: what is doubtful waits for an answer here, since no animal is there to ask about. */
export interface SiteDecision {
  readonly doubt: Problem | null;
  readonly failure: Problem | null;
  readonly isBusy: boolean;
  /** Writes it, asks about it, or says why not. */
  decide(decision: Decision): void;
  yes(): void;
  no(): void;
}

type Asked = Extract<Decision, { kind: 'asks' }>;

/** Writes decisions of which the strip says that they are of `name`, with one undo for all that one of them wrote. */
export function useSiteDecision(name: string): SiteDecision {
  const { site, signs, strip } = useApp();
  const [asked, ask] = useState<Asked | null>(null);
  const [failure, setFailure] = useState<Problem | null>(null);
  const [isBusy, setBusy] = useState(false);

  function fail(problem: Problem): void {
    signs.give('refused');
    setFailure(problem);
  }

  async function write({ drafts, said }: Exclude<Decision, { kind: 'refused' }>): Promise<void> {
    setBusy(true);
    const written = await site.write(drafts);
    setBusy(false);
    if (!written.ok) return fail(written.problem);
    signs.give('accepted');
    strip.add({ subject: null, name, said, result: 'accepted', problem: null, events: written.value });
  }

  return {
    doubt: asked?.problem ?? null,
    failure,
    isBusy,
    decide(decision) {
      setFailure(null);
      if (decision.kind === 'refused') return fail(decision.problem);
      if (decision.kind === 'accepted') return void write(decision);
      signs.give('asks');
      ask(decision);
    },
    yes() {
      if (asked !== null) void write(asked);
      ask(null);
    },
    no: () => ask(null),
  };
}
