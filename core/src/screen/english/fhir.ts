/** What stands between a FHIR document and a plan, in English: by the code of the problem or the issue. */
import { plainly } from '../said.ts';
import type { Data, Sentence, Words } from '../words.ts';

type Say = (data: Data) => Sentence;

const say = (says: string, remedy: string): Sentence => ({ says, remedy });
const quoted = (value: unknown): string => `“${plainly(value)}”`;
const instead = (likely: unknown): string =>
  likely === null || likely === undefined ? '' : ` Likely meant: ${plainly(likely)}.`;

const SENDER = 'Ask whoever sent it for a corrected order.';

const standing: Readonly<Record<string, Say>> = {
  'fhir/not-in-force': ({ status }) =>
    say(`The order’s status is ${plainly(status)}: it is not in force.`, 'Ask for the order that is.'),
  'fhir/not-authorised': ({ status, intent }) =>
    say(
      `Status ${plainly(status)}, intent ${plainly(intent)}: nobody has authorised it as an order.`,
      'Confirm that it has been authorised.',
    ),
  'fhir/nothing-ordered': () => say('Nothing is ordered in it.', SENDER),
  'fhir/no-tube-feeding': ({ name }) =>
    say(`It orders ${plainly(name)} and no feeding by tube.`, 'It is not for here.'),
  'fhir/by-mouth-too': ({ name }) =>
    say(`It orders ${plainly(name)} too, which is not planned here.`, 'See to it separately.'),
  'fhir/other-version': ({ found, name, version }) =>
    say(`${plainly(found)} means nothing in FHIR ${plainly(version)}: there it is ${plainly(name)}.`, SENDER),
  'fhir/wrong-type': ({ expected, found, value, path }) =>
    say(
      `${plainly(path)} is a ${plainly(found)} (${quoted(value)}) where a ${plainly(expected)} is wanted.`,
      SENDER,
    ),
  'fhir/must-understand': ({ name }) =>
    say(
      `${plainly(name)} changes what the order means and is not understood here.`,
      'Read the order where it was written.',
    ),
  'fhir/not-used': ({ path, value }) => say(`Not used: ${plainly(path)} (${plainly(value)}).`, ''),
  'fhir/no-place-for': ({ what, answers }) =>
    say(
      `FHIR has no place for ${plainly(what)}.`,
      `Supply it: ${(answers as readonly string[]).map((key) => `--confirm ${key}=…`).join(' ')}`,
    ),
  'fhir/setting-assumed': ({ setting }) =>
    say(`Taken as an order for a ${plainly(setting)}.`, 'If not: --confirm setting=…'),
  'answer/instead': ({ key, written, answer }) =>
    say(`${plainly(key)}: ${plainly(answer)} was answered in the place of ${plainly(written)}.`, ''),
  'answer/idle': ({ key, answer }) =>
    say(
      `${plainly(key)}=${plainly(answer)} answers nothing that was asked.`,
      'Check which question was meant.',
    ),
};

