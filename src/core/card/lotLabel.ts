import { type Day, sayDayShort } from '../days.ts';
import type { LotRecord } from '../facility/index.ts';
import { sayId } from '../ids.ts';
import { sayPrey } from '../stock/index.ts';
import { lastDayOf } from '../stock/lots.ts';
import { sayGramRange, sayNumber } from '../units.ts';
import type { Forms } from './content.ts';
import { type LabelContent, labelLine, labelOf } from './label.ts';

/** The hygiene line in short; it stands on every label of a lot (CDC: rodents can carry germs, and freezing does not kill them). */
const HYGIENE: Forms = {
  long: 'Freezing kills no germs: keep out of kitchens, wash your hands. Thawed prey is never refrozen.',
  medium: 'Keep out of kitchens, wash hands. Never refreeze.',
  short: 'Wash hands. Never refreeze.',
};

/**
 * The label of a lot, for its box or bag in the freezer: what it is, how much came and when, its last day, what it was
 * treated with. Its code opens the lot. How much is left is not on it: that changes every evening.
 */
export function lotLabel(lot: LotRecord): LabelContent {
  const prey = sayPrey(lot.prey);
  return labelOf({
    kind: 'lot',
    id: lot.id,
    called: `label of the ${prey} lot ${sayId(lot.id)}`,
    code: { says: 'id', id: lot.id },
    lines: [
      labelLine('id', true, sayId(lot.id)),
      labelLine('main', true, prey),
      labelLine('body', true, lastDayForms(lot)),
      labelLine('body', false, amountForms(lot)),
      ...(lot.topical === null ? [] : [labelLine('body', false, topicalForms(lot.topical))]),
      ...(lot.source === null ? [] : [labelLine('body', false, { long: `from ${lot.source}`, medium: '', short: '' })]),
      labelLine('small', false, HYGIENE),
    ],
  });
}

/** A day that nobody wrote is the rule's own, and says so. */
function lastDayForms(lot: LotRecord): Forms {
  const last: Day = lastDayOf(lot);
  if (lot.useBy !== null)
    return { long: `use by ${sayDayShort(last)}`, medium: `use by ${sayDayShort(last)}`, short: `use by ${last}` };
  return {
    long: `use by ${sayDayShort(last)} (assumed)`,
    medium: `use by ${sayDayShort(last)} (assumed)`,
    short: `use by ${last} (?)`,
  };
}

function amountForms({ eachG, received, receivedOn }: LotRecord): Forms {
  const items = sayNumber(received);
  return {
    long: `${items} items of ${sayGramRange(eachG)}, came ${sayDayShort(receivedOn)}`,
    medium: `${items} × ${sayGramRange(eachG)}, ${sayDayShort(receivedOn)}`,
    short: `${items} × ${sayGramRange(eachG)}, ${receivedOn}`,
  };
}

function topicalForms(topical: string): Forms {
  return { long: `treated on the outside: ${topical}`, medium: `treated: ${topical}`, short: topical };
}
