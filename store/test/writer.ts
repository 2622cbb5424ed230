/** Appends without end and prints each acknowledgement; made to be killed. Arguments: the file, the round. */
import { sqliteLog } from '../src/sqlite/log.ts';
import { entry } from './contract.ts';

const [, , path = '', round = ''] = process.argv;
const log = sqliteLog(path, { epoch: 'killed' });
const MOST = 20_000;
for (let n = 0; n < MOST; n += 3) {
  const batch = [0, 1, 2].map((k) => entry(`${round}-${n + k}`, `course-${(n + k) % 7}`));
  const answers = await log.append(batch);
  process.stdout.write(answers.map((one) => `${one.id} ${one.position} ${one.head}\n`).join(''));
}
