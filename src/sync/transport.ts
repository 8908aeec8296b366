import { ok, type Problem, problem, type Result, refuse } from '../core/index.ts';
import {
  type Enrol,
  type Enrolled,
  type Pulled,
  type Push,
  type Pushed,
  readEnrolled,
  readPulled,
  readPushed,
} from './wire.ts';

/** What a device's call to the hub came to. */
export type Called<T> =
  | { readonly how: 'answered'; readonly value: T }
  | { readonly how: 'other-epoch'; readonly epoch: string }
  | { readonly how: 'too-large' }
  | { readonly how: 'failed'; readonly problem: Problem };

/** The hub as a device sees it. */
export interface Hub {
  enrol(message: Enrol): Promise<Called<Enrolled>>;
  push(message: Push): Promise<Called<Pushed>>;
  pull(after: number, limit: number): Promise<Called<Pulled>>;
}

/** The one call of the web that is needed; the browser's own `fetch` fits. */
export type Fetch = (url: string, init: RequestInit) => Promise<Response>;

/** No answer within this time counts as none. */
const PATIENCE_MS = 30_000;

/** The hub at an address, `''` for the one that served the app. Errors: `hub-unreachable`, `hub-refused`, `message-malformed`. */
export function hubOver(fetch: Fetch, address = ''): Hub {
  const post = (path: string, message: unknown) =>
    send(fetch, `${address}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(message),
    });
  return {
    enrol: async (message) => called(await post('/enrol', message), readEnrolled),
    push: async (message) => called(await post('/push', message), readPushed),
    pull: async (after, limit) =>
      called(await send(fetch, `${address}/pull?after=${after}&limit=${limit}`, {}), readPulled),
  };
}

interface Answer {
  readonly status: number;
  readonly body: unknown;
}

async function send(fetch: Fetch, url: string, init: RequestInit): Promise<Result<Answer>> {
  try {
    const response = await fetch(url, { ...init, cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS) });
    return ok({ status: response.status, body: await response.json() });
  } catch (error) {
    return refuse('hub-unreachable', { why: error instanceof Error ? error.message : String(error) });
  }
}

function called<T>(answer: Result<Answer>, read: (data: unknown) => Result<T>): Called<T> {
  if (!answer.ok) return { how: 'failed', problem: answer.problem };
  const { status, body } = answer.value;
  if (status === 413) return { how: 'too-large' };
  if (status === 409) return { how: 'other-epoch', epoch: textOf(body, 'epoch') };
  if (status !== 200) return { how: 'failed', problem: problem('hub-refused', { why: `status ${status}` }) };
  const message = read(body);
  return message.ok ? { how: 'answered', value: message.value } : { how: 'failed', problem: message.problem };
}

function textOf(body: unknown, key: string): string {
  const value: unknown = typeof body === 'object' && body !== null ? Reflect.get(body, key) : undefined;
  return typeof value === 'string' ? value : '';
}
