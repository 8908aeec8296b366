/** So that an id with its size behind it stays within what the log takes (40 characters). */
const LONGEST_NAME = 18;

/**
 * An id of the site's own that nobody has yet: the name in plain letters, then a size, as `own-freezer-67x25`. The size
 * is in it so that two devices that know nothing of each other name two different sheets differently.
 */
export function ownId(name: string, size: string, taken: readonly string[]): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_NAME)
    .replace(/^-+|-+$/g, '');
  const id = ['own', ...(plain === '' ? [] : [plain]), size].join('-');
  if (!taken.includes(id)) return id;
  let next = 2;
  while (taken.includes(`${id}-${next}`)) next++;
  return `${id}-${next}`;
}
