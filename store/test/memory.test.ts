import { memoryLog } from '../src/memory.ts';
import { logContract } from './contract.ts';

logContract('in memory', () => memoryLog('test'));
