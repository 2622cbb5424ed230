/** What is wrong with an order, in English: by the code of the problem. */

import { clock, foundOf, hoursLast, limitOf, parts, plainly, tidy, withUnit } from '../said.ts';
import type { Data, Sentence, Words } from '../words.ts';
import { ENGLISH_FHIR_PROBLEMS } from './fhir.ts';
import { ENGLISH_SCAN_PROBLEMS } from './scan.ts';

const say = (says: string, remedy: string): Sentence => ({ says, remedy });

const MISSING: Readonly<Record<string, readonly [string, string]>> = {
  'two-identifiers': ['Fewer than two identifiers', 'Add the hospital number or date of birth.'],
  'dosing-weight': ['No dosing weight, which a child needs', 'Weigh, and write the weight with its date.'],
  'dosing-weight-date': ['The dosing weight has no date', 'Write the day it was taken.'],
  'access-device': ['No feeding tube is named', 'Write the device and its lumens.'],
  'feed-lumen': ['The order does not say which lumen is fed into', 'Name the lumen.'],
  'tip-site': [
    'The tip site of the lumen fed into is not written',
    'Write gastric, duodenal or jejunal once confirmed.',
  ],
  'medicine-lumen': ['The order does not say which lumen takes medicines', 'Name the lumen.'],
  regimen: ['No rate or volume with a schedule', 'Write how much, how fast and when.'],
  'rate-or-volume': ['A cyclic feed has neither rate nor volume', 'Write one or both.'],
  times: ['No times are written', 'Write the times of day.'],
  water: ['No water is ordered', 'Write its kind, how much and how often.'],
  'water-amount': ['Water is ordered without an amount', 'Write how much and how often.'],
  formula: ['No formula is ordered', 'Write the formula and its strength.'],
  method: ['The method is not written', 'Write pump, gravity or syringe.'],
  prescriber: ['No prescriber is named', 'Ask who orders this.'],
  'prescribed-at': ['The order has no date and time', 'Write when it was ordered.'],
};

const missing = ({ what, of }: Data): Sentence => {
  const [says, remedy] = MISSING[String(what)] ?? [`Missing: ${plainly(what)}`, 'Write it.'];
  return say(`${says}${of === undefined ? '' : ` (${plainly(of)})`}.`, remedy);
};

const policy = (data: Data): string => (data.key === undefined ? '' : ` (local policy ${plainly(data.key)})`);
const when = (what: unknown): string => (what === 'goal' ? 'At its goal, ' : '');
const over = (thing: string, data: Data, then: string): Sentence =>
  say(tidy(`${when(data.what)}${thing} ${foundOf(data)} is over ${limitOf(data)}${policy(data)}.`), then);
const perKg = (data: Data): string =>
  `${withUnit(data.perKg, data.unit === 'mL' ? 'mL/kg' : 'mL/kg/h')} at ${plainly(data.weightKg)} kg`;

const CONFIRM = 'Ask the prescriber; a named person confirms or the order changes.';
const REORDER = 'Ask the prescriber for a new order.';

const tube: Words['problems'] = {
  'order/no-such-lumen': (data) =>
    say(
      `The device has no lumen called ${plainly(data.lumen)}; it has ${plainly(data.has) || 'none'}.`,
      'Name a lumen that is there.',
    ),
  'order/lumen-twice': (data) =>
    say(`Two lumens are called ${plainly(data.lumen)}.`, 'Give each its own name.'),
  'order/lumen-not-for': (data) =>
    say(
      `Lumen ${plainly(data.lumen)} is not for ${plainly(data.use)}; it is for ${plainly(data.uses)}.`,
      REORDER,
    ),
  'order/bolus-post-pyloric': (data) =>
    say(
      `A bolus into a ${plainly(data.tip)} tip: lumen ${plainly(data.lumen)}.`,
      'Never bolus past the stomach: ask for a pump feed or a gastric lumen.',
    ),
  'order/bolus-post-pyloric-allowed': (data) =>
    say(`A bolus into a ${plainly(data.tip)} tip, which local policy allows${policy(data)}.`, CONFIRM),
  'order/post-pyloric-without-pump': (data) =>
    say(
      `Feed by gravity into a ${plainly(data.tip)} tip.`,
      'A pump is usual past the stomach. A named person confirms.',
    ),
  'order/tip-unusual': (data) =>
    say(
      `A ${plainly(data.device)} tube with a ${plainly(data.tip)} tip; usual is ${plainly(data.usual)}.`,
      'Check the record of its placement. A named person confirms.',
    ),
  'order/medicine-post-pyloric': (data) =>
    say(
      `Medicines go past the stomach: ${plainly(data.medicines)}.`,
      'Ask the pharmacist which of them may.',
    ),
};

