import { useEffect, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Id, Problem, Result } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { AnimalWanted } from '../model/desk.ts';
import { type Choice, pairingAddress, type Role } from './choice.ts';
import { emptyHalf, take } from './taking.ts';

/** A refusal of an animal, and the half where it happened; null where no half was meant. */
export interface Refusal {
  readonly role: Role | null;
  readonly problem: Problem;
}

export interface Wanting {
  readonly refusal: Refusal | null;
  /** Takes an animal that was found or answered about. */
  choose(id: Id, role: Role): void;
  /** Says which half the next typed scan is for; null lets its sex decide. */
  waitFor(role: Role | null): void;
  /** Goes to the Scan screen, whose camera then reads for this page. */
  walk(role: Role | null): void;
}

/** While the page is open, the next scanned animal belongs to it; so it does while the keeper scans it by camera. */
export function useWanted(choice: Choice): Wanting {
  const { site, desk } = useApp();
  const { route } = useLocation();
  const [wantedRole, waitFor] = useState<Role | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const walking = useRef(false);
  const address = pairingAddress(choice);

  function given(id: Id, role: Role | null): Result<string> {
    const taken = take(site.facility.value, choice, id, role);
    // While the camera reads on another screen this page is gone, and the strip there says why.
    if (!walking.current) {
      setRefusal(
        taken.ok ? null : { role: halfOf(taken.problem) ?? role ?? emptyHalf(choice), problem: taken.problem },
      );
      if (taken.ok) waitFor(null);
    }
    if (!taken.ok) return taken;
    return { ok: true, value: pairingAddress(taken.value) };
  }
  const wanting = (role: Role | null): AnimalWanted => ({
    says: sayWanted(choice, role),
    take: (id) => given(id, role),
  });

  useEffect(() => {
    desk.want(wanting(wantedRole));
  }, [address, wantedRole, desk.wanted.value === null]);
  useEffect(
    () => () => {
      if (!walking.current) desk.want(null);
    },
    [],
  );
  useEffect(() => setRefusal(null), [address]);

  return {
    refusal,
    choose(id, role) {
      const taken = given(id, role);
      if (taken.ok) route(taken.value);
    },
    waitFor,
    walk(role) {
      walking.current = true;
      desk.want(wanting(role));
      route('/');
    },
  };
}

function halfOf({ path }: Problem): Role | null {
  return path === 'sire' || path === 'dam' ? path : null;
}

function sayWanted(choice: Choice, role: Role | null): string {
  const half = role ?? emptyHalf(choice);
  return half === null ? 'Scan one of the pair' : `Scan the ${half}`;
}
