export { idbLog } from './idbLog.ts';
