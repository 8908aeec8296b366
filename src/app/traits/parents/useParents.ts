import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type AnimalRecord, type Id, ok, type Parents, type Problem, sayAnimal } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import type { AnimalWanted } from '../../model/desk.ts';
import { parentsIn, parentsPage, type Role, roleFor, withParent } from './choice.ts';

/** The parents being chosen, and the ways to choose them. */
export interface Choosing {
  readonly parents: Parents;
  /** Why the last choice was refused, at the parent that it was for. */
  readonly refused: { readonly role: Role; readonly problem: Problem } | null;
  choose(role: Role, id: Id | null): void;
  /** Goes to the camera; the next scanned animal comes back as this parent. */
  scan(role: Role): void;
}

/** Keeps the choice in the address, and waits for a scanned parent as long as the page is open. */
export function useParents(animal: AnimalRecord): Choosing {
  const { site, desk } = useApp();
  const { query, route } = useLocation();
  const parents = parentsIn(query, animal);
  const refused = useSignal<Choosing['refused']>(null);
  const walks = useRef(false);

  const waiting = (says: string, roleOf: (id: Id) => Role): AnimalWanted => ({
    says,
    take(id) {
      const role = roleOf(id);
      const chosen = withParent(site.facility.value, animal, parents, role, id);
      refused.value = chosen.ok ? null : { role, problem: chosen.problem };
      return chosen.ok ? ok(parentsPage(animal, chosen.value)) : chosen;
    },
  });
  const either = (): AnimalWanted =>
    waiting(`Scan a parent of ${sayAnimal(animal)}`, (id) => roleFor(site.facility.value, parents, id));

  const page = parentsPage(animal, parents);
  const isWaiting = desk.wanted.value !== null;
  // A card given to the page ends the want, and one that is waited for must choose beside the newest parents.
  useEffect(() => desk.want(either()), [page, isWaiting]);
  useEffect(
    () => () => {
      if (!walks.current) desk.want(null);
    },
    [],
  );
  return {
    parents,
    refused: refused.value,
    choose(role, id) {
      const chosen = withParent(site.facility.value, animal, parents, role, id);
      refused.value = chosen.ok ? null : { role, problem: chosen.problem };
      if (chosen.ok) route(parentsPage(animal, chosen.value), true);
    },
    scan(role) {
      walks.current = true;
      desk.want(waiting(`Scan the ${role} of ${sayAnimal(animal)}`, () => role));
      route('/');
    },
  };
}
