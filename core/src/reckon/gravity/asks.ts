/**
 * What has to be known before anybody can say how fast it runs?
 * Tube, connector, set, feed, barrel or bag, height, stomach. Read like the inputs of every calculation; what is usual
 * is assumed and said, a bore or a viscosity that nobody gave is asked for.
 */
import { bad, type Issue, issue, ok, type Result, under } from '../../base/result.ts';
import { assumed, choice, optional, quantity } from '../asking/asks.ts';
import { type Inputs, match } from '../asking/keys.ts';
import { acceptedFor } from '../asking/quantity-input.ts';
import { USUAL } from '../asking/units.ts';
import type { Ask, Asks, Given } from '../declare.ts';

export const GRAVITY_ASKS = {
  ageYears: quantity('A', 'a', ['0', '120', 'definition'], 'age', 'ageY'),
  tip: choice('tip', {
    gastric: ['stomach', 'g', 'ng', 'peg'],
    'past-the-stomach': ['jejunal', 'jejunum', 'duodenal', 'duodenum', 'post-pyloric', 'j', 'nj', 'pej'],
  }),
  french: optional(quantity('Fr', '[Ch]', ['4', '30'], 'fr', 'size', 'tube')),
  material: optional(
    choice('material', { polyurethane: ['pur', 'pu'], silicone: ['silicon'], pvc: ['polyvinylchloride'] }),
  ),
  boreMm: optional(quantity('d', 'mm', ['0.5', '8'], 'bore', 'lumen', 'insideDiameter')),
  lengthCm: quantity('L', 'cm', ['1', '200'], 'length', 'tubeLength'),
  extensionCm: optional(quantity('L_x', 'cm', ['1', '150'], 'extension', 'extensionLength')),
  extensionMm: optional(quantity('d_x', 'mm', ['1', '6'], 'extensionBore')),
  setCm: optional(quantity('L_s', 'cm', ['10', '400'], 'set', 'givingSet', 'setLength')),
  setMm: optional(quantity('d_s', 'mm', ['1', '6'], 'setBore')),
  connector: assumed(
    choice('connector', { 'small-bore': ['iso', 'enfit', 'small'], none: ['no', 'wide'] }),
    'small-bore',
  ),
  feed: choice('feed', {
    'standard-1.0': ['1', '1.0', 'standard'],
    'energy-1.5': ['1.5'],
    'energy-2.0': ['2', '2.0'],
    measured: ['own'],
    water: [],
    blended: ['blenderised', 'blenderized', 'food'],
  }),
  viscosityMpas: optional(quantity('μ', 'mPa.s', ['0.3', '50000'], 'viscosity', 'mu')),
  leftMl: optional(
    quantity('V_left', 'mL', ['0.5', '9.5', 'equation'], 'left', 'thickness', 'thicknessTest'),
  ),
  consistency: optional(quantity('K', '1', ['0.0003', '100'], 'k')),
  flowIndex: optional(quantity('n', '1', ['0.2', '1', 'equation'], 'n', 'index')),
  temperatureCel: assumed(quantity('T', 'Cel', ['0', '45'], 'temperature', 'temp'), '20'),
  container: assumed(choice('container', { barrel: ['syringe'], bag: ['pack'] }), 'barrel'),
  volumeMl: assumed(quantity('V', 'mL', ['5', '2000'], 'volume', 'holds', 'barrel', 'bag'), '60'),
  barrelMm: optional(quantity('d_b', 'mm', ['8', '80'], 'barrelBore')),
  dropCm: assumed(quantity('Δh', 'cm', ['1', '60'], 'drop', 'bagHeight'), '15'),
  heightCm: quantity('H', 'cm', ['0', '200'], 'height', 'surface', 'h'),
  feedMl: optional(quantity('V_f', 'mL', ['5', '2000'], 'total', 'bolus', 'give', 'feedVolume')),
  topUpMl: assumed(quantity('V_t', 'mL', ['0', '1000'], 'topUp', 'topUpAt', 'refillAt'), '10'),
  position: assumed(
    choice('position', {
      flat: ['supine', '0'],
      'head-up-30': ['30', 'headup'],
      'head-up-45': ['45'],
      raised: ['obese', 'ascites', 'ventilated'],
    }),
    'head-up-30',
  ),
  stomachCmH2O: optional(quantity('P', 'cm[H2O]', ['0', '40'], 'stomach', 'pressure', 'stomachPressure')),
  wantedMin: optional(quantity('t', 'min', ['0.5', '720'], 'wanted', 'within', 'in')),
  timedMin: optional(quantity('t_1', 'min', ['0.05', '720'], 'timed', 'took')),
  timedMl: optional(quantity('V_1', 'mL', ['5', '2000'], 'timedVolume')),
} as const satisfies Asks;

export type GravityKey = keyof typeof GRAVITY_ASKS;
export type GravityGiven = Given<typeof GRAVITY_ASKS>;

/** What `work gravity --about` shows as an example. */
export const GRAVITY_EXAMPLE: Readonly<Record<string, string>> = {
  age: '70',
  tip: 'gastric',
  french: '12',
  material: 'polyurethane',
  length: '110 cm',
  feed: '1.5',
  height: '45 cm',
};

const missing = (key: string, ask: Ask<unknown>): Issue =>
  issue([key], 'reckon/missing', {
    unit: ask.unit,
    accepted: ask.unit === '' ? ask.choices : acceptedFor(ask.unit),
  });

/** Every input with its value, null where it was left out, or everything that will not do. [GR6] */
export function readGravity(inputs: Inputs): Result<{ given: GravityGiven; said: ReadonlySet<string> }> {
  const { given, issues } = match({ asks: GRAVITY_ASKS }, inputs, USUAL);
  const values: Record<string, unknown> = {};
  for (const [key, ask] of Object.entries(GRAVITY_ASKS) as [string, Ask<unknown>][]) {
    const found = given.get(key);
    const raw = found?.raw ?? (ask.assumed === null ? null : [ask.assumed]);
    values[key] = null;
    if (raw === null) {
      if (ask.required) issues.push(missing(key, ask));
      continue;
    }
    const unit = found?.unit === undefined ? {} : { unitOfKey: found.unit };
    const value = ask.read(raw, { conventions: USUAL, ...unit }, () => {});
    if (value.ok) values[key] = value.value;
    else
      issues.push(
        ...under(key, value).issues.map((one) => ({
          ...one,
          data: { given: raw.map(String).join('; '), ...one.data },
        })),
      );
  }
  if (issues.length > 0) return bad(...issues);
  return ok({ given: values as unknown as GravityGiven, said: new Set(given.keys()) });
}
