import {
  addDays,
  type Day,
  daysBetween,
  dueList,
  eventIdFrom,
  type Facility,
  foldFacility,
  type Id,
  isToFeed,
  type LogEvent,
  mintId,
  parseDay,
} from '../../src/core/index.ts';

const ANIMALS = 10_000;
const EVENTS = 1_000_000;
const BLOCK = 10_000;
const ROUNDS = 3;
const RACK_SIZE = 60;
const FIRST = Date.UTC(2024, 0, 1, 18);
const DAY_MS = 86_400_000;

/** Ratios of the fold and of the due list against bare passes over the same data, measured in turns in one run. */
export async function benchFold(): Promise<string[]> {
  const blocks = writeLog();
  const events = blocks.flatMap((block) => linesOf(block).map((line) => JSON.parse(line) as LogEvent));
  const foldTimes = inTurns({
    parse: () => parseAll(blocks),
    insert: () => time(() => insertAll(events)),
    fold: () => time(() => foldFacility(events)),
  });
  const facility = foldFacility(events);
  // Nine days after the last week of the log: the larger animals are not due yet.
  const on = dayOf(FIRST + (Math.floor((EVENTS - FOUNDING) / ANIMALS) * 7 + 9) * DAY_MS);
  const dueTimes = inTurns({
    bare: () => time(() => barePass(facility, on)),
    list: () => time(() => dueList(facility, on)),
  });
  const toFeed = dueList(facility, on).filter(isToFeed).length;
  return [
    `fold of ${say(events.length)} events of ${say(facility.animals.size)} animals: ${ms(foldTimes.fold)}`,
    `against JSON.parse of the same lines (${ms(foldTimes.parse)}): ${ratio(foldTimes.fold, foldTimes.parse)}`,
    `against putting the same events into a Map (${ms(foldTimes.insert)}): ${ratio(foldTimes.fold, foldTimes.insert)}`,
    `due list of ${say(facility.animals.size)} animals (${say(toFeed)} to feed): ${ms(dueTimes.list)}`,
    `against sorting them and counting their days (${ms(dueTimes.bare)}): ${ratio(dueTimes.list, dueTimes.bare)}`,
  ];
}

/** Runs every pass once per round, one after the other, and gives the median time of each. */
function inTurns<K extends string>(passes: Readonly<Record<K, () => number>>): Record<K, number> {
  const names = Object.keys(passes) as K[];
  const times = new Map(names.map((name) => [name, [] as number[]]));
  for (let round = 0; round < ROUNDS; round++)
    for (const name of names) {
      globalThis.gc?.();
      times.get(name)?.push(passes[name]());
    }
  return Object.fromEntries(names.map((name) => [name, median(times.get(name) ?? [])])) as Record<K, number>;
}

function time(pass: () => unknown): number {
  const begin = performance.now();
  const kept = pass();
  const spent = performance.now() - begin;
  if (kept === undefined) throw new Error('the pass gave nothing');
  return spent;
}

/** Only the parsing is timed, not the cutting into lines. */
function parseAll(blocks: readonly Buffer[]): number {
  let spent = 0;
  for (const block of blocks) {
    const lines = linesOf(block);
    spent += time(() => lines.map((line) => JSON.parse(line) as unknown));
  }
  return spent;
}

function insertAll(events: readonly LogEvent[]): number {
  const map = new Map<string, LogEvent>();
  for (const event of events) map.set(event.id, event);
  return map.size;
}

/** The least that a due list can be: the animals sorted by place, and two dates and a distance for each. */
function barePass(facility: Facility, on: Day): number {
  const sorted = [...facility.animals.values()].sort((a, b) => ((a.place ?? '') < (b.place ?? '') ? -1 : 1));
  let sum = 0;
  for (const { lastTaken, addedOn } of sorted) {
    const from = addDays(lastTaken?.day ?? addedOn, 7);
    sum += daysBetween(from, on) + daysBetween(addDays(from, 7), on);
  }
  return sum;
}

function linesOf(block: Buffer): string[] {
  return block.toString('utf8').split('\n');
}

