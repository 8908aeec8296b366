import { problem } from '../../core/index.ts';
import { solvePlan } from '../../solver/index.ts';
import type { PlanAsk, PlanWord } from './planMessages.ts';

self.onmessage = ({ data: { plan, wasmUrl } }: MessageEvent<PlanAsk>) => {
  const onProgress = (progress: Extract<PlanWord, { kind: 'progress' }>['progress']): void =>
    say({ kind: 'progress', progress });
  void solvePlan(plan, { locate: () => wasmUrl, onProgress }).then(
    (answer) => say({ kind: 'answer', answer }),
    (error) => say({ kind: 'answer', answer: { ok: false, problem: problem('plan-solver', { why: String(error) }) } }),
  );
};

function say(word: PlanWord): void {
  self.postMessage(word);
}
