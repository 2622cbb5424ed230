/**
 * What does the free text speak of that the structure does not say?
 * Text is shown and never carried out: no hold, rate or density is taken from it. But a hold, another density or another
 * rate that stands only in text is asked about, because somebody will do what it says and the plan will not. Only what is
 * looked for here is found; the text itself is always shown whole.
 */
import type { Rate, Volume } from '@feedwright/core/base/volume';
import { inMl, inMlPerHour } from '@feedwright/core/base/volume';
import type { Additive, Regimen } from '@feedwright/core/order/order';
import { compare, type Exact, of, ofFraction } from '@feedwright/core/reckon/exact';
import { type Element, field, items, text } from '../read/element.ts';
import { answered, ask, note } from '../read/reading.ts';
import type { Density } from './density.ts';
import type { Feeding } from './feeding.ts';

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const ML = '(?:mls?|cc|millilit(?:er|re)s?)';
const DENSITY = new RegExp(
  String.raw`${NUMBER}\s*(k?cal(?:orie)?s?)\s*(?:\/|per)\s*(mL|ml|oz|ounce|L)`,
  'gi',
);
const RATE = new RegExp(String.raw`${NUMBER}\s*${ML}\s*(?:\/|per|an?)\s*h`, 'gi');
const VOLUME = new RegExp(String.raw`${NUMBER}\s*${ML}\b(?!\s*(?:\/|per|an?)\s*h)`, 'gi');

/** Words by which a text may change what the structure says; English, the language of most such texts. */
const TOPICS: Readonly<Record<string, RegExp>> = {
  advance: /\b(advance|increase (?:by|rate|feed)|titrat\w+|as tolerated|goal rate)\b/i,
  water: /\b(flush\w*|free water|water)\b/i,
  tolerance: /\b(residuals?|aspirates?|vomit\w*|nausea|distension)\b/i,
  condition: /\b(if|unless|until|when|prn|as needed|only)\b/i,
};
const ADDITIVE = /\b(add|adding|added|additive|mix(?:ed)?|fortif\w+)\b/i;
const HOLD =
  /\b(hold|holding|held|withh\w+|stop\w*|pause\w*|interrupt\w*|suspend\w*|npo|nbm|nil by mouth|turn(?:ed)? off)\b/i;
const STRENGTH =
  /\b(half|quarter|third|three[- ]quarter|full)[- ]strength\b|\bdilut\w+|[¼½¾]|\b[13]\/[24][- ]strength/i;

const MOST_READ = 5000;

const found = (said: string, shape: RegExp): readonly RegExpMatchArray[] => [...said.matchAll(shape)];

const differs = (match: RegExpMatchArray, known: readonly Exact[]): boolean =>
  !known.some((value) => compare(of(match[1]!), value) === 0);

/** [FH16] Another density in the text than in the field: both are shown. */
function densities(said: Element, words: string, { written }: Density): void {
  const spoken = found(words, DENSITY);
  const known = written === null ? [] : [written.number];
  if (!spoken.some((match) => differs(match, known))) return;
  ask(said, 'FH16', 'fhir/density-in-text', 'energyKcalPerMl', {
    text: spoken.map((match) => match[0]),
    field: written?.written ?? null,
  });
}

function ratesKnown({ regimen, rates }: Feeding): readonly Rate[] {
  const stepped = rates.map(({ amount }) => amount);
  return regimen !== null && 'rate' in regimen && regimen.rate !== null
    ? [...stepped, regimen.rate.rate]
    : stepped;
}

const volumesKnown = (regimen: Regimen | null, most: Volume | null): readonly Volume[] => [
  ...(regimen !== null && 'volume' in regimen && regimen.volume !== null ? [regimen.volume.volume] : []),
  ...(most === null ? [] : [most]),
];

type Structure = {
  readonly feeding: Feeding;
  readonly density: Density;
  readonly most: Volume | null;
  readonly additives: readonly Additive[];
};

/** What the text speaks of that nothing in the structure says. */
function topicsOf(words: string, { feeding, most, additives }: Structure): readonly string[] {
  const rates = ratesKnown(feeding).map((rate) => ofFraction(inMlPerHour(rate)));
  const volumes = volumesKnown(feeding.regimen, most).map((volume) => ofFraction(inMl(volume)));
  const isOff = (shape: RegExp, known: readonly Exact[]): boolean =>
    found(words, shape).some((match) => differs(match, known));
  return [
    ...(isOff(RATE, rates) ? ['rate'] : []),
    ...(isOff(VOLUME, volumes) ? ['volume'] : []),
    ...(additives.length === 0 && ADDITIVE.test(words) ? ['additive'] : []),
    ...Object.entries(TOPICS).flatMap(([topic, shape]) => (shape.test(words) ? [topic] : [])),
  ];
}

/**
 * [FH16] A hold that stands only in text. A rate that no schedule puts into hours of the day may be given its hours; all
 * else a person considers.
 */
function holds(said: Element, words: string, { rates, regimen }: Feeding): void {
  if (!HOLD.test(words)) return;
  const scheduled =
    regimen?.kind === 'continuous' && regimen.perDay !== null && answered(said, 'feedingHours') === null;
  if (rates.length > 0 && !scheduled) ask(said, 'FH16', 'fhir/hold-in-text', 'feedingHours', { text: words });
  else ask(said, 'FH16', 'fhir/hold-in-text', 'instruction', { text: words });
}

function readText(said: Element, structure: Structure): void {
  const whole = (text(said) ?? '').trim();
  if (whole === '') return;
  note(said, 'FH16', 'fhir/text', { text: whole });
  // A text without end could take time without end.
  const words = whole.slice(0, MOST_READ);
  holds(said, words, structure.feeding);
  densities(said, words, structure.density);
  if (STRENGTH.test(words)) ask(said, 'FH16', 'fhir/strength-in-text', 'strength', { text: words });
  const topics = [...topicsOf(words, structure), ...(whole.length > MOST_READ ? ['more'] : [])];
  if (topics.length > 0) ask(said, 'FH16', 'fhir/only-in-text', 'instruction', { topics, text: words });
}

/** [FH16] The instruction and the notes of an order, shown whole and compared with its structure. */
export function readProse(order: Element, formula: Element, structure: Structure): void {
  const instruction = field(formula, 'administrationInstruction');
  const notes = items(order, 'note').map((annotation) => field(annotation, 'text'));
  for (const said of [instruction, ...notes]) {
    if (said !== null) readText(said, structure);
  }
}
