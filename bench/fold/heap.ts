/** How many bytes of heap does a parsed entry hold? Prints them. Run with `--expose-gc`. */
import { parseKeptEntry, writeEntryText } from '@feedwright/core/record/document';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { largeLedger } from '../../demo/large-ledger.ts';

const COURSES = 20;
const ENTRIES = 5_000;

const collect = (globalThis as { gc?: () => void }).gc;
if (collect === undefined) throw new Error('run with --expose-gc');

const used = (): number => {
  collect();
  collect();
  return process.memoryUsage().heapUsed;
};

const kept: AnyEntry[] = new Array(COURSES * ENTRIES);
let [count, bytes, read] = [0, 0, 0];
for (const { entries } of largeLedger({ courses: COURSES, entriesPerCourse: ENTRIES, seed: 6 })) {
  const texts = entries.map(writeEntryText);
  const before = used();
  for (const text of texts) {
    const entry = parseKeptEntry(text);
    if (!entry.ok) throw new Error('an entry that was written does not read');
    kept[count] = entry.value;
    count += 1;
  }
  bytes += used() - before;
  // The texts must live until here, or their end would be counted as the entries' gain.
  read += texts.length;
}
if (read !== count) throw new Error('texts and entries differ');
console.log(bytes / count);
