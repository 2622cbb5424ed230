/** What is wrong with an input of a calculation, in English: what it is, and what would do. */
import type { Because } from '../../reckon/declare.ts';
import type { Words } from '../words.ts';
import { REASONS } from './english.ts';

const quoted = (value: unknown): string => `“${String(value)}”`;
const listed = (value: unknown): string =>
  Array.isArray(value)
    ? value.filter((one) => one !== '').join(', ')
    : value === undefined
      ? ''
      : String(value);
const orNot = (text: string, before: string): string => (text === '' ? '' : `${before}${text}`);
const unit = (value: unknown): string =>
  value === undefined || value === '' || value === '1'
    ? ''
    : ` ${String(value).replace(/[{}]/g, '').replace(/^a$/, 'years').replace('Cel', '°C').replace('[Ch]', 'Fr')}`;

const says = (text: string, remedy: string) => () => ({ says: text, remedy });

export const CALCULATION_ISSUES: Words['issues'] = {
  'reckon/unknown-calculation': ({ text, nearest }) => ({
    says: `there is no calculation ${quoted(text)}`,
    remedy: nearest
      ? `Did you mean ${String(nearest)}? “feedwright work” lists all.`
      : '“feedwright work” lists all.',
  }),
  'reckon/not-key-value': ({ text }) => ({
    says: `${quoted(text)} is not KEY=VALUE`,
    remedy: 'Write it like rate=75mL/h.',
  }),
  'reckon/unknown-input': ({ nearest, known }) => ({
    says: 'not an input of this calculation',
    remedy: `${nearest ? `Did you mean ${String(nearest)}? ` : ''}It asks for: ${listed(known)}.`,
  }),
  'reckon/given-twice': ({ key }) => ({
    says: `${quoted(key)} was given more than once`,
    remedy: 'Give it once.',
  }),
  'reckon/missing': ({ unit: of, accepted, least, most }) => ({
    says: 'missing',
    remedy: `Give it${unit(of) === '' ? '' : ` in${unit(of)}`}${least === undefined ? '' : `, from ${String(least)} to ${String(most)}`}${orNot(listed(accepted), '; accepted: ')}.`,
  }),
  'reckon/outside-band': ({ given, value, least, most, unit: of, because }) => ({
    says: `${quoted(given ?? value)}${String(given) === String(value) ? '' : ` is ${String(value)}${unit(of)}, which`} is outside ${String(least)} to ${String(most)}${unit(of)} (${REASONS[because as Because] ?? ''})`,
    remedy: 'Check the number and its unit.',
  }),
  'reckon/unknown-unit': ({ given, unit: of, accepted }) => ({
    says: `${quoted(given ?? of)} has a unit that is not known here: ${quoted(of)}`,
    remedy: `Write it in ${listed(accepted)}.`,
  }),
  'reckon/unit-of-another-kind': ({ given, unit: of, accepted }) => ({
    says: `${quoted(given ?? of)}${of === '' ? ' has no unit' : ` is in ${quoted(of)}, which measures something else`}`,
    remedy: `Write it in ${listed(accepted)}.`,
  }),
  'reckon/unit-needed': ({ text }) => ({
    says: `${quoted(text)} has no unit`,
    remedy: 'Write the unit behind the number.',
  }),
  'reckon/not-a-choice': ({ given, text, choices }) => ({
    says: `${quoted(given ?? text)} is not one of the choices`,
    remedy: `One of: ${listed(choices)}.`,
  }),
  'reckon/not-whole': ({ given }) => ({
    says: `${quoted(given)} is not a whole number`,
    remedy: 'Write how many there are.',
  }),
  'reckon/too-many': ({ most }) => ({
    says: `more than ${String(most)} entries`,
    remedy: 'Give fewer at a time.',
  }),
  'reckon/too-large': ({ given }) => ({
    says: `${quoted(given)} is too large to be meant`,
    remedy: 'Check the number.',
  }),
  'reckon/one-of': ({ alternatives }) => ({
    says: 'not enough was given',
    remedy: `Give ${Array.isArray(alternatives) ? alternatives.join(', or ') : ''}.`,
  }),
  'reckon/only-one-of': ({ alternatives }) => ({
    says: 'given in more than one way',
    remedy: `Give only one: ${Array.isArray(alternatives) ? alternatives.join(', or ') : ''}.`,
  }),
  'reckon/not-a-moment': ({ given, text }) => ({
    says: `${quoted(given ?? text)} is not a time`,
    remedy: 'Write it like 08:00, or 2026-10-25T00:30 with zone=Europe/London.',
  }),
  'reckon/not-a-zone': ({ text }) => ({
    says: `${quoted(text)} is not a time zone known here`,
    remedy: 'Write it like Europe/London.',
  }),
  'reckon/zone-needed': says(
    'a day and a time without a zone',
    'Give zone=Europe/London, or the moment with its offset.',
  ),
  'reckon/mixed-moments': says(
    'one end is a bare clock time and the other is not',
    'Give both in the same way.',
  ),
  'reckon/ends-before-start': says('it ends before it starts', 'Check both moments.'),
  'reckon/not-within-a-day': says('it does not end within a day of its start', 'Check both moments.'),
  'reckon/does-not-divide-day': says(
    'the day is not a whole number of these intervals',
    'Give the number of feeds or flushes instead.',
  ),
  'reckon/goal-below-start': says('the goal is below the start', 'Check both.'),
  'reckon/longer-than-what-is-left': says('the hold is longer than the hours that are left', 'Check both.'),
  'reckon/longer-than-the-day': says('the holds are longer than the day', 'Check the hours.'),
  'reckon/not-a-span': ({ text }) => ({
    says: `${quoted(text)} is not a stretch of time`,
    remedy: 'Write it like 10:00-12:00; 15:30-16:00.',
  }),
  'reckon/nothing-in-it': says('there is none of it in it', 'Check the number.'),
  'reckon/full-strength-has-no-water': says('full strength has no water', 'Give the total or the formula.'),
  'reckon/water-only-thins': says('water cannot make it more concentrated', 'Check which is which.'),
  'reckon/final-below-water': says('the final volume is less than the water alone', 'Check both.'),
  'reckon/displacement-of-what': says(
    'displacement without the amount it belongs to',
    'Give the scoops or the grams that it is for.',
  ),
  'reckon/no-room-for-water': says('the powder alone would fill the volume', 'Check the wanted density.'),
  'reckon/frame-is-hamwi': says('Devine has no frame', 'Leave frame out, or ask for by=hamwi.'),
  'reckon/equation-for-others': ({ asked, fitting }) => ({
    says: `${String(asked)} was not made for this age and body mass index`,
    remedy: `Ask for version=${String(fitting)}, or leave version out.`,
  }),
  'reckon/no-sense': says('these numbers give no energy at all', 'Check temperature and ventilation.'),
  'reckon/ideal-begins-at-60-inches': says(
    'ideal weight begins at 60 inches (152.4 cm)',
    'Use a rule that takes actual weight.',
  ),
  'reckon/which-weight': says(
    'which weight is meant is not known',
    'Give weight, or birthWeight and currentWeight with ageDays.',
  ),
  'reckon/nothing-to-fall-from': says('the first value is zero', 'Check it.'),
  'reckon/no-valence': ({ of }) => ({
    says: `${String(of)} has no fixed charge, so mEq has no meaning`,
    remedy: 'Write it in mmol/L or mg/dL.',
  }),
  'reckon/half-a-window': says('a window has a beginning and an end', 'Give both start and until.'),
  'reckon/clock-times-only': says('a window is named by clock times', 'Write it like 08:00.'),
  'reckon/bag-below-irrigant': says(
    'less came out than was run in',
    'Check both; tell somebody if they are right.',
  ),
  'reckon/more-protein-than-energy': says('the protein alone has more energy than that', 'Check both.'),
};
