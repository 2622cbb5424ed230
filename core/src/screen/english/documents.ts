/** What is wrong with a document, in English: its fields, local policy's rows, the feed list's feeds. */
import { plainly, withUnit } from '../said.ts';
import type { Data, Sentence, Words } from '../words.ts';

const say = (says: string, remedy: string): Sentence => ({ says, remedy });
const quoted = (value: unknown): string => `“${plainly(value)}”`;
const meant = (nearest: unknown, otherwise: string): string =>
  nearest === null || nearest === undefined ? otherwise : `Is ${quoted(nearest)} meant?`;
const place = ({ line, column }: Data): string => `line ${String(line)}, column ${String(column)}`;

const AT_PLACE = 'Mend the file there, or write it again from where it came.';

const json: Words['issues'] = {
  'json/too-large': ({ size, most }) =>
    say(
      `${String(size)} characters; at most ${String(most)} are read`,
      'Give the one document, not a collection.',
    ),
  'json/ends-early': (data) =>
    say(`not whole JSON: it ends at ${place(data)}`, 'The file was cut short: write it again.'),
  'json/unexpected': (data) =>
    say(`not JSON: ${quoted(data.found)} cannot stand at ${place(data)}`, AT_PLACE),
  'json/bad-string': (data) =>
    say(`not JSON: a text that is not closed or holds a bare control character, at ${place(data)}`, AT_PLACE),
  'json/field-name-expected': (data) =>
    say(`not JSON: a field's name in quotes should stand at ${place(data)}`, AT_PLACE),
  'json/field-twice': (data) =>
    say(
      `${quoted(data.field)} is written twice in the same place, at ${place(data)}`,
      'Keep the one that is meant.',
    ),
  'json/more-after-end': (data) =>
    say(`more follows after the document's end, at ${place(data)}`, 'One file holds one document.'),
  'json/too-deep': (data) =>
    say(`nested deeper than ${plainly(data.most)}, at ${place(data)}`, 'This is not a document of ours.'),
};

const fields: Words['issues'] = {
  'document/not-an-object': ({ expected }) =>
    say('this is not a document', `Give a JSON object with "document": "${plainly(expected)}".`),
  'document/newer-version': ({ found, reads }) =>
    say(
      `${quoted(found)} is newer than ${quoted(reads)}, which is read here`,
      'Use the release that wrote it, or write it as the older version.',
    ),
  'document/wrong-kind': ({ found, expected }) =>
    say(`${quoted(found)} is not ${quoted(expected)}`, 'Give the right file.'),
  'document/no-kind': ({ expected, resourceType }) =>
    say(
      resourceType === undefined
        ? 'the document does not say what it is'
        : `a FHIR ${plainly(resourceType)} where a document of ours is wanted`,
      `Write "document": "${plainly(expected)}" at its beginning.`,
    ),
  'field/missing': ({ choices }) =>
    say('missing', choices === undefined ? 'Write it.' : `Write one of ${plainly(choices)}.`),
  'field/unknown': ({ nearest, known }) =>
    say('this field is not known', meant(nearest, `Known here: ${plainly(known)}.`)),
  'field/empty': () => say('nothing is written', 'Write it, or leave the field out.'),
  'field/too-long': ({ most, of }) =>
    say(`longer than ${plainly(most)} ${of === 'array' ? 'items' : 'characters'}`, 'Shorten it.'),
  'field/wrong-type': ({ expected, value }) =>
    say(`${quoted(value)} is not of the right kind`, `Write a ${plainly(expected)}.`),
  'field/not-a-choice': ({ value, choices, nearest }) =>
    say(`${quoted(value)} is not one of ${plainly(choices)}`, meant(nearest, 'Write one of them.')),
  'text/control-character': () =>
    say('a control character is in the text', 'Write it on one line, without tabs.'),
  'time/no-such-zone': ({ text, value }) =>
    say(`${quoted(text ?? value)} is not a time zone known here`, 'Write it like Europe/London.'),
  'time/not-a-day': ({ text, value }) =>
    say(`${quoted(text ?? value)} is not a day of the calendar`, 'Write it like 2026-11-25.'),
  'time/not-an-instant': ({ text, value }) =>
    say(
      `${quoted(text ?? value)} is not a moment with its offset`,
      'Write it like 2026-11-25T08:00:00+00:00.',
    ),
  'time/not-hh-mm': ({ text, value }) =>
    say(`${quoted(text ?? value)} is not a time of day`, 'Write it like 08:00, on a 24-hour clock.'),
  'number/not-credible': ({ value, unit, least, orLeast, most }) =>
    say(
      `${withUnit(value, unit)} is outside what can be meant: ${orLeast === true ? 'from' : 'over'} ${plainly(least)} to ${withUnit(most, unit)}`,
      'Check the number and its unit.',
    ),
  'number/divided-by-zero': ({ text }) => say(`${quoted(text)} divides by nothing`, 'Write it like 3/4.'),
  'number/too-large': ({ given, text }) =>
    say(`${quoted(given ?? text)} is larger than can be meant`, 'Check the number and its unit.'),
};

