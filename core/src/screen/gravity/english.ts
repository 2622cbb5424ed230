/** What is said of running by gravity, in English: what was found, what was assumed, what to do at the bedside. */
import type { GravityYesOrNo } from '../../reckon/gravity/gravity.ts';
import type { Words } from '../words.ts';

type Data = Readonly<Record<string, number | string>>;
type Said = (data: Data) => string;

const figure = (value: number | string | undefined): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(2))) : String(value ?? '');
const range = ({ low, mid, high }: Data): string =>
  low === mid && mid === high ? figure(mid) : `${figure(low)} to ${figure(high)}`;
const policyOf = ({ source, setBy }: Data): string =>
  source === undefined ? '' : ` (local policy, ${String(setBy)}, ${String(source)})`;

export const FINDINGS: Readonly<Record<string, Said>> = {
  infant: () =>
    'A small infant: count the age of one born early from term; bores and volumes are small, so go by the order and the watch.',
  'runs-back': ({ cm, low }) =>
    `The surface is ${figure(cm)} cm over the stomach, lower than its pressure holds up (${figure(low)} cm or more): it runs back. Clamp, and raise it.`,
  'stands-or-runs-back': ({ low, high }) =>
    `The stomach's pressure holds up ${figure(low)} to ${figure(high)} cm: at this height it stands still or runs back. Clamp, and raise it.`,
  'may-stand': ({ high }) =>
    `It may stand still: the stomach can hold up ${figure(high)} cm. Watch the level; if it does not fall, raise it.`,
  'as-good-as-stopped': () =>
    'Under 1 mL/min is as good as stopped: flush, check the tube, ask about a pump.',
  impractical: () => 'Under 2 mL/min is hardly a method: ask about a pump.',
  'faster-than-policy': (data) =>
    `Faster than one feed may be, which is ${figure(data.minutes)} min or longer${policyOf(data)}: lower it or clamp in part. Compared with an estimate; go by the watch.`,
  'may-be-faster-than-policy': (data) =>
    `It may be faster than one feed may be, which is ${figure(data.minutes)} min or longer${policyOf(data)}: watch the time, lower it if need be. Compared with an estimate; go by the watch.`,
  'least-not-set': () =>
    'How long one feed has to take is not set for this patient: ask, and do not go by what runs.',
  'whole-feed-unsaid': () =>
    'Whether this is faster than one feed may be cannot be said: how much the whole feed is was not given.',
  'not-laminar': ({ reynolds }) =>
    `The stream is no longer smooth (Reynolds number ${figure(reynolds)}): less sure than usual, and raising it gains less.`,
  timed: ({ mL, min }) =>
    `The band goes by one timed pour, ${figure(mL)} mL in ${figure(min)} min; it holds for this tube and this feed only.`,
  'timed-slower': () =>
    'The timed pour was far slower than such a tube lets through: look for a kink, a clamp, a clot, the wrong feed.',
  'timed-faster': () =>
    'The timed pour was far faster than such a tube lets through: check size, feed, height and what was timed.',
};

