import { doseKind } from './dose.ts';
import { dueKind } from './due.ts';
import { enclosureKind } from './enclosure.ts';
import { carriersKind } from './genetics/carriers.ts';
import { clutchTestKind } from './genetics/clutchTest.ts';
import { crossKind } from './genetics/cross.ts';
import { evidenceKind } from './genetics/evidence.ts';
import { pedigreeKind } from './genetics/pedigree.ts';
import { gtinKind } from './gtin.ts';
import { idKind } from './id.ts';
import type { Kind } from './kind.ts';
import { metabolismKind } from './metabolism.ts';
import { preyKind } from './prey.ts';
import { seasonPlanKind } from './seasonPlan.ts';

/** Every kind of calculation. */
export const KINDS: readonly Kind[] = [
  idKind,
  preyKind,
  dueKind,
  crossKind,
  evidenceKind,
  clutchTestKind,
  pedigreeKind,
  carriersKind,
  seasonPlanKind,
  doseKind,
  enclosureKind,
  metabolismKind,
  gtinKind,
];
