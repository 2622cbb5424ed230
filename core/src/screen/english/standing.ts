/** What is true of a course, in English. */
import type { Volume } from '../../base/volume.ts';
import { showRate, showVolume } from '../number.ts';
import { plainly } from '../said.ts';
import type { StandingWords } from '../standing/words.ts';
import type { Data, Sentence } from '../words.ts';

const say = (says: string, remedy: string): Sentence => ({ says, remedy });
const ml = (value: unknown): string =>
  typeof value === 'number' ? showVolume(value as Volume) : 'what nobody read';
const rate = (value: unknown): string => showRate(Number(value) as never);
/** `water given` of `water-given/1`. */
const kindName = (kind: unknown): string =>
  String(kind)
    .replace(/\/\d+$/, '')
    .replaceAll('-', ' ');
const mixture = (value: unknown): string => {
  const { feed, strength } = value as { readonly feed: string; readonly strength: { n: number; d: number } };
  return strength.n === strength.d ? feed : `${feed} at ${strength.n}/${strength.d}`;
};

const CONTRADICTIONS: StandingWords['contradictions'] = {
  'counter-fell': ({ before, shows }: Data) =>
    say(
      `The counter showed ${ml(shows)} after ${ml(before)}, and nobody cleared it.`,
      'Was it cleared, or did the pump lose its count? What ran in between is an estimate.',
    ),
  'counter-against-rate': ({ counted, byRate }) =>
    say(
      `The counter says ${ml(counted)}; rate × time says ${ml(byRate)}.`,
      'Look at the pump and at what was recorded of it.',
    ),
  'more-than-was-filled': ({ container, held, drawn }) =>
    say(
      `${ml(drawn)} were drawn from container ${plainly(container)}, which held ${ml(held)}.`,
      'Was another put up, or more poured?',
    ),
  'left-against-delivered': ({ container, left, remaining }) =>
    say(
      `${ml(left)} were left in container ${plainly(container)}; by the account it should be ${ml(remaining)}.`,
      'Look at the pump, the counter and what was poured.',
    ),
  'container-not-up': ({ container }) =>
    say(
      `Container ${plainly(container)} was taken down, and by the record it was not up.`,
      'Was putting it up never charted?',
    ),
  'other-feed-than-ordered': ({ up, ordered }) =>
    say(`${mixture(up)} is up; ${mixture(ordered)} is ordered.`, 'Compare the container with the order.'),
  'order-changed-while-running': ({ order, rate: at }) =>
    say(
      `Order ${plainly(order)} was placed while feed ran at ${rate(at)}.`,
      'Compare the pump with the new order.',
    ),
  'resumed-unknown-rate': () =>
    say('The pump was resumed, and no rate is on record.', 'Read the rate from the pump and chart it.'),
  'fed-while-running': ({ rate: at }) =>
    say(
      `A feed was given while the pump ran at ${rate(at)}.`,
      'Was the pump stopped, and not charted as stopped?',
    ),
  'carton-overdrawn': ({ carton, remaining, taken }) =>
    say(
      `${ml(taken)} were taken from carton ${plainly(carton)}, which held ${ml(remaining)}.`,
      'Was another carton opened?',
    ),
  'lost-more-than-received': ({ over }) =>
    say(`${ml(over)} more were lost than had been given.`, 'Check what was lost, and what was given.'),
  'read-back-differs': ({ readBack, running }) =>
    say(
      `The pump was read back at ${rate(readBack)} and is charted as running at ${rate(running)}.`,
      'Look at the pump.',
    ),
  'likely-duplicate': ({ kind }) =>
    say(
      `The same was charted on two devices: ${kindName(kind)}.`,
      'If it was one thing, say which entry stays.',
    ),
  'orders-fork': ({ orders }) =>
    say(
      `Orders ${plainly(orders)} are in force at once.`,
      'No plan until all but one are stopped or replaced. Go on charting.',
    ),
};

