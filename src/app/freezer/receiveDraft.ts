import { type Arrived, isDay, ok, preyClass, problem, type Result, readEachG, refuse } from '../../core/index.ts';
import { written } from '../books/Field.tsx';

/** Reads the form of a lot. Errors: `prey-unknown`, `not-whole`, `lot-grams-malformed`, `date-malformed`. */
export function arrivedIn(form: FormData): Result<Arrived> {
  const found = preyClass(written(form, 'prey'));
  if (found === undefined) return refuse('prey-unknown', { prey: written(form, 'prey'), known: 'the list' });
  const count = Number(written(form, 'count'));
  if (!Number.isInteger(count) || count < 1) return refuse('not-whole', { what: 'count of items' });
  const eachG = readEachG(written(form, 'grams'), found);
  if (!eachG.ok) return eachG;
  const useBy = written(form, 'use-by');
  if (useBy !== '' && !isDay(useBy)) return { ok: false, problem: problem('date-malformed', { text: useBy }) };
  return ok({
    prey: found.id,
    eachG: eachG.value,
    count,
    useBy: isDay(useBy) ? useBy : null,
    source: written(form, 'source') || null,
    topical: written(form, 'topical') || null,
  });
}
