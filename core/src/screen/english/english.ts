/** The English catalogue. Plain, calm, the trade's own terms; the unit is always written by us. */

import type { TaskKind } from '../../plan/plan.ts';
import { showDuration } from '../time.ts';
import type { Words } from '../words.ts';
import { ENGLISH_INFEASIBLE } from './infeasible.ts';
import { ENGLISH_ISSUES } from './issues.ts';
import { ENGLISH_PROBLEMS } from './problems.ts';
import { ENGLISH_STANDING } from './standing.ts';

/** Tasks whose container or feed is told on a line of its own. */
const TOLD_ELSEWHERE: ReadonlySet<TaskKind> = new Set([
  'put-up-container',
  'take-down-container',
  'put-up-water-bag',
]);

/** A hold made by a medicine is named for it. */
const holdName = (about: string): string => about.replaceAll('medicine:', '');

export const ENGLISH: Words = {
  language: 'en',
  months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
  onDay: (time, day) => `${time} on ${day}`,
  tasks: {
    'put-up-container': 'put up container',
    'take-down-container': 'take down container',
    'change-set': 'change the set',
    'start-feed': 'start feed',
    'stop-feed': 'stop feed',
    'change-rate': 'change the rate',
    'give-feed': 'give feed',
    'give-bolus': 'give bolus',
    flush: 'flush with water',
    'give-water': 'give water',
    'put-up-water-bag': 'put up water bag',
    'give-medicine': 'give medicine',
    'give-module': 'give module in water',
    'check-position': 'check head of bed',
    'check-tube': 'check tube at its mark',
    'check-tolerance': 'check tolerance',
    'measure-residual': 'measure residual',
    'confirm-step': 'ask: step up',
    'mouth-care': 'mouth care',
    weigh: 'weigh',
    'measure-glucose': 'measure glucose',
    'take-bloods': 'take bloods',
  },
  taskAbout: ({ kind, name, about, beside, isHold }) => {
    if (about === null || TOLD_ELSEWHERE.has(kind)) return name;
    if (isHold) return `${name} (${holdName(about)})`;
    if (kind === 'flush') return beside === null ? name : `${name} ${beside} ${about}`;
    if (kind === 'check-tube') return about === 'ph' ? 'check tube by pH' : 'check tube at its mark';
    if (kind === 'give-module') return `give ${about} in water`;
    if (about === 'meal') return name;
    return `${name} ${about}`;
  },
  because: {
    'hang-limit': 'hang limit',
    'set-limit': 'set is due',
    expiry: 'product expires',
    'prepared-limit': 'limit since prepared',
    'opened-limit': 'limit since opened',
    'label-limit': "the product's own limit",
    'feed-ends': 'feed ends',
  },
  problems: ENGLISH_PROBLEMS,
  issues: ENGLISH_ISSUES,
  infeasible: ENGLISH_INFEASIBLE,
  gaps: {
    hold: 'on hold',
    'hold-end-unknown': 'on hold, and nobody has said until when',
    'volume-reached': 'the volume has been reached',
    'maximum-reached': "the order's most for the day has been reached",
    'nothing-to-set': 'nothing is left to give at a rate that can be set',
    'amount-not-known': 'the amount is not known',
    'day-start-not-known': 'local policy does not say when the feeding day starts',
  },
  losses: {
    'no-protocol': 'the order names no way to make it up',
    'refeeding-caution': 'not made up under refeeding caution',
    'open-intolerance': 'not made up while the feed is not tolerated',
    advancing: 'not made up while stepping up',
    'first-day': 'not made up on the first day',
    child: 'not made up for a child unless the order says so',
    'age-not-known': 'not made up while the age is not known',
    'post-pyloric': 'not made up past the stomach unless the order says so',
    'tip-not-known': 'not made up while the tip site is not known',
    'over-fluid-limit': 'not made up over the fluid limit',
    'ceiling-not-known': 'not made up while local policy names no ceiling',
    'no-time-left': 'no time is left',
    ceiling: 'the rate is at its ceiling',
    rounding: 'the rate is rounded down',
    'next-feed': 'the next feed begins',
    'received-less': 'less was received',
  },
  levels: { stop: 'Stop', ask: 'Ask', note: 'Note' },
  provenance: {
    read: 'read in its source',
    secondary: 'read in a text that cites it',
    'from-memory': 'from memory: check before use',
    'common-practice': 'common practice',
    facility: "the facility's own",
    derived: 'worked out from published figures',
  },
  basis: {
    order: (path) => `order: ${path}`,
    feedList: (feed, field) => `feed list: ${feed}, ${field}`,
    policy: (key, setBy, source, provenance) =>
      `local policy ${key}, set by ${setBy}; ${source}, ${provenance}`,
    published: (source, provenance) => `${source}, ${provenance}`,
    entry: (id) => `entry ${id}`,
    asked: (name) => `given: ${name}`,
    arithmetic: 'worked out',
    working: 'worked out above',
  },
  rounded: {
    down: (step) => `rounded down to a whole ${step}`,
    up: (step) => `rounded up to a whole ${step}`,
    'half-up': (step) => `rounded to the nearest ${step}, half upward`,
  },
  plan: {
    title: (who) => `Feeding plan for ${who}`,
    next: 'NEXT',
    pour: (amount) => `pour ${amount}`,
    spike: (amount) => `spike a ${amount} container`,
    newSet: 'new set',
    startAt: (rate) => `run at ${rate}`,
    deliver: (volume) => `volume to be delivered ${volume}`,
    downBy: (time) => `down by ${time}`,
    because: (why) => `(${why})`,
    dryAt: (time) => `dry at ${time}`,
    dryEarliest: (time) => `as early as ${time} if stepped up`,
    prime: (volume) => `prime ${volume}`,
    leftOver: (volume) => `left over ${volume}`,
    alreadyUp: 'already up',
    runs: 'RUNS',
    stopped: (why, holds) => `nothing runs: ${why}${holds === '' ? '' : ` (${holds})`}`,
    containers: 'CONTAINERS',
    waterBags: 'WATER BAGS',
    visits: 'VISITS',
    day: 'THIS FEEDING DAY',
    none: 'none',
    noPlan: 'No plan until this is settled.',
    formula: 'formula',
    energy: 'energy',
    protein: 'protein',
    water: (formula, flushes, total) => `water ${formula} in feed + ${flushes} given = ${total}`,
    ordered: (volume) => `ordered ${volume}`,
    needed: (amount) => `need ${amount}`,
    carton: (which, take, left, keep) => `${which}: take ${take}, ${left} left${keep}`,
    newCarton: 'new carton',
    openCarton: (id) => `open carton ${id}`,
    keptCarton: 'kept carton',
    keepUntil: (time) => `, keep cold until ${time}`,
    throwAway: ', throw away',
    shortfall: (volume) => `${volume} of what was ordered cannot be given: ask the prescriber`,
    lost: (volume, why) => `${volume}: ${why}`,
    nothing: 'nothing runs',
    beginsLater: (time) => `the order begins at ${time}`,
    stepUp: (to) => `ask: step up to ${to}?`,
    ifEaten: (lessThan) => `only if less than ${lessThan} of the meal was eaten`,
    mixed: (formula, water) => `mixed from ${formula} of formula and ${water} of water`,
    inMixture: (formula, mixture) => `${formula} in ${mixture} of mixture`,
    waters: { tap: 'tap water', 'cooled-boiled': 'cooled boiled water', sterile: 'sterile water' },
    byPump: (volume, every) => `the pump gives ${volume} every ${every}`,
    enteralOnly:
      'Enteral use only – not for intravenous use. Trace the line to its origin at every connection.',
    defer: 'The order, local policy and licensed judgement decide.',
    confirm: (key) => `confirm with --confirm ${key}=…`,
    confirmedBy: (name) => `confirmed by ${name}`,
    strength: (strength) => `${strength} strength`,
    full: 'full',
    within: (from, until) => `${from}–${until}`,
  },
  standing: ENGLISH_STANDING,
  lasts: showDuration,
};
