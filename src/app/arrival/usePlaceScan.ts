import { useEffect, useRef } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Id, ok } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { AnimalWanted } from '../model/desk.ts';
import { put } from './fields.tsx';

const PAGE = '/arrive';

/** While the form is open, the place scanned next is the arrival’s; by camera the Scan screen reads it for this page. */
export function usePlaceScan(): () => void {
  const { desk } = useApp();
  const { route } = useLocation();
  const own = useRef<AnimalWanted | null>(null);
  const walking = useRef(false);
  const isFree = desk.wanted.value === null;
  useEffect(() => {
    if (!isFree) return;
    own.current = {
      says: 'Scan where it goes',
      of: 'place',
      take(place: Id) {
        put({ place });
        return ok(PAGE);
      },
    };
    desk.want(own.current);
  }, [isFree]);
  useEffect(
    () => () => {
      if (!walking.current && own.current !== null && desk.wanted.peek() === own.current) desk.want(null);
    },
    [],
  );
  return () => {
    walking.current = true;
    route('/');
  };
}
