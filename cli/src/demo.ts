/** `feedwright demo`: the plans of the demo ward, whose people and numbers are all invented; or its record. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { writeEntryText } from '@feedwright/core/record/document';
import { memoryLog } from '@feedwright/store/memory';
import { ledgerLines } from '@feedwright/store/ndjson';
import { demoWard, SHOWN_SEED } from '../../demo/ward.ts';
import { plan } from './plan.ts';
import { plain, printLines } from './print.ts';

const WARD = new URL('../../demo/', import.meta.url);
/** The first morning of the ward's three days, so that it is the same ward whenever somebody looks. */
const FIRST_MORNING = '2026-10-24T08:00:00+01:00';

function plans(asJson: boolean): void {
  const files = readdirSync(WARD)
    .filter((name) => name.startsWith('bed-'))
    .toSorted();
  if (!asJson) {
    printLines([
      plain('The demo ward. Everybody in it is invented; nothing here is advice for a real person.', 'title'),
    ]);
  }
  for (const name of files) {
    if (!asJson) printLines([plain(''), plain('─'.repeat(72), 'quiet')]);
    const policy = fileURLToPath(new URL('policy.json', WARD));
    plan(fileURLToPath(new URL(name, WARD)), { from: FIRST_MORNING, policy, json: asJson });
  }
}

/** The three days as a ledger that was exported, in the order in which they were written down. */
async function ledger(): Promise<void> {
  const { entries, people } = demoWard(SHOWN_SEED);
  const wards = new Map(people.map((one) => [one.course, one.ward]));
  const log = memoryLog(`demo-ward-${SHOWN_SEED}`);
  await log.append(
    entries.map((one) => ({
      id: one.id,
      course: one.course,
      ward: wards.get(one.course) ?? one.course,
      text: writeEntryText(one),
    })),
  );
  process.stdout.write([...ledgerLines(log), ''].join('\n'));
}

export async function demo(options: { readonly json?: boolean; readonly ledger?: boolean }): Promise<void> {
  if (options.ledger === true) await ledger();
  else plans(options.json === true);
}
