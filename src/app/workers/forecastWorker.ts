import { ok, orderList, preyForecast, problem, type Result } from '../../core/index.ts';
import type { ForecastAnswer, ForecastAsk, ForecastWord } from './forecastMessages.ts';

const WEEK_DAYS = 7;

self.onmessage = ({ data }: MessageEvent<ForecastAsk>) => say({ kind: 'answer', answer: answered(data) });

function answered(ask: ForecastAsk): Result<ForecastAnswer> {
  try {
    return answer(ask);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, problem: problem('worker-failed', { why }) };
  }
}

function answer({ facility, question, on }: ForecastAsk): Result<ForecastAnswer> {
  const order = orderList(facility, question, on, (done, of) => tell(done, 2 * of));
  if (!order.ok) return order;
  const weeks = Math.ceil(question.leadDays / WEEK_DAYS) + question.weeks;
  const forecast = preyForecast(facility, on, weeks, (done, of) => tell(of + done, 2 * of));
  return ok({ order: order.value, forecast });
}

function tell(done: number, of: number): void {
  say({ kind: 'progress', progress: { done, of } });
}

function say(word: ForecastWord): void {
  self.postMessage(word);
}