const feed: Words['problems'] = {
  'order/feed-not-listed': (data) =>
    say(
      `${plainly(data.feed)} is not in the feed list.`,
      data.nearest === null
        ? 'Add it to the feed list, or choose one from it.'
        : `Is ${plainly(data.nearest)} meant?`,
    ),
  'order/allergy': (data) =>
    say(
      `Allergy to ${plainly(data.allergy)}, and ${plainly(data.feed)} contains ${plainly(data.allergen)}.`,
      'Do not give it. Call the prescriber.',
    ),
  'order/allergy-possible': (data) =>
    say(
      `Allergy to ${plainly(data.allergy)}; ${plainly(data.allergen)} may contain it.`,
      'Read the label with the pharmacist or dietitian. A named person confirms.',
    ),
  'order/allergies-to-compare': (data) =>
    (data.allergies as readonly unknown[]).length === 0
      ? say(
          `No allergies are written; this feed contains ${plainly(data.allergens) || 'no listed allergen'}.`,
          'Ask, and compare.',
        )
      : say(
          `Allergies that matched nothing by name: ${plainly(data.allergies)}; this feed contains ${plainly(data.allergens) || 'no listed allergen'}.`,
          'Compare them yourself.',
        ),
  'order/density-off': (data) =>
    say(
      `The order says ${foundOf(data)}, the feed list ${withUnit(data.listed, data.unit)}: ${plainly(data.factor)} times as much.`,
      'A unit has slipped. Ask the prescriber.',
    ),
  'order/density-differs': (data) =>
    say(
      `The order says ${foundOf(data)}, the feed list ${withUnit(data.listed, data.unit)} for ${plainly(data.feed)}.`,
      'Is it the same feed? A named person confirms.',
    ),
  'order/strength-impossible': (data) =>
    say(`Strength ${parts(data.value)} is not a part of full strength.`, 'Write it like 3/4 or full.'),
  'order/closed-mixed': (data) =>
    say(
      `${plainly(data.mixed)} cannot be mixed into a closed container of ${plainly(data.feed)}.`,
      'Choose a feed that is poured, or give it apart.',
    ),
  'order/closed-poured': (data) =>
    say(
      `To mix in ${plainly(data.mixed)}, ${plainly(data.feed)} must be poured and is then an open feed.`,
      CONFIRM,
    ),
  'order/human-milk-no-number': () =>
    say(
      'Human milk is matched with a number as well as a name, and none is written.',
      'Add the hospital number. A named person confirms.',
    ),
  'order/feed-expired': () => say('The feed has expired before it would be given.', 'Take another.'),
  'order/feed-prepared-later': () =>
    say(
      'The feed is said to be prepared after it would be given.',
      'Check the date and time it was prepared.',
    ),
  'order/diluted': (data) =>
    say(
      `The feed is given at ${parts(data.strength)} strength.`,
      'Full strength from the start is usual; water makes it a handled feed with a short limit.',
    ),
  'order/powder': (data) =>
    say(
      `${plainly(data.feed)} is made from powder, which is not sterile.`,
      'For newborns and people with weak defences a sterile liquid is preferred.',
    ),
};

const dates: Words['problems'] = {
  'order/dates-contradict': (data) =>
    say(
      `Dates contradict each other: ${DATES[String(data.what)] ?? plainly(data.what)}.`,
      'Correct the one that is wrong.',
    ),
  'order/ended': () => say('The order has ended.', 'Ask the prescriber whether feeding goes on.'),
  'order/no-start': () => say('The order does not say when it begins.', 'It is taken to hold from now.'),
  'order/prescribed-later': () => say('The order was written after it begins.', 'Check both times.'),
  'order/hold-contradicts': (data) =>
    say(
      data.what === 'id-twice'
        ? `Two holds are called ${plainly(data.hold)}.`
        : `Hold ${plainly(data.hold)} ends before it begins.`,
      'Correct the hold.',
    ),
  'order/hold-without-end': (data) =>
    say(
      `Hold ${plainly(data.hold)} (${plainly(data.why)}) has no end yet.`,
      'Nothing is planned after it begins. Ask when feed may run again.',
    ),
  'order/holds-overlap': (data) =>
    say(`Holds overlap: ${plainly(data.holds)}.`, 'The time they share is counted once.'),
  'order/time-off-clock': (data) =>
    say(`${plainly(data.minutes)} minutes after midnight is no time of day.`, 'Write it like 08:00.'),
  'order/time-twice': (data) => say(`${clock(data.time)} is written twice.`, 'Write each time once.'),
  'order/feeds-overlap': (data) =>
    say(
      `The feed at ${clock(data.at)} takes ${foundOf(data)} and the next is due at ${clock(data.next)}.`,
      REORDER,
    ),
  'order/window-empty': (data) =>
    say(`The feed begins and ends at ${clock(data.from)}.`, 'Write when it ends.'),
};

