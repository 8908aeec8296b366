export { type Rhythm, type SyncClient, type SyncState, syncClient } from './client.ts';
export { type Exchanged, exchange, type Parties } from './exchange.ts';
export { answerPush, type HubStore, pageLimit, type Reply } from './hubRules.ts';
export { type Called, type Fetch, type Hub, hubOver } from './transport.ts';
export {
  type Enrol,
  type Enrolled,
  LIMITS,
  type Pulled,
  type Push,
  type Pushed,
  readEnrol,
} from './wire.ts';
