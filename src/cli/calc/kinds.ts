import { dueKind } from './due.ts';
import { idKind } from './id.ts';
import type { Kind } from './kind.ts';
import { preyKind } from './prey.ts';

/** Every kind of calculation. */
export const KINDS: readonly Kind[] = [idKind, preyKind, dueKind];
