import type { IncomingMessage } from 'node:http';
import { isIP } from 'node:net';

/**
 * True for a request that another site's page may have caused: a foreign origin, or a host name that is not ours (a
 * foreign name that was pointed at our address would read the log as if it were its own).
 */
export function isForeign({ headers }: IncomingMessage, ownHost: string): boolean {
  const host = headers.host ?? '';
  if (!isOwnName(nameOf(host), ownHost)) return true;
  const { origin } = headers;
  if (origin !== undefined && hostOf(origin) !== host.toLowerCase()) return true;
  const site = headers['sec-fetch-site'];
  return site === 'cross-site' || site === 'same-site';
}

function isOwnName(name: string, ownHost: string): boolean {
  const bare = name.replace(/^\[|\]$/g, '');
  return isIP(bare) !== 0 || bare === 'localhost' || bare.endsWith('.local') || bare === ownHost.toLowerCase();
}

function nameOf(host: string): string {
  return host.toLowerCase().replace(/:\d+$/, '');
}

function hostOf(origin: string): string | null {
  return URL.canParse(origin) ? new URL(origin).host : null;
}
