import { type Id, mintId } from '../../src/core/index.ts';

/** The id of the n-th thing of a device of the invented site. */
export function anId(counter: number): Id {
  const minted = mintId(7, counter);
  if (!minted.ok) throw new RangeError(minted.problem.message);
  return minted.value;
}
