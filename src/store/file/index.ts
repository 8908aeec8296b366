export { checkFile, type Soundness } from './checkFile.ts';
export { replaceDurably } from './durable.ts';
export { type FileLog, fileLog, type LinePage } from './fileLog.ts';
export { nodeSha256 } from './nodeSha256.ts';