const amounts: Readonly<Record<string, Say>> = {
  'fhir/density-impossible': ({ written, kcalPerMl, likely }) =>
    say(
      `No feed has ${plainly(written)}: by the letter ${plainly(kcalPerMl)} kcal/mL.${instead(likely === null ? null : `${plainly(likely)} kcal/mL`)}`,
      'Ask the prescriber which is meant.',
    ),
  'fhir/unit-missing': ({ value }) => say(`${plainly(value)} has no unit.`, 'Say the unit that is meant.'),
  'fhir/unit-not-valid': ({ value, unit, likely }) =>
    say(
      `${plainly(value)} ${plainly(unit)}: not a valid unit.${instead(likely)}`,
      'Say the unit that is meant.',
    ),
  'fhir/unit-multiplies': ({ value, unit, likely }) =>
    say(
      `${plainly(value)} ${plainly(unit)}: this unit multiplies by the time instead of dividing.${instead(likely)}`,
      'Say the unit that is meant.',
    ),
  'fhir/unit-of-another-kind': ({ value, unit, likely }) =>
    say(
      `${plainly(value)} ${plainly(unit)} is another kind of quantity than is wanted.${instead(likely)}`,
      'Say the unit that is meant.',
    ),
  'fhir/unit-system-unknown': ({ value, unit, system }) =>
    say(
      `${plainly(value)} ${plainly(unit)}: the unit is from ${plainly(system)}, not UCUM.`,
      'Say the unit that is meant.',
    ),
  'fhir/unit-without-system': ({ value, unit }) =>
    say(`${plainly(value)} ${plainly(unit)}: the unit’s system is not said.`, 'Say the unit that is meant.'),
  'fhir/unit-display-disagrees': ({ value, unit, display }) =>
    say(
      `${plainly(value)} is coded ${plainly(unit)} and shown as ${plainly(display)}.`,
      'Say the unit that is meant.',
    ),
  'fhir/unit-by-display': ({ unit }) => say(`The unit ${plainly(unit)} is written without its code.`, ''),
  'fhir/value-missing': ({ path }) => say(`${plainly(path)} has no value.`, SENDER),
  'fhir/number-too-long': ({ value }) => say(`${plainly(value)} has more digits than can be meant.`, SENDER),
  'fhir/not-positive': ({ written }) => say(`${plainly(written)} is not more than nothing.`, SENDER),
  'fhir/not-credible': ({ written, most, unit }) =>
    say(
      `${plainly(written)} cannot be meant (over or under what is credible, at most ${plainly(most)} ${plainly(unit)}).`,
      SENDER,
    ),
  'fhir/comparator': ({ comparator, value }) =>
    say(`${plainly(comparator)} ${plainly(value)} is no one amount.`, SENDER),
  'fhir/rate-too-fine': ({ written, mlPerHour }) =>
    say(
      `${plainly(written)} is ${plainly(mlPerHour)} mL/h, finer than a pump can be set.`,
      'Ask which rate to run.',
    ),
  'fhir/two-rates': () => say('A rate is written twice, as a quantity and as a ratio.', SENDER),
  'fhir/maximum-without-time': ({ written, ml }) =>
    say(`At most ${plainly(written)} (${plainly(ml)} mL), but not in what time.`, 'Ask how much in a day.'),
  'fhir/maximum-of-another-time': ({ written }) =>
    say(`At most ${plainly(written)} is not the most in a day.`, 'Ask how much in a day.'),
  'fhir/past-maximum': ({ firstDay, laterDay, most, at }) =>
    say(
      `The schedule comes to ${firstDay === null ? '' : `${plainly(firstDay)} in the first 24 h and `}${plainly(laterDay)} a day, past its maximum of ${plainly(most)}${at === null ? '' : `, reached at ${plainly(at)}`}.`,
      'Ask the prescriber which stands; another maximum: --confirm maximumMlPerDay=…',
    ),
  'fhir/maximum-needs-hours': ({ most }) =>
    say(`Feeding all day has no window in which to stop at ${plainly(most)}.`, 'Ask in which hours it runs.'),
  'fhir/day-comes-to': ({ firstDay, laterDay, most }) =>
    say(
      `A day comes to ${plainly(laterDay ?? firstDay)}${firstDay === null || firstDay === laterDay ? '' : `, the first 24 h to ${plainly(firstDay)}`}${most === null ? '' : `; the maximum is ${plainly(most)}`}.`,
      '',
    ),
};

