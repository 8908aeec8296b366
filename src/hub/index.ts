export { EVENTS_FILE, openData, restoreData } from './data.ts';
export { HubFailure } from './failure.ts';
export { type HubOptions, type RunningHub, startHub } from './hub.ts';
