import { useEffect, useRef } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Id, ok, problem, type Result, sayAnimal } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import type { AnimalWanted } from '../../model/desk.ts';
import type { Now } from '../siteTime.ts';
import { dosesOf } from './todayView.ts';

const PAGE = '/treatments';

/** While the page is open the next card opens that animal’s dose; by camera the Scan screen reads it for this page. */
export function useCardScan(now: Now): { walk(): void } {
  const { desk, site } = useApp();
  const { route } = useLocation();
  const own = useRef<AnimalWanted | null>(null);
  const walking = useRef(false);
  const latest = useRef(now);
  latest.current = now;
  const isFree = desk.wanted.value === null;

  function take(id: Id): Result<string> {
    const animal = site.facility.value.animals.get(id);
    if (animal !== undefined && dosesOf(animal, latest.current).length > 0) return ok(`${PAGE}?dose=${id}`);
    const name = animal === undefined ? id : sayAnimal(animal);
    return { ok: false, problem: problem('treatment-none', { animal: name }) };
  }
  useEffect(() => {
    if (!isFree) return;
    own.current = { says: 'Scan who gets a dose', take };
    desk.want(own.current);
  }, [isFree]);
  useEffect(
    () => () => {
      if (!walking.current && own.current !== null && desk.wanted.peek() === own.current) desk.want(null);
    },
    [],
  );
  return {
    walk() {
      walking.current = true;
      route('/');
    },
  };
}