const when: Readonly<Record<string, Say>> = {
  'fhir/zone-missing': () => say('The order’s times have no time zone.', 'Say the zone of the ward’s clock.'),
  'fhir/day-without-time': ({ value }) =>
    say(`${plainly(value)} is a day without a time.`, 'Ask at what time.'),
  'fhir/no-offset': ({ value }) =>
    say(`${plainly(value)} has no offset.`, 'Say whether it is by the ward’s clock or in UTC.'),
  'fhir/not-a-moment': ({ value }) => say(`${quoted(value)} is no moment.`, SENDER),
  'fhir/ends-before-start': () => say('It ends before it starts.', SENDER),
  'fhir/clock-differs': ({ utc, local }) =>
    say(`Written ${plainly(utc)}: the ward’s clock shows ${plainly(local)}.`, 'Check that this is meant.'),
  'fhir/end-without-moment': ({ name }) =>
    say(`When it ends is written as ${plainly(name)}, without a moment.`, 'Ask when it ends.'),
  'fhir/length-without-unit': ({ unit }) =>
    say(`A length of time has no usable unit (${plainly(unit)}).`, SENDER),
  'fhir/length-missing': () => say('How long one feed takes is not said.', 'Ask how many minutes.'),
  'fhir/duration-range': ({ leastMinutes, most }) =>
    say(
      `One feed takes from ${plainly(leastMinutes)} minutes up to ${plainly(most)}.`,
      'Ask how many minutes.',
    ),
  'fhir/longer-than-a-day': ({ hours }) => say(`One day’s feed takes ${plainly(hours)} h.`, SENDER),
  'fhir/not-a-count': ({ value }) => say(`${plainly(value)} times is no count.`, SENDER),
  'fhir/not-a-time': ({ value }) => say(`${quoted(value)} is no time of the day to the minute.`, SENDER),
  'fhir/not-every-day': () => say('It is not for every day.', 'Ask for an order for each kind of day.'),
  'fhir/times-disagree': ({ often, likely }) =>
    say(`${plainly(often)} times a day, at ${plainly(likely)}: the two disagree.`, 'Ask at what times.'),
  'fhir/times-not-fixed': ({ often, inHours, likely }) =>
    say(
      `${plainly(often)} times in ${plainly(inHours)} h does not fix the times.${instead(likely)}`,
      'Ask at what times.',
    ),
  'fhir/schedule-by-code': ({ value }) =>
    say(`${plainly(value)} does not say at what times.`, 'Say the times of this ward.'),
  'fhir/schedule-by-event': ({ value }) =>
    say(`${plainly(value)} (meals, sleep) does not say at what times.`, 'Say the times of this ward.'),
  'fhir/schedule-by-dates': () =>
    say('It is for single dates and not for every day.', 'Ask at what times of the day.'),
  'fhir/schedule-open': ({ value }) => say(`How often is a range (${plainly(value)}).`, 'Ask at what times.'),
  'fhir/schedule-code-beside': ({ value }) =>
    say(`Beside the schedule stands ${plainly(value)}.`, 'Check that they agree.'),
  'fhir/when-needed': ({ reason }) =>
    say(
      `It is to be given when needed${reason === null ? '' : ` (${plainly(reason)})`}.`,
      'Ask for set times.',
    ),
  'fhir/volume-without-times': () => say('A volume without times.', 'Ask at what times.'),
  'fhir/once-a-day': ({ volume, rate }) =>
    say(
      `${plainly(volume)} once a day${rate === null ? '' : ` at ${plainly(rate)}`}: a window, one feed, or a target that may be made up.`,
      'Ask which is meant.',
    ),
  'fhir/amounts-contradict': ({ volume, rate, minutes, minutesByRate }) =>
    say(
      `${plainly(volume)} at ${plainly(rate)} takes ${plainly(minutesByRate)} min, not ${plainly(minutes)}.`,
      SENDER,
    ),
  'fhir/administrations-mixed': () =>
    say('Its administrations are no one regimen.', 'Ask for an order for each.'),
  'fhir/steps-without-end': ({ steps, together }) =>
    say(
      `Rates without an end, ${plainly(steps)}: by the letter ${plainly(together)} together.`,
      'Confirm that each replaces the one before.',
    ),
  'fhir/steps-without-times': () => say('Several steps, and one has no beginning.', SENDER),
  'fhir/steps-uneven': ({ rates }) =>
    say(
      `${plainly(rates)}: not an even climb, which no plan steps through by itself.`,
      'Say which rate to run now.',
    ),
  'fhir/steps-become-advancement': ({ everyMinutes }) =>
    say(`Steps every ${plainly(Number(everyMinutes) / 60)} h: none is taken until somebody confirms it.`, ''),
};

const what: Readonly<Record<string, Say>> = {
  'fhir/route-intravenous': ({ route }) =>
    say(`The route is a vein: ${plainly(route)}.`, 'Do not give. Call the prescriber.'),
  'fhir/route-no-tube': ({ route }) => say(`The route is not a tube: ${plainly(route)}.`, SENDER),
  'fhir/routes-several': ({ codes }) => say(`More than one route: ${plainly(codes)}.`, SENDER),
  'fhir/device-unsaid': () => say('The route does not say which kind of tube.', 'Look at the tube and say.'),
  'fhir/device-disagrees': ({ routed, called }) =>
    say(
      `The route is for a ${plainly(routed)} tube${called === null ? '' : `, the device is called ${plainly(called)}`}.`,
      'Look at the tube and say.',
    ),
  'fhir/lumen-unsaid': () => say('Which lumen is fed by is not said.', 'Ask whether gastric or jejunal.'),
  'fhir/sizes-differ': () => say('Tubes of two sizes are beside the order.', 'Look at the tube and say.'),
  'fhir/method-unsaid': () => say('What drives the feed is not said.', 'Say pump, gravity or syringe.'),
  'fhir/feed-not-listed': ({ names, candidates }) =>
    say(
      `${(names as readonly string[]).map(quoted).join(', ') || 'No formula'}: not on the feed list.`,
      `Say which feed; of about that density: ${plainly(candidates)}.`,
    ),
  'fhir/feeds-several': ({ candidates }) =>
    say(`It names several feeds of the list: ${plainly(candidates)}.`, 'Say which.'),
  'fhir/feed-answer-not-listed': ({ feed, candidates }) =>
    say(`${quoted(feed)} is not on the feed list.`, `One of: ${plainly(candidates)}.`),
  'fhir/full-strength': ({ feed }) =>
    say(`Taken as full strength: the density ordered is that of ${plainly(feed)}.`, ''),
  'fhir/strength-unsaid': () =>
    say(
      'The strength is not said, and the density ordered is not that of the feed.',
      'Ask for the strength.',
    ),
  'fhir/additive-without-amount': ({ additives }) =>
    say(`Without an amount: ${plainly(additives)}.`, 'Ask how much.'),
  'fhir/additive-answers': ({ additives, answers }) =>
    say(
      `${plainly(answers)} amounts for ${plainly(additives)} additives.`,
      'Give one for each, parted by “;”.',
    ),
  'fhir/text': ({ text }) => say(`It says: ${quoted(text)}`, 'Not carried out here.'),
  'fhir/hold-in-text': ({ text }) =>
    say(
      `A hold stands only in the text: ${quoted(text)}`,
      'Ask in which hours it runs, and whether that is ordered.',
    ),
  'fhir/density-in-text': ({ text, field }) =>
    say(`The text says ${plainly(text)}, the field ${plainly(field)}.`, 'Ask which density is meant.'),
  'fhir/strength-in-text': ({ text }) =>
    say(`A strength stands only in the text: ${quoted(text)}`, 'Ask for the strength.'),
  'fhir/only-in-text': ({ topics, text }) =>
    say(
      `Only the text speaks of ${plainly(topics)}: ${quoted(text)}`,
      'A person reads it and deals with it.',
    ),
  'fhir/check-digit': ({ system, code }) =>
    say(
      `${plainly(code)} is no ${plainly(system)} code: its check digit fails.`,
      'Go by the words, and tell the sender.',
    ),
  'fhir/name-with-spaces': ({ written }) => say(`${quoted(written)} has spaces around it.`, ''),
};

