import * as z from 'zod/mini';
import { readPayload } from '../../../scanner/index.ts';
import { type Id, mintId, mintUnenrolledId, ok, type Problem, type Result, refuse, sayId } from '../../core/index.ts';
import { word } from './fields.ts';
import { type Kind, readCase } from './kind.ts';

const HELP = `id: reads an id as typed or scanned, or mints one
  {"text": "7rmb-n615" | "HTTPS://HOST/7RMBN615", "host"?: the site's own}
    -> {"id","display","ok":true,"corrected"?:true}  or the error check-failed, not-an-id, foreign-host
  {"mint": {"device", "counter", "enrolled"?: false for a device that no hub has enrolled}} -> {"id"}`;

const whole = z.int('a whole number is wanted');
const mintCase = z.object({
  mint: z.object(
    {
      device: whole,
      counter: whole.check(z.gte(0, 'a whole number from 0 is wanted')),
      enrolled: z.optional(z.boolean('true or false is wanted')),
    },
    '{"device", "counter"} is wanted',
  ),
});
const textCase = z.object({ text: z.string('a text is wanted'), host: z.nullish(word) });

/** Ids from outside. */
export const idKind: Kind = {
  name: 'id',
  help: HELP,
  answer: (given) => (typeof given === 'object' && given !== null && 'mint' in given ? minted(given) : read(given)),
};

function minted(given: unknown): Result<{ readonly id: Id }> {
  const asked = readCase(mintCase, given);
  if (!asked.ok) return asked;
  const { device, counter, enrolled } = asked.value.mint;
  const id = enrolled === false ? mintUnenrolledId(device, counter) : mintId(device, counter);
  return id.ok ? ok({ id: id.value }) : at('mint', id.problem);
}

interface Found {
  readonly id: Id;
  readonly display: string;
  readonly ok: true;
  readonly corrected?: true;
}

function read(given: unknown): Result<Found> {
  const asked = readCase(textCase, given);
  if (!asked.ok) return asked;
  const { text, host } = asked.value;
  // A camera never follows a code, so an http address of the site's own is read like its https one.
  const found = readPayload(text.replace(/^(\s*)http:\/\//i, '$1HTTPS://'), { host: host ?? undefined });
  if (found.ok && found.value.kind === 'id') {
    const { id, corrected } = found.value;
    return ok({ id, display: sayId(id), ok: true, ...(corrected && { corrected: true }) });
  }
  if (!found.ok && found.problem.code === 'check-failed') return at('text', found.problem);
  const other = hostOf(text, host ?? '');
  return other === null
    ? refuse('not-an-id', { text: clip(text) }, 'text')
    : refuse('foreign-host', { host: clip(other) }, 'text');
}

function at(path: string, said: Problem): Result<never> {
  return { ok: false, problem: { ...said, path } };
}

/** Whom an address belongs to; null for the site's own, and for a text that is no address. */
function hostOf(text: string, own: string): string | null {
  const address = /^\s*[a-z][a-z0-9+.-]*:\/\/([^/?#\\]*)/i.exec(text);
  const host = (address?.[1] ?? '').toLowerCase();
  return address === null || host === own.trim().toLowerCase() ? null : host;
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
