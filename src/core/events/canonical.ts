/** JSON with the keys of every object in order: the same data gives the same text, whoever wrote it. */
export function canonicalJson(data: unknown): string {
  // Written out by hand: a replacer that copies every object is several times slower, and a hub does this for each event.
  if (Array.isArray(data)) return `[${data.map((item) => canonicalJson(item ?? null)).join(',')}]`;
  if (!isPlain(data)) return JSON.stringify(data) ?? 'null';
  const parts = Object.keys(data)
    .filter((key) => data[key] !== undefined)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonicalJson(data[key])}`);
  return `{${parts.join(',')}}`;
}

/** A 53-bit fingerprint as 11 characters of text (two rounds of the FNV-1a hash with different seeds; not for secrets). */
export function fingerprint(text: string): string {
  const high = fnv1a(text, 0x811c9dc5) & 0x1fffff;
  return (high * 2 ** 32 + fnv1a(text, 0x5bd1e995)).toString(36).padStart(11, '0');
}

function fnv1a(text: string, seed: number): number {
  let hash = seed >>> 0;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  return hash >>> 0;
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