const DATES: Readonly<Record<string, string>> = {
  'born-later': 'born after today',
  'weighed-later': 'weighed after today',
  'weighed-before-birth': 'weighed before birth',
  'ends-before-start': 'the order ends before it begins',
  'expires-before-prepared': 'the feed expires before it is prepared',
};

const CONTRADICTION: Readonly<Record<string, (data: Data) => string>> = {
  window: (data) => `The rate gives ${foundOf(data)} in the window; the order wants ${limitOf(data)}`,
  base: (data) => `The base rate gives ${foundOf(data)} a day; the order wants ${limitOf(data)}`,
  'base-over-most': (data) => `The base rate ${foundOf(data)} is over the order's most, ${limitOf(data)}`,
  'most-too-slow': (data) =>
    `${foundOf(data)} a day cannot be given: the most allowed gives ${limitOf(data)}`,
  'over-day-most': (data) => `The order gives ${foundOf(data)} a day; its own most is ${limitOf(data)}`,
  'goal-over-day-most': (data) =>
    `The goal gives ${foundOf(data)} a day; the order's own most is ${limitOf(data)}`,
};

const amounts: Words['problems'] = {
  'order/not-credible': (data) =>
    say(
      `${plainly(data.path)}: ${withUnit(data.value, data.unit)} is outside what can be meant (${data.least === undefined ? '' : `${plainly(data.least)} to `}${withUnit(data.most, data.unit)}).`,
      'Check the number and its unit.',
    ),
  'order/amounts-contradict': (data) =>
    say(
      `${CONTRADICTION[String(data.what)]?.(data) ?? `${foundOf(data)} against ${limitOf(data)}`}.`,
      REORDER,
    ),
  'order/over-own-rate': (data) =>
    over('the rate', data, 'It is over what the order itself allows. Ask for a new order.'),
  'order/short-by-rounding': (data) =>
    say(
      `${withUnit(data.short, data.unit)} of ${limitOf(data)} are lost by rounding the rate.`,
      'Nothing to do.',
    ),
  'order/rate-between-steps': (data) =>
    say(
      `The rate of formula is ${foundOf(data)} of mixture; the pump is set to ${limitOf(data)}, which gives ${withUnit(data.less, data.unit)} less.`,
      'Nothing to do, unless the whole amount matters: then ask for a rate of mixture.',
    ),
  'order/done-early': (data) =>
    say(
      `Without a hold ${limitOf(data)} have gone in ${hoursLast(data.earlyHours)} before the end.`,
      'The feed stops at the volume.',
    ),
  'order/advance-contradicts': (data) =>
    say(
      data.what === 'away-from-goal'
        ? `The steps start at ${withUnit(data.start, data.unit)}, past the goal of ${withUnit(data.goal, data.unit)}.`
        : `${foundOf(data)} is not between the start, ${withUnit(data.start, data.unit)}, and the goal, ${withUnit(data.goal, data.unit)}.`,
      REORDER,
    ),
  'order/advances': (data) =>
    say(
      `Steps up from ${withUnit(data.start, data.unit)} by ${withUnit(data.step, data.unit)} every ${withUnit(data.everyHours, 'h')} to ${withUnit(data.goal, data.unit)}.`,
      'Each step only if tolerated, and confirmed by somebody.',
    ),
  'order/method-contradicts': (data) =>
    say(`A ${plainly(data.regimen)} feed cannot be given by ${plainly(data.method)}.`, REORDER),
  'order/method-unusual': (data) =>
    say(`A ${plainly(data.regimen)} feed by ${plainly(data.method)} is unusual.`, CONFIRM),
};

