/** `feedwright backup` and `feedwright restore`: the ledger in a second place, and back into use from there. */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { backupLog, restoreLog } from '@feedwright/store/sqlite/backup';
import { refuse } from './fail.ts';
import { ledgerFile, progress, saying, withLedger } from './ledger-file.ts';
import { plain, printJson, printLines } from './print.ts';

type DataOption = { readonly data: string; readonly json?: boolean };

export const backup = (to: string, options: DataOption): Promise<void> =>
  withLedger(options.data, { readOnly: true }, async (log) => {
    const said = progress('pages left');
    const entries = await backupLog(log, to, said);
    if (options.json === true) return printJson({ entries, file: to });
    printLines([plain(`${entries} entries copied to ${to}; the copy was checked and is sound.`)]);
  });

export async function restore(from: string, options: DataOption): Promise<void> {
  if (!existsSync(from)) refuse(from, 'file/not-found', { file: from });
  const file = ledgerFile(options.data);
  await saying(file, () => {
    mkdirSync(options.data, { recursive: true });
    const entries = restoreLog(from, file, randomUUID());
    if (options.json === true) return printJson({ entries, file });
    printLines([
      plain(`${entries} entries restored to ${file}, as a new epoch.`),
      plain('Devices that were further ahead will send what the copy did not have.', 'quiet'),
    ]);
  });
}
