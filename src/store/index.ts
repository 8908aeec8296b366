export type {
  DeviceLog,
  DeviceState,
  Enrolment,
  HubPage,
  Refusal,
  Snapshot,
  Unsent,
} from './deviceLog.ts';
export { type Appended, type Cursor, type EventLog, LogFailure, type Page } from './eventLog.ts';
export { type Entry, eventLine, readEvent, readLine } from './line.ts';
export { memoryDeviceLog, memoryLog } from './memory/index.ts';
export { type LogReader, type LogReading, logPieces, logReader, MORE, readLog, writeLog } from './ndjson.ts';
export { type Sha256, sha256 } from './sha256.ts';
export type { Identity, Stamp, Stamper } from './stamp.ts';
