/** `feedwright verify`: is the ledger still what was acknowledged? Against itself, and against heads kept elsewhere. */
import { issue } from '@feedwright/core/base/result';
import { integrityProblems } from '@feedwright/store/sqlite/sound';
import { type Finding, type KeptHead, verify } from '@feedwright/store/verify';
import { Refused, STOPPED } from './fail.ts';
import { progress, withLedger } from './ledger-file.ts';
import { plain, printJson, printLines } from './print.ts';
import { readText } from './read.ts';

type VerifyOptions = { readonly data: string; readonly head?: string; readonly json?: boolean };

const isHead = (value: unknown): value is KeptHead => {
  const { course, count, head } = Object(value) as Partial<Record<keyof KeptHead, unknown>>;
  return typeof course === 'string' && Number.isSafeInteger(count) && /^[0-9a-f]{64}$/.test(String(head));
};

/** A head, a list of them, or the last line of an export: one JSON value. */
function keptHeads(file: string): readonly KeptHead[] {
  const lastLine = readText(file).text.trim().split('\n').at(-1) ?? '';
  let value: unknown;
  try {
    value = JSON.parse(lastLine);
  } catch {
    throw new Refused(file, [issue([], 'ledger/not-a-head')]);
  }
  const heads = Array.isArray(value) ? value : ((value as { heads?: unknown })?.heads ?? [value]);
  if (!Array.isArray(heads) || !heads.every(isHead))
    throw new Refused(file, [issue([], 'ledger/not-a-head')]);
  return heads;
}

const WHAT: Readonly<Record<Finding['code'], string>> = {
  changed: 'an entry was changed, or one before it is gone',
  missing: 'an entry is missing',
  'cut-off': 'entries that were acknowledged are missing at the end',
  'other-history': 'this is not the history that the kept head vouches for',
};

export const verifyLedger = (options: VerifyOptions): Promise<void> =>
  withLedger(options.data, { readOnly: true }, (log) => {
    const damage = integrityProblems(log.database);
    const kept = options.head === undefined ? [] : keptHeads(options.head);
    const found = verify(log, kept, progress('entries looked at'));
    if (damage.length + found.findings.length > 0) process.exitCode = STOPPED;
    if (options.json === true) return printJson({ ...found, damage });
    printLines([
      ...damage.map((said) => plain(`The file is damaged: ${said}.`, 'stop')),
      ...found.findings.map(({ code, course, position }) =>
        plain(`Course ${course ?? '—'}, position ${position}: ${WHAT[code]}.`, 'stop'),
      ),
      plain(
        `${found.entries} entries of ${found.courses} courses looked at, ${kept.length} kept heads compared: ${damage.length + found.findings.length === 0 ? 'all as it was acknowledged' : 'not as it was acknowledged'}.`,
      ),
      ...(kept.length === 0
        ? [plain('Without a head kept elsewhere an end that was cut off cannot be seen.', 'quiet')]
        : []),
    ]);
  });
