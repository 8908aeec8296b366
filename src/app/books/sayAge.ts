const MINUTE_MS = 60_000;
const STEPS = [
  { word: 'day', ms: 1440 * MINUTE_MS },
  { word: 'hour', ms: 60 * MINUTE_MS },
  { word: 'minute', ms: MINUTE_MS },
] as const;

/** `3 days`, `1 hour`, `less than a minute`: how long ago something was. */
export function sayAge(ms: number): string {
  const step = STEPS.find((one) => ms >= one.ms);
  if (step === undefined) return 'less than a minute';
  const count = Math.floor(ms / step.ms);
  return `${count} ${step.word}${count === 1 ? '' : 's'}`;
}

const UNITS = ['bytes', 'kB', 'MB', 'GB'] as const;

/** `12 MB`: a size on the disk. */
export function sayBytes(bytes: number): string {
  const at = Math.min(UNITS.length - 1, Math.floor(Math.log10(Math.max(1, bytes)) / 3));
  const value = bytes / 1000 ** at;
  return `${value < 10 && at > 0 ? value.toFixed(1) : Math.round(value)} ${UNITS[at]}`;
}
