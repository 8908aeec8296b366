import * as z from 'zod/mini';
import { ok, standardMetabolism } from '../../core/index.ts';
import { figure } from './fields.ts';
import { type Kind, readCase } from './kind.ts';

const HELP = `metabolism: what a resting, fasting animal burns by a published mean; for display, it sizes no meal
  {"massG", "tempC"} -> {"vo2MlPerH","kjPerDay"}`;

const caseOf = z.object({ massG: figure, tempC: figure });

/** Metabolism from outside. */
export const metabolismKind: Kind = {
  name: 'metabolism',
  help: HELP,
  answer: (given) => {
    const read = readCase(caseOf, given);
    if (!read.ok) return read;
    const burnt = standardMetabolism(read.value.massG, read.value.tempC);
    return burnt.ok ? ok({ vo2MlPerH: burnt.value.vo2MlPerH, kjPerDay: burnt.value.kjPerDay }) : burnt;
  },
};
