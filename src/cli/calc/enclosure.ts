import * as z from 'zod/mini';
import { enclosureFor } from '../../core/index.ts';
import { figure, word } from './fields.ts';
import { type Kind, readCase } from './kind.ts';

const HELP = `enclosure: the least space by a published rule, to compare with; your local code decides
  {"rule": "austria"|"germany"|"england", "species": a species, or "ground snake"|"climbing snake", "lengthM", "animals"}
    -> {"floorM2" (austria) | "lengthM","widthM" (germany, england), "heightM","source","caution"}`;

const caseOf = z.object({ rule: word, species: word, lengthM: figure, animals: figure });

/** Enclosures from outside. */
export const enclosureKind: Kind = {
  name: 'enclosure',
  help: HELP,
  answer: (given) => {
    const read = readCase(caseOf, given);
    return read.ok ? enclosureFor(read.value) : read;
  },
};