const ceilings: Words['problems'] = {
  'order/rate-over-local': (data) => over('the rate', data, CONFIRM),
  'order/rate-over-per-kg': (data) => over(`the rate (most ${perKg(data)})`, data, CONFIRM),
  'order/bolus-over-local': (data) => over('one feed of', data, CONFIRM),
  'order/bolus-over-usual': (data) => over('one feed of', data, CONFIRM),
  'order/bolus-over-per-kg': (data) => over(`one feed (most ${perKg(data)}) of`, data, CONFIRM),
  'order/faster-than-least': (data) =>
    say(`${foundOf(data)} for one feed is faster than ${limitOf(data)}${policy(data)}.`, CONFIRM),
  'order/over-fluid-limit': (data) => over('all fluid together,', data, CONFIRM),
  'order/over-refeeding-ceiling': (data) =>
    say(
      `All energy together, ${foundOf(data)}, is over ${limitOf(data)}: ${plainly(data.perKg)} kcal/kg at ${plainly(data.weightKg)} kg${policy(data)}.`,
      'Refeeding caution: call the prescriber; a named person confirms.',
    ),
  'order/refeeding-unchecked': (data) =>
    say(
      `Refeeding caution cannot be checked: ${plainly(data.lacks)} is missing.`,
      'Supply it, or a named person confirms.',
    ),
};

const worthKnowing: Words['problems'] = {
  'order/policy-silent': (data) =>
    say(
      `Local policy says nothing under ${plainly(data.key)}, so ${plainly(data.about)} could not be judged.`,
      'Ask who owns the policy.',
    ),
  'order/away-from-needs': (data) =>
    say(
      `The order gives ${foundOf(data)} of ${plainly(data.what)}; the need is ${limitOf(data)}.`,
      'Tell the dietitian.',
    ),
  'order/water-under-needs': (data) =>
    say(`All water together is ${foundOf(data)}; the need is ${limitOf(data)}.`, 'Ask about more water.'),
  'order/holds-cost': (data) =>
    say(
      `Holds for ${plainly(data.medicines)} take ${withUnit(data.offMinutes, 'min')} and ${foundOf(data)}.`,
      data.madeUp === true
        ? 'The programme makes it up within its ceiling.'
        : 'It is not made up: ask whether the rate should be.',
    ),
  'order/no-catch-up': (data) =>
    say(
      `Lost volume will not be made up: ${plainly(data.why)}.`,
      'What is lost is said; ask the prescriber.',
    ),
  'order/water-kind': (data) =>
    say(
      `Water is ${plainly(data.value)}; local policy says ${plainly(data.limit)}${policy(data)}.`,
      'Check which is meant.',
    ),
  'order/water-seldom': (data) =>
    say(
      `Water every ${foundOf(data)} is less often than every ${limitOf(data)}${policy(data)}.`,
      'The tube may block: ask.',
    ),
  'order/water-without-feeds': (data) =>
    say(
      `Water is ordered around feeds, and a ${plainly(data.regimen)} feed has none.`,
      'Write times or an interval.',
    ),
  'order/water-contradicts': (data) =>
    say(`A second bag of water needs a pump, and the method is ${plainly(data.method)}.`, REORDER),
  'order/confirmation-idle': (data) =>
    say(
      `${plainly(data.by)} confirmed ${plainly(data.rule)}, which asks nothing here.`,
      'Check which problem was meant.',
    ),
  'order/cannot-check': (data) =>
    say(`Limits by weight or age cannot be checked: ${plainly(data.lacks)} is missing.`, 'Supply it.'),
};

const plan: Words['problems'] = {
  'plan/policy-silent': (data) =>
    say(
      `Local policy says nothing under ${plainly(data.key)} for this person.`,
      'Nothing is guessed: ask who owns the policy.',
    ),
  'plan/water-in-hold': (data) =>
    say(
      `Ordered water falls into a hold ${data.times === 1 ? 'once' : `${plainly(data.times)} times`}: ${withUnit(data.volume, data.unit)} are left out.`,
      'Ask whether it may be given later.',
    ),
  'plan/no-pack': (data) =>
    say(
      `The feed list names no container of ${plainly(data.feed)} to spike.`,
      'Add its sizes to the feed list.',
    ),
};

export const ENGLISH_PROBLEMS: Words['problems'] = {
  'order/missing': missing,
  ...tube,
  ...feed,
  ...dates,
  ...amounts,
  ...ceilings,
  ...worthKnowing,
  ...plan,
  ...ENGLISH_FHIR_PROBLEMS,
  ...ENGLISH_SCAN_PROBLEMS,
};
