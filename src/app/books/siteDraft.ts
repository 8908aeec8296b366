import { type Day, type EventDraft, isCurrency, ok, type Result, refuse } from '../../core/index.ts';
import { written } from './Field.tsx';

const HOST = /^[a-z0-9]([a-z0-9.-]*[a-z0-9])?(:\d{1,5})?$/i;

/** Reads the site's form. Errors: `text-missing`, `time-zone-unknown`, `host-malformed`, `currency-unknown`. */
export function siteDraft(form: FormData, day: Day): Result<EventDraft> {
  const [name, timeZone] = [written(form, 'site-name'), written(form, 'time-zone')];
  const [host, safetyLine] = [written(form, 'host'), written(form, 'safety-line')];
  if (name === '') return refuse('text-missing', { what: 'site’s name' });
  if (!isTimeZone(timeZone)) return refuse('time-zone-unknown', { text: timeZone });
  if (host !== '' && !HOST.test(host)) return refuse('host-malformed', { text: host });
  const currency = written(form, 'currency').toUpperCase();
  if (currency !== '' && !isCurrency(currency)) return refuse('currency-unknown', { text: currency });
  const payload = {
    name,
    timeZone,
    ...(host === '' ? {} : { host }),
    ...(currency === '' ? {} : { currency }),
    ...(safetyLine === '' ? {} : { safetyLine }),
  };
  return ok({ kind: 'site-named', subjects: [], payload, day });
}

function isTimeZone(text: string): boolean {
  if (text === '') return false;
  try {
    return new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
