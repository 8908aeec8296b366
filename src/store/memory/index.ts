export { memoryDeviceLog } from './memoryDeviceLog.ts';
export { memoryLog } from './memoryLog.ts';
