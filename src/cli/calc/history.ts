import {
  type Day,
  type EventId,
  eventIdFrom,
  type Id,
  isEventId,
  isId,
  type LogEvent,
  mintUnenrolledId,
  ok,
  type Problem,
  parseEvent,
  type Result,
  refuse,
} from '../../core/index.ts';
import { dayAt } from './fields.ts';
import { wrongCase } from './kind.ts';

/** The events of one animal as the log would hold them, up to a day. */
export interface History {
  readonly animal: Id;
  readonly events: readonly LogEvent[];
}

type Written = Readonly<Record<string, unknown>>;

/** The envelope of an event; what stands beside it is the payload where none is written. */
const ENVELOPE = new Set(['v', 'id', 'kind', 'at', 'day', 'subjects', 'keeper', 'device', 'seq', 'clock', 'payload']);
/** Fields of payloads that name another animal, place or clutch. */
const NAMING = ['to', 'parent', 'sire', 'dam', 'clutch'] as const;
const NOON = 'T12:00:00.000Z';

/**
 * Fills in what events written by hand leave out, and leaves off what lies after the day. Ids of any form are taken:
 * the same text is the same id. Errors: `case-malformed`, `date-malformed`, at the event's path.
 */
export function historyOf(written: readonly Written[], species: string, on: Day): Result<History> {
  const names = new Names();
  const animal = subjectOf(written, names);
  const events: LogEvent[] = [];
  for (const [at, one] of written.entries()) {
    const read = readWritten(one, at, { names, animal, species });
    if (!read.ok) return read;
    if (read.value.day <= on) events.push(read.value);
  }
  const isAdded = events.some((event) => event.kind === 'animal-added' && event.subjects[0] === animal);
  if (isAdded) return ok({ animal, events });
  const [first] = [on, ...events.map((event) => event.day)].sort();
  const added = readWritten({ kind: 'animal-added', day: first }, written.length, { names, animal, species });
  return added.ok ? ok({ animal, events: [added.value, ...events] }) : added;
}

/** Ids for whatever a case calls its events and animals. */
class Names {
  readonly #ids = new Map<string, Id>();
  readonly #events = new Map<string, EventId>();

  id(text: string): Id {
    if (isId(text)) return text;
    const known = this.#ids.get(text);
    if (known !== undefined) return known;
    const minted = mintUnenrolledId(0, this.#ids.size);
    if (!minted.ok) throw new RangeError(minted.problem.message);
    this.#ids.set(text, minted.value);
    return minted.value;
  }

  event(text: string): EventId {
    if (isEventId(text)) return text;
    const number = this.#events.size;
    const known =
      this.#events.get(text) ?? eventIdFrom(number, new Uint8Array([0, 0, 0, 0, 0, 0, 0, 0, number >> 8, number]));
    this.#events.set(text, known);
    return known;
  }
}

/** Whom a case is about: the animal that it adds, else the first that it names. */
function subjectOf(written: readonly Written[], names: Names): Id {
  const firsts = written
    .map((one) => ({ kind: one['kind'], first: subjectsOf(one)?.[0] }))
    .filter(({ first }) => first !== undefined);
  const found =
    firsts.find(({ kind }) => kind === 'animal-added') ??
    firsts.find(({ kind }) => String(kind).startsWith('animal-')) ??
    firsts[0];
  return names.id(found?.first ?? '');
}

interface About {
  readonly names: Names;
  readonly animal: Id;
  readonly species: string;
}

function readWritten(one: Written, at: number, about: About): Result<LogEvent> {
  const path = `events.${at}`;
  const time = timeOf(one, path);
  if (!time.ok) return time;
  const { names, animal } = about;
  const event = parseEvent({
    v: one['v'] ?? 1,
    id: names.event(typeof one['id'] === 'string' ? one['id'] : `#${at}`),
    kind: one['kind'],
    ...time.value,
    subjects: subjectsOf(one)?.map((text) => names.id(text)) ?? [animal],
    keeper: one['keeper'] ?? '',
    device: one['device'] ?? 0,
    seq: one['seq'] ?? at,
    clock: one['clock'] ?? [Date.parse(time.value.at), at],
    payload: payloadOf(one, about),
  });
  return event.ok ? event : wrongEvent(one, path, event.problem);
}

/** What the log says of an event, at the place where the case wrote it. */
function wrongEvent(one: Written, path: string, said: Problem): Result<never> {
  const inner = isRecord(one['payload']) ? said.path : said.path?.replace(/^payload\./, '');
  const why = said.message.replace(/^.*?cannot be read: (?:[\w.]+: )?/, '').replace(/\.$/, '');
  return wrongCase(why, [path, inner].filter((part) => part).join('.'));
}

/** An instant with its day; a bare day is noon, and on one day the order of the list is the order of the day. */
function timeOf(one: Written, path: string): Result<{ readonly at: string; readonly day: Day }> {
  const [at, day] = [one['at'], one['day']];
  if (typeof day !== 'string' && typeof at !== 'string')
    return wrongCase('a day is wanted, such as 2026-03-09', `${path}.day`);
  const text = typeof day === 'string' ? day : String(at).slice(0, 10);
  const read = dayAt(text, typeof day === 'string' ? `${path}.day` : `${path}.at`);
  if (!read.ok) return read;
  if (typeof at !== 'string' || at.length === 10) return ok({ at: `${read.value}${NOON}`, day: read.value });
  const ms = Date.parse(at);
  if (!/^\d{4}-\d\d-\d\dT/.test(at) || Number.isNaN(ms))
    return refuse('date-malformed', { text: at.slice(0, 40) }, `${path}.at`);
  return ok({ at: new Date(ms).toISOString(), day: read.value });
}

function subjectsOf(one: Written): readonly string[] | undefined {
  const subjects = one['subjects'];
  if (!Array.isArray(subjects)) return undefined;
  const texts = subjects.filter((subject): subject is string => typeof subject === 'string');
  return texts.length === 0 ? undefined : texts;
}

function payloadOf(one: Written, { names, species }: About): Written {
  const flat = Object.fromEntries(Object.entries(one).filter(([key]) => !ENVELOPE.has(key)));
  // A slip's own payload may stand beside it too: then `payload` is what it amends to.
  const isFlatSlip = one['kind'] === 'slip-made' && 'corrects' in one;
  const nested = isRecord(one['payload']) ? one['payload'] : null;
  const payload: Record<string, unknown> = isFlatSlip
    ? { ...flat, ...(nested && { payload: nested }) }
    : { ...(nested ?? flat) };
  for (const name of NAMING) if (typeof payload[name] === 'string') payload[name] = names.id(payload[name]);
  if (typeof payload['corrects'] === 'string') payload['corrects'] = names.event(payload['corrects']);
  return { ...defaultsOf(String(one['kind']), names, species), ...payload };
}

/** What the log must hold and a case about feeding may leave out. */
function defaultsOf(kind: string, names: Names, species: string): Written {
  if (kind === 'animal-added') return { species, sex: 'unsexed' };
  if (kind === 'clutch-laid') return { clutch: names.id('clutch'), eggs: 0 };
  return kind === 'prey-offered' ? { count: 1 } : {};
}

function isRecord(value: unknown): value is Written {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
