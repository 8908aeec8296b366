import { makeCamera } from '../../../scanner/web/index.ts';
import { decoding } from './decoding.ts';

/** The page's one camera; nothing is opened before its first start. */
export const camera = makeCamera({ decoding });