const whom = ({ ageFrom, ageBelow, setting }: Data): string => {
  const parts = [
    ageFrom === undefined ? '' : `from ${plainly(ageFrom)}`,
    ageBelow === undefined ? '' : `below ${plainly(ageBelow)}`,
    setting === undefined ? '' : plainly(setting),
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
};

const row = (data: Data): string => `${plainly(data.key)}${whom(data)} ${quoted(data.value)}`;

const against = ({ against: others }: Data): string =>
  Array.isArray(others)
    ? others
        .map((one: { key: unknown; value: unknown }) => `${plainly(one.key)} ${quoted(one.value)}`)
        .join(', ')
    : '';

const together = (how: string) => (data: Data) =>
  say(`${row(data)} ${how} ${against(data)}`, 'Change one of the rows.');

const policy: Words['issues'] = {
  'policy/unit': ({ given, unit }) =>
    say(`${quoted(given)} is not in a unit that is read here`, `Write it in ${plainly(unit)}.`),
  'policy/unit-missing': ({ given, unit }) =>
    say(`${quoted(given)} has no unit`, `Write the unit: ${plainly(unit)}.`),
  'policy/kind': (data) =>
    say(`${quoted(data.given ?? data.value)} is not of the right kind`, `Write it in ${plainly(data.unit)}.`),
  'policy/choice': ({ given, choices }) =>
    say(`${quoted(given)} is not a choice here`, `Write one of ${plainly(choices)}.`),
  'policy/time': ({ given }) => say(`${quoted(given)} is not a time of day`, 'Write it like 08:00.'),
  'policy/age': ({ text }) => say(`${quoted(text)} is not an age`, 'Write it like 28 days or 18 years.'),
  'policy/out-of-bounds': (data) =>
    say(
      `${row(data)} is impossible: ${data.orLeast === true ? 'from' : 'over'} ${plainly(data.least)} to ${plainly(data.most)}`,
      'Check the value and its unit.',
    ),
  'policy/set-twice': (data) =>
    say(`${row(data)} is set twice for the same people and time`, 'Keep one of the rows.'),
  'policy/bands-overlap': (data) =>
    say(`${row(data)} shares ages with another row`, 'Let each age fall into one row.'),
  'policy/band-empty': (data) => say(`${row(data)} holds for nobody`, 'Check the ages.'),
  'policy/default-changed': (data) =>
    say(
      `${plainly(data.key)} is marked as a default but differs from it`,
      'Take isDefault away and say who set it.',
    ),
  'policy/more-than': together('is more than'),
  'policy/not-in-order': together('does not stand in order with'),
  'policy/margin-not-under-limit': together('leaves nothing of'),
  'policy/windows-overlap': together('lets a task meet its own next turn:'),
  'policy/warning-not-under-limit': together('warns no earlier than'),
  'policy/prime-not-under-capacity': together('fills all of'),
};

const feeds: Words['issues'] = {
  'feeds/energy': ({ feed, value, least, most, unit }) =>
    say(
      `${plainly(feed)}: ${withUnit(value, unit)} is outside ${plainly(least)} to ${withUnit(most, unit)}`,
      'Is it kcal/mL, not kcal/L?',
    ),
  'feeds/water': ({ feed, value }) =>
    say(
      `${plainly(feed)}: ${plainly(value)} mL of water in 100 mL cannot be`,
      'Write mL of water in 100 mL of feed.',
    ),
  'feeds/protein': ({ feed, value }) =>
    say(
      `${plainly(feed)}: ${plainly(value)} g of protein in 100 mL has more energy than the feed`,
      'Is it g per 100 mL, not per litre?',
    ),
  'feeds/pack-size': ({ feed, volumeMl, mostMl }) =>
    say(
      `${plainly(feed)}: a pack of ${plainly(volumeMl)} mL cannot be`,
      `Over nothing, at most ${plainly(mostMl)} mL.`,
    ),
  'feeds/pack-kind': ({ feed, system, wanted }) =>
    say(
      `${plainly(feed)}: a ${plainly(system)} feed comes in ${plainly(wanted)}s`,
      `List each pack as a ${plainly(wanted)}.`,
    ),
  'feeds/label-limit': ({ feed }) =>
    say(`${plainly(feed)}: its own hang limit cannot be`, 'Over nothing, at most 48 h.'),
  'feeds/twice': ({ feed }) => say(`${plainly(feed)} is listed twice`, 'Give each feed an id of its own.'),
};

const ledger: Words['issues'] = {
  'ledger/none-here': ({ file }) =>
    say(`there is no ledger at ${quoted(file)}`, 'Check the folder that --data names.'),
  'ledger/not-json': () =>
    say('this line is no JSON', 'The file was changed or cut: take it from where it came again.'),
  'ledger/not-a-line': () => say('this line is no entry of a ledger', 'Give a file that export wrote.'),
  'ledger/newer-version': () => say('this line was written by a newer release', 'Use that release.'),
  'ledger/empty': () =>
    say('there is no entry in the file', 'Give a file that export wrote, or lines of entries.'),
  'ledger/no-first-line': () =>
    say('the file does not begin as an exported ledger does', 'Give a file that export wrote.'),
  'ledger/after-the-end': () =>
    say('something follows the last line', 'Give one exported ledger, as it was written.'),
  'ledger/cut-short': ({ entries }) =>
    say(
      `the last line is missing after ${plainly(entries)} entries: the file was cut short`,
      'Export it again. Nothing was taken in.',
    ),
  'ledger/count-differs': ({ says, has }) =>
    say(
      `the file says ${plainly(says)} entries and has ${plainly(has)}`,
      'Export it again. Nothing was taken in.',
    ),
  'ledger/not-a-head': () =>
    say(
      'this is no head of a ledger',
      'Give {"course", "count", "head"}, a list of them, or the last line of an export.',
    ),
  'log/id-conflict': ({ id, position }) =>
    say(
      `entry ${quoted(id)} is there already with another text, at position ${plainly(position)}`,
      'One of the two was changed: find out which.',
    ),
  'log/malformed': ({ id, field }) =>
    say(`entry ${quoted(id)} cannot be kept: its ${plainly(field)}`, 'Mend it where it was made.'),
  'log/in-use': ({ file, why }) =>
    say(
      `${quoted(file)} is in use${why === undefined ? ' by another process' : `: ${plainly(why)}`}`,
      'Stop the other one, or choose another file.',
    ),
  'log/disk-full': ({ file }) =>
    say(`no room to write ${quoted(file)}`, 'Free some room; nothing that was acknowledged is lost.'),
  'log/read-only': ({ file }) =>
    say(`${quoted(file)} cannot be written`, 'Check the permissions of the file and its folder.'),
  'log/corrupt': ({ file, why }) =>
    say(
      `${quoted(file)} is damaged${why === undefined ? '' : ` (${plainly(why)})`}`,
      'Restore the last backup; keep the damaged file.',
    ),
  'log/newer-version': ({ file }) =>
    say(`${quoted(file)} was written by a newer release`, 'Use that release: an older one never opens it.'),
  'log/not-a-log': ({ file }) =>
    say(`${quoted(file)} is not a ledger`, 'Check the name. It was left as it is.'),
  'log/closed': () => say('the ledger has been closed', 'Open it again.'),
};

export const ENGLISH_DOCUMENTS: Words['issues'] = { ...json, ...fields, ...policy, ...feeds, ...ledger };