export const ENGLISH_STANDING: StandingWords = {
  title: (who) => `Standing of ${who}`,
  asOf: (time, entries) => `at ${time}, from ${entries} entries`,
  now: 'NOW',
  runs: (at, since) => `runs at ${at} since ${since}`,
  standsStill: (why, since, lasted) => `nothing runs since ${since}: ${why}, ${lasted}`,
  held: (why, since, note) => `on hold since ${since}: ${why}${note === null ? '' : ` (${note})`}`,
  wouldHaveRun: (volume) => `, ${volume} at the rate before`,
  nothingRuns: 'nothing runs',
  noContainer: 'no container is up',
  container: (id, left, filled, putUp) => `container ${id}: ${left} left of ${filled}, put up at ${putUp}`,
  waterBag: (id, left, filled, putUp) => `water bag ${id}: ${left} left of ${filled}, put up at ${putUp}`,
  limitUnknown: 'down by: not known without a plan',
  pastLimit: (limit, why) => `past its limit: down by ${limit} (${why})`,
  carton: (id, left, opened) => `open carton ${id}: ${left} left, opened at ${opened}`,
  set: (putUp) => `set put up at ${putUp}`,
  lineOpen: (clamped, capped, time) =>
    `line ${clamped ? 'clamped' : 'not clamped'} and ${capped ? 'capped' : 'not capped'} at ${time}`,
  order: (id) => `order ${id} is in force`,
  nextOrder: (id, from) => `order ${id} takes its place from ${from}`,
  orderStopped: (id, time, reason) => `order ${id} was stopped at ${time}: ${reason}`,
  orderFork: (ids) => `orders ${ids} are in force at once: no plan, charting goes on`,
  noOrder: 'no order is in force',
  steps: (confirmed, since) =>
    `${confirmed} ${confirmed === 1 ? 'step' : 'steps'} up confirmed, the last at ${since}`,
  stepDeclined: (step, time, reason) => `step ${step} was declined at ${time}: ${reason}`,
  today: 'THIS FEEDING DAY',
  yesterday: 'THE FEEDING DAY BEFORE',
  received: (volume) => `received ${volume}`,
  ofOrdered: (volume, percent, soFar) => `of ${volume} ordered${soFar ? ' by now' : ''}: ${percent} %`,
  lessFasts: (volume) => `(${volume} less ordered fasts)`,
  notCompared: '(no single order to compare with)',
  estimated: (volume) => `${volume} of it by rate × time, not counted yet`,
  byRate: (volume) => `rate × time alone says ${volume}`,
  stoodStill: (why, lasted) => `stood still: ${why}, ${lasted}`,
  wentIn: (total, parts) => `in ${total}: ${parts}`,
  cameOut: (total, parts) => `out ${total}: ${parts}`,
  balance: (volume) => `balance ${volume}`,
  unmeasured: (what, times) => `${what} not measured, ${times} ${times === 1 ? 'time' : 'times'}`,
  otherEnergy: (name, amount) => `${name} runs: ${amount}`,
  feedNotListed: (feed) =>
    `${feed ?? 'a feed that nobody named'} is not in the feed list: left out of energy and protein`,
  tube: 'TUBE AND POSITION',
  tubePlaced: (time) => `placed at ${time}`,
  tubeOut: (time, how) => `the tube is out since ${time}${how === null ? '' : `: ${how}`}`,
  tubeBlocked: (lumen, time) => `${lumen ?? 'the tube'} is blocked since ${time}`,
  tubeMoved: 'moved since it was confirmed',
  confirmed: (how, time) => `confirmed by ${how} at ${time}`,
  notConfirmed: (how, time) => `not confirmed by ${how} at ${time}`,
  neverConfirmed: 'no check that confirmed it is on record',
  mark: (cm) => `at ${cm} cm`,
  reader: (who) => `read by ${who}`,
  headOfBed: (degrees, posture, time) =>
    `head of bed ${degrees}°${posture === null ? '' : `, ${posture}`} at ${time}`,
  tolerance: 'TOLERANCE',
  residual: (what, time) => `residual at ${time}: ${what}`,
  returned: (volume) => `${volume} given back`,
  discarded: (volume) => `${volume} thrown away`,
  residualRun: (count) => `${count} in a row over the volume that policy names`,
  vomited: (volume, time) => `vomited${volume === null ? '' : ` ${volume}`} at ${time}`,
  stool: (form, time) => `stool ${form} at ${time}`,
  distension: (degree, time) => `distension ${degree} at ${time}`,
  pain: (degree, onFeeding, time) => `pain ${degree}${onFeeding ? ', on feeding' : ''} at ${time}`,
  open: (signs) => `not borne well: ${signs}`,
  measured: 'WEIGHT AND LABORATORY',
  weight: (kg, time) => `${kg} kg at ${time}`,
  toSettle: 'TO SETTLE',
  unknown: (kind, count) =>
    `${count} ${count === 1 ? 'entry' : 'entries'} of kind ${kind}, which this release does not know: kept, and not in this standing`,
  devices: {
    nasogastric: 'nasogastric tube',
    orogastric: 'orogastric tube',
    nasoduodenal: 'nasoduodenal tube',
    nasojejunal: 'nasojejunal tube',
    gastrostomy: 'gastrostomy',
    'gastrostomy-button': 'gastrostomy button',
    'gastro-jejunal': 'gastro-jejunal tube',
    jejunostomy: 'jejunostomy',
  },
  pauses: {
    procedure: 'procedure',
    care: 'care',
    medicine: 'medicine',
    intolerance: 'not borne',
    tube: 'tube',
    equipment: 'equipment',
    fast: 'fast',
    other: 'another reason',
  },
  methods: {
    ph: 'pH',
    radiograph: 'radiograph',
    mark: 'the mark',
    'under-vision': 'sight',
    'balloon-volume': 'the volume of the balloon',
  },
  found: {
    zero: 'nothing there',
    measured: 'measured',
    'could-not-aspirate': 'nothing could be drawn',
    'not-done': 'not done',
  },
  looks: {
    feed: 'feed',
    clear: 'clear',
    bile: 'bile',
    blood: 'blood',
    'coffee-ground': 'coffee-ground',
    faeculent: 'faeculent',
    green: 'green',
  },
  signs: {
    'stopped-for-it': 'feed was stopped for it',
    'held-for-it': 'feed is held for it',
    residual: 'residual at which feed stops',
    'residual-look': 'look of the residual',
    distension: 'distension',
    pain: 'pain',
    vomiting: 'vomiting',
  },
  intake: {
    feed: 'feed',
    water: 'water',
    medicine: 'medicine',
    oral: 'by mouth',
    intravenous: 'intravenous',
    other: 'other',
  },
  output: {
    urine: 'urine',
    drain: 'drain',
    'gastric-drainage': 'gastric drainage',
    stoma: 'stoma',
    other: 'other',
    vomit: 'vomit',
    stool: 'stool',
    'residual-discarded': 'residual thrown away',
    'lost-from-tube': 'feed out of the tube',
  },
  analytes: {
    glucose: 'glucose',
    potassium: 'potassium',
    magnesium: 'magnesium',
    phosphate: 'phosphate',
    sodium: 'sodium',
    urea: 'urea',
    creatinine: 'creatinine',
  },
  contradictions: CONTRADICTIONS,
};
