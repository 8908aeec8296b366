import { memoryDeviceLog, memoryLog } from '../../src/store/index.ts';
import { contract } from './contract.ts';
import { deviceContract } from './deviceContract.ts';
import { logHere } from './logHere.ts';

contract({ name: 'memory', durable: false, open: async () => memoryLog() });
contract({ name: 'the device log in memory', durable: false, open: async () => memoryDeviceLog(5) });
deviceContract({
  name: 'the device log in memory',
  durable: false,
  open: async () => memoryDeviceLog(5),
  logDrafts: logHere,
});