/** A log as NDJSON in blocks outside the heap: racks, tubs, animals, then rounds week by week. */
function writeLog(): Buffer[] {
  const blocks: Buffer[] = [];
  let lines: string[] = [];
  for (let n = 0; n < EVENTS; n++) {
    lines.push(JSON.stringify(eventAt(n)));
    if (lines.length < BLOCK && n < EVENTS - 1) continue;
    blocks.push(Buffer.from(lines.join('\n')));
    lines = [];
  }
  return blocks;
}

interface What {
  readonly kind: string;
  readonly subjects: readonly Id[];
  readonly payload: unknown;
}

const RACKS = Math.ceil(ANIMALS / RACK_SIZE);
const FOUNDING = RACKS + 3 * ANIMALS;
const IDS = Array.from({ length: RACKS + 2 * ANIMALS }, (_, n) => mint(n));
const rack = (n: number): Id => IDS[Math.floor(n / RACK_SIZE)] ?? mint(0);
const tub = (n: number): Id => IDS[RACKS + n] ?? mint(0);
const animal = (n: number): Id => IDS[RACKS + ANIMALS + n] ?? mint(0);

function eventAt(n: number): Record<string, unknown> {
  const ms = FIRST + Math.floor(Math.max(0, n - FOUNDING) / ANIMALS) * 7 * DAY_MS + (n % ANIMALS) * 100;
  const bytes = new Uint8Array(10);
  new DataView(bytes.buffer).setUint32(4, n);
  const { kind, subjects, payload } = n < FOUNDING ? founding(n) : happening(n);
  const at = new Date(ms).toISOString();
  const writer = { keeper: 'Ada', device: n % 15, seq: n, clock: [ms, n % 7] };
  return { v: 1, id: eventIdFrom(ms, bytes), kind, at, day: dayOf(ms), subjects, ...writer, payload };
}

function founding(n: number): What {
  if (n < RACKS) {
    const payload = { placeKind: 'rack', name: `Rack ${n + 1}`, walk: n };
    return { kind: 'place-added', subjects: [rack(n * RACK_SIZE)], payload };
  }
  const at = (n - RACKS) % ANIMALS;
  const step = Math.floor((n - RACKS) / ANIMALS);
  const place = { placeKind: 'tub', name: `${at}`, walk: at % RACK_SIZE, parent: rack(at) };
  if (step === 0) return { kind: 'place-added', subjects: [tub(at)], payload: place };
  const added = { species: 'Python regius', sex: at % 2 ? 'male' : 'female', acquiredOn: '2023-06-01' };
  if (step === 1) return { kind: 'animal-added', subjects: [animal(at)], payload: added };
  return { kind: 'animal-moved', subjects: [animal(at)], payload: { to: tub(at) } };
}

/** Week by week one event of each animal: mostly meals, every fourth a weighing, and what else a keeper sees. */
function happening(n: number): What {
  const at = (n - FOUNDING) % ANIMALS;
  const week = Math.floor((n - FOUNDING) / ANIMALS);
  const subjects = [animal(at)];
  const turn = (week + at) % 12;
  if (turn % 4 === 0) return { kind: 'animal-weighed', subjects, payload: { weightG: 300 + week * 8 + (at % 100) } };
  if (turn === 5) return { kind: 'opaque-seen', subjects, payload: {} };
  if (turn === 6) return { kind: 'shed-seen', subjects, payload: { whole: at % 9 !== 0 } };
  if (turn === 7) return { kind: 'place-cleaned', subjects: [tub(at), animal(at)], payload: { how: 'full' } };
  if (turn === 11 && at % 50 === 0) return { kind: 'regurgitation-seen', subjects, payload: {} };
  const outcome = (at * 7 + week) % 8 === 0 ? 'refused' : 'taken';
  return {
    kind: 'prey-offered',
    subjects,
    payload: { prey: 'rat-weaned', count: 1, totalG: 48, outcome, asPlanned: true },
  };
}

function mint(n: number): Id {
  const minted = mintId(7, n);
  if (!minted.ok) throw new Error(minted.problem.message);
  return minted.value;
}

function dayOf(ms: number): Day {
  const read = parseDay(new Date(ms).toISOString().slice(0, 10));
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}

function ms(time: number): string {
  return time < 100 ? `${time.toFixed(1)} ms` : `${Math.round(time)} ms`;
}

function ratio(time: number, limit: number): string {
  return `${(time / limit).toFixed(2)} times as long`;
}

function say(count: number): string {
  return count.toLocaleString('en');
}
