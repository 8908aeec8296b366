import { useLocation } from 'preact-iso';
import type { RoundLine } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** What the square at the end of a line does: the deed itself, or the sheet that the deed needs. */
export function useDoLine(): (line: RoundLine) => Promise<void> {
  const { round, desk } = useApp();
  const { route } = useLocation();
  return async (line) => {
    const [animal] = line.animals;
    if (line.task === 'look') return round.look({ line, animal: null });
    if (line.task === 'treat') return animal === undefined ? undefined : route(`/treatments?dose=${animal.id}`);
    if (line.task === 'weigh') return animal === undefined ? undefined : desk.weigh(animal.id);
    if (line.task !== 'feeding') return round.turn(line);
    if (animal !== undefined) await desk.act(animal.id, { do: 'fed-as-planned' });
  };
}