const who: Readonly<Record<string, Say>> = {
  'fhir/no-patient': ({ type }) => say(`It is for a ${plainly(type)}, not for a patient.`, SENDER),
  'fhir/patient-unresolved': ({ reference }) =>
    say(
      `It is for ${plainly(reference)}, and the patient beside it is somebody else.`,
      'Do not use it. Ask whoever sent it.',
    ),
  'fhir/another-patient': ({ type, of }) =>
    say(`A ${plainly(type)} is about ${plainly(of)} and was left out.`, ''),
  'fhir/withdrawn': ({ type }) => say(`A ${plainly(type)} was withdrawn and is left out.`, ''),
  'fhir/older-measurement': ({ on }) => say(`An older measurement (${plainly(on)}) is left out.`, ''),
  'fhir/allergy-unseen': () =>
    say('It points to an allergy that cannot be seen here.', 'Say the allergies, or none.'),
  'fhir/food-modifier': ({ name, foods }) =>
    say(
      `${name === 'excludeFoodModifier' ? 'Foods to leave out' : 'Wishes for food'}: ${plainly(foods)}.`,
      'Compare them with what is in the feed.',
    ),
  'fhir/prescriber-unnamed': () => say('No prescriber is named.', 'Ask who ordered it.'),
};

/** What was answered is said with its answer, and asks nothing more. */
const settled =
  (one: Say): Say =>
  (data) => {
    const sentence = one(data);
    return data.answer === undefined || data.confirm === undefined
      ? sentence
      : say(sentence.says, `Answered: ${plainly(data.answer)}.`);
  };

export const ENGLISH_FHIR_PROBLEMS: Words['problems'] = Object.fromEntries(
  Object.entries({ ...standing, ...amounts, ...when, ...what, ...who }).map(([code, one]) => [
    code,
    settled(one),
  ]),
);

export const ENGLISH_FHIR_ISSUES: Words['issues'] = {
  'fhir/xml': () => say('this is FHIR as XML', 'Ask for it as JSON.'),
  'fhir/no-resource': () =>
    say('the document has no resourceType', 'Give a NutritionOrder, or a Bundle with one.'),
  'fhir/other-resource': ({ resourceType }) =>
    say(`a ${plainly(resourceType)} is no order`, 'Give a NutritionOrder, or a Bundle with one.'),
  'fhir/no-order': () => say('there is no NutritionOrder in the Bundle', 'Give a Bundle with one.'),
  'fhir/several-orders': ({ places }) =>
    say(`more than one order: ${plainly(places)}`, 'Give one order at a time.'),
  'fhir/required': ({ name }) => say(`FHIR requires ${plainly(name)}`, 'Complete the order first.'),
  'answer/unknown': ({ key, known }) =>
    say(`${quoted(key)} is nothing that is asked`, `One of: ${plainly(known)}.`),
  'answer/not-understood': ({ text, kind, example }) =>
    say(`${quoted(text)} is not a ${plainly(kind)}`, `Write it like ${plainly(example)}.`),
};
