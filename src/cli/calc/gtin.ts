import * as z from 'zod/mini';
import { readGtin } from '../../core/index.ts';
import { word } from './fields.ts';
import { type Kind, readCase } from './kind.ts';

const HELP = `gtin: the check digit of a trade item's number (GS1 General Specifications)
  {"digits": 7, 8, 11, 12, 13 or 14 of them, with or without the check digit}
    -> {"full": with the right check digit, "check": that digit, "ok": whether it came with the right one, or with none}
  Twelve digits are a GTIN-12 where their last one fits, else a GTIN-13 that lacks its last.`;

/** Numbers of trade items from outside. */
export const gtinKind: Kind = {
  name: 'gtin',
  help: HELP,
  answer: (given) => {
    const read = readCase(z.object({ digits: word }), given);
    return read.ok ? readGtin(read.value.digits) : read;
  },
};
