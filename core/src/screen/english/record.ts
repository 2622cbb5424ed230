/** What is wrong with an entry, and why a wish is refused at the bedside, in English. */
import { plainly } from '../said.ts';
import type { Data, Sentence, Words } from '../words.ts';

const say = (says: string, remedy: string): Sentence => ({ says, remedy });
const quoted = (value: unknown): string => `“${plainly(value)}”`;

const entry: Words['issues'] = {
  'entry/not-an-object': () =>
    say('this is not an entry', 'Give a JSON object as the schema of an entry says.'),
  'entry/no-fact': () => say('the entry does not say what happened', 'Write its fact, with a kind.'),
  'entry/kind': ({ found }) => say(`${quoted(found)} is not a kind of fact`, 'Write it like pump-started/1.'),
  'entry/names-itself': ({ id }) => say(`entry ${quoted(id)} names itself`, 'Name the other entry.'),
  'fact/confirmed-without-ph': () =>
    say('confirmed by pH, and no pH is written', 'Write the pH that was read.'),
};

const residual: Words['issues'] = {
  'residual/no-volume': () => say('measured, and no volume is written', 'Write the volume that was drawn.'),
  'residual/volume-without-aspirate': ({ volumeMl }) =>
    say(
      `nothing was aspirated, and ${plainly(volumeMl)} mL are written`,
      'Take the volume out, or write measured.',
    ),
  'residual/seen-without-aspirate': () =>
    say('nothing was aspirated, and its look is written', 'Take the look out, or write measured.'),
  'residual/more-than-drawn': ({ returnedMl, discardedMl, drawnMl }) =>
    say(
      `${plainly(returnedMl)} mL returned and ${plainly(discardedMl)} mL discarded are more than the ${plainly(drawnMl)} mL drawn`,
      'Check the three volumes.',
    ),
};

const OUT: Readonly<Record<string, string>> = {
  error: 'marked as entered in error',
  corrected: 'corrected',
  duplicate: 'dropped as a duplicate',
};

const outAlready = ({ id, why }: Data): Sentence =>
  say(`Entry ${plainly(id)} is already ${OUT[String(why)] ?? 'out'}.`, 'Nothing more is needed.');

const refusals: Words['issues'] = {
  'act/in-the-future': () =>
    say('This is said to happen later than now.', 'Check the time, and the clock of this device.'),
  'act/before-the-course': () => say('This is before the course began.', 'Check the day and time.'),
  'act/tube-out': () =>
    say(
      'The tube is recorded as out: nothing goes down it.',
      'Record the new tube and its confirmation first.',
    ),
  'act/not-paused': () => say('Nothing is paused.', 'Start the feed, or record the pause first.'),
  'act/not-up': ({ container, up }) =>
    say(
      `Container ${plainly(container)} is not up${up === null || up === undefined ? '' : `; ${plainly(up)} is`}.`,
      'Check which container hangs.',
    ),
  'act/spiked-before': ({ container }) =>
    say(
      `Container ${plainly(container)} was spiked before.`,
      'A closed container is spiked once: take a new one.',
    ),
  'act/no-such-entry': ({ id }) =>
    say(`There is no entry ${plainly(id)} here.`, 'It may not have reached this device yet.'),
  'act/marks-in-error-itself': ({ id }) =>
    say(
      `Entry ${plainly(id)} itself marks another as entered in error.`,
      'Record what is true as a new entry.',
    ),
  'act/out-already': outAlready,
  'act/policy-silent': ({ key }) =>
    say(`Local policy says nothing under ${plainly(key)}.`, 'Ask who owns the policy.'),
  'act/no-duplicates': () =>
    say(
      'These two do not say the same thing at about the same time.',
      'Mark the wrong one as entered in error.',
    ),
  'act/no-such-visit': () =>
    say('There is no such visit in the plan.', 'Look at the plan again: it may have changed.'),
  'act/no-order': ({ inForce }) =>
    say(
      inForce === 'fork' ? 'Two orders replace the same one.' : 'No order is in force.',
      'Charting goes on; call the prescriber.',
    ),
  'act/visit-done': () => say('Everything in this visit is recorded.', 'Go on to the next.'),
  'act/malformed': () =>
    say('What was entered cannot be recorded as it is.', 'Mend the fields that are named.'),
};

export const ENGLISH_RECORD: Words['issues'] = { ...entry, ...residual, ...refusals };
