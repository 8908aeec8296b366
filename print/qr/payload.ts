import type { Id } from '../../src/core/index.ts';

/** With `HTTPS://`, a slash and eight characters of id, 21 of host still fit version 2-M (38 alphanumeric characters). */
const LONGEST_HOST = 21;
const HOST = /^[0-9A-Z]([0-9A-Z.-]*[0-9A-Z])?(:[0-9]{1,5})?$/;

/**
 * What the code on a card holds: `HTTPS://HOST/ID` in capitals when the site has a host of at most 21 characters from
 * the alphanumeric set, so that a plain phone camera opens the record; otherwise the id alone.
 */
export function qrPayload(id: Id, host?: string): string {
  const name = host?.toUpperCase() ?? '';
  return name.length <= LONGEST_HOST && HOST.test(name) ? `HTTPS://${name}/${id}` : id;
}