export const ASSUMPTIONS: Readonly<Record<string, Said>> = {
  'bore-given': ({ mm, percent }) => `the tube is ${figure(mm)} mm wide inside, within ${figure(percent)} %`,
  'bore-by-size': ({ french, material, ...band }) =>
    `a tube of ${figure(french)} Fr in ${String(material)} is ${range(band)} mm wide inside: guessed from its size, and it counts most`,
  connector: ({ mm, cm }) => `a small-bore connector, ${String(mm)} mm wide over ${figure(cm)} cm`,
  'giving-set-usual': (band) => `a giving set ${range(band)} mm wide inside`,
  'extension-usual': (band) => `an extension ${range(band)} mm wide inside`,
  water: ({ celsius }) => `water at ${figure(celsius)} °C`,
  'viscosity-given': ({ mPas, percent }) =>
    `the feed has ${figure(mPas)} mPa·s as it runs, within ${figure(percent)} %`,
  'density-usual': ({ density }) => `a litre of it weighs ${String(density)} g`,
  'power-law': ({ K, n, percent }) =>
    `the feed thins as it moves: K ${String(K)}, n ${String(n)}, within ${figure(percent)} %`,
  'viscosity-by-thickness': ({ mL, ...band }) =>
    `${figure(mL)} mL left after 10 s means ${range(band)} mPa·s: derived, not validated`,
  'viscosity-of-class': ({ feed, celsius, ...band }) =>
    `a feed of class ${String(feed)} has ${range(band)} mPa·s at ${figure(celsius)} °C`,
  'stomach-by-position': ({ position, ...band }) =>
    `the stomach presses with ${range(band)} cmH₂O (${String(position).replaceAll('-', ' ')})`,
  'stomach-given': (band) => `the stomach presses with ${range(band)} cmH₂O, as given, with the breath`,
  'bag-drop': ({ cm }) => `the surface sinks ${figure(cm)} cm while the bag empties`,
  'barrel-60': ({ mm }) => `the 60 mL barrel is ${String(mm)} mm wide`,
};

/** Of every answer: what is taken for granted. */
export const ALWAYS: readonly string[] = [
  'the height is that of the surface of the feed over the stomach, not over the bed or the tip',
  'the line is primed, free of air, open, unkinked and clean; clamp, clot, air and foam are not reckoned with',
  'a cough drives it back for a moment; the estimate knows no coughs',
];

export const BEDSIDE: readonly string[] = [
  'Never hold it below the stomach.',
  'Pinch or clamp before opening the tube.',
  'Gravity before plunger; a plunger only gently.',
  'A level that rocks with the breath is normal.',
  'A fast flush of water tells nothing of how feed will run.',
];

export const YES_OR_NO: Readonly<Record<GravityYesOrNo['answer'], string>> = {
  'yes-maybe': 'Perhaps: thin enough for a wide gastrostomy tube. How fast cannot be said.',
  doubtful: 'Doubtful: it may be too thick to run. How fast cannot be said.',
  no: 'No: too thick to run by gravity.',
  'not-known': 'Cannot be said: how thick it is was not given. Do the syringe test and give what was left.',
};

export const DEFERS =
  'An estimate, not a rate to set or a time to chart: the order, local policy and licensed practice decide, and the watch is right.';

const say = (says: string, remedy: string) => () => ({ says, remedy });

export const GRAVITY_ISSUES: Words['issues'] = {
  'gravity/newborn': say(
    'not offered for the newborn',
    'Their bores and volumes are too small to be estimated: use a pump or go by the order.',
  ),
  'gravity/past-the-stomach': say('not offered past the stomach', 'Feed there by pump.'),
  'gravity/bore-missing': say(
    'neither the bore nor size and material were given',
    'Give french= and material=, or bore= in mm.',
  ),
  'gravity/bore-unknown': ({ french, material }) => ({
    says: `no bore is known for ${String(french)} Fr in ${String(material)}`,
    remedy: 'Give bore= in mm, as it stands on the packet.',
  }),
  'gravity/viscosity-missing': say(
    'how thick the feed is was not given',
    'Give viscosity= in mPa·s, or left= in mL after the syringe test.',
  ),
  'gravity/barrel-missing': say(
    'how wide this barrel is was not given',
    'Give barrelBore= in mm; only that of 60 mL is known.',
  ),
  'gravity/bag-too-small': say('the feed does not fit into the bag', 'Give the volume that is hung.'),
  'gravity/top-up-too-high': say(
    'topped up before anything has run',
    'Give a volume that is less than the barrel holds.',
  ),
  'gravity/timed-too-much': say('more than was in it', 'Give the volume that ran while it was timed.'),
  'gravity/timed-would-stall': say(
    'by what is known it would not have run to the end',
    'Check height, position and size, and time a pour from higher up.',
  ),
};
