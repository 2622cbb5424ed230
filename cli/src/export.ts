/** `feedwright export`: a whole ledger as lines of JSON, to the byte, with the heads that vouch for it. */
import { once } from 'node:events';
import { ledgerLines } from '@feedwright/store/ndjson';
import { withLedger } from './ledger-file.ts';

export const exportLedger = (options: { readonly data: string }): Promise<void> =>
  withLedger(options.data, { readOnly: true }, async (log) => {
    for (const line of ledgerLines(log)) {
      if (!process.stdout.write(`${line}\n`)) await once(process.stdout, 'drain');
    }
  });
