/** Which unit names do people write, and how many of its dimension's unit is each? */
import { type Exact, of } from '../exact.ts';

/** Powers of volume (mL), mass (g), energy (kcal), time (h), length (cm), amount (mmol), charge (mEq), osmoles (mosm), items, drops, temperature, pressure (cmH₂O), dynamic viscosity (mPa·s). */
type Letter = 'V' | 'M' | 'E' | 'T' | 'L' | 'N' | 'Q' | 'O' | 'I' | 'D' | 'C' | 'P' | 'Y';
export type Named = {
  readonly powers: Readonly<Partial<Record<Letter, number>>>;
  readonly factor: Exact;
  /** How many ounces or pounds it is, where that is a matter of convention. */
  readonly by?: 'ounce' | 'pound';
};

const named = (letter: Letter, factor: string, names: string, by?: 'ounce' | 'pound'): [string, Named][] =>
  names
    .split(' ')
    .map((name) => [
      name,
      { powers: { [letter]: 1 }, factor: of(factor), ...(by === undefined ? {} : { by }) },
    ]);

export const UNITS: ReadonlyMap<string, Named> = new Map([
  ...named('V', '1', 'ml mls cc ccs cm3 milliliter milliliters millilitre millilitres'),
  ...named('V', '1000', 'l liter liters litre litres'),
  ...named('V', '100', 'dl deciliter decilitre'),
  ...named('V', '1', 'oz ounce ounces floz fluidounce fluidounces', 'ounce'),
  ...named('V', '5', 'tsp teaspoon teaspoons'),
  ...named('V', '15', 'tbsp tablespoon tablespoons'),
  ...named('M', '1', 'g gm gms gram grams gramme grammes gn gnitrogen gprotein'),
  ...named('M', '1000', 'kg kgs kilo kilos kilogram kilograms'),
  ...named('M', '1/1000', 'mg milligram milligrams'),
  ...named('M', '1/1000000', 'mcg ug microgram micrograms'),
  ...named('M', '1', 'lb lbs pound pounds', 'pound'),
  ...named('M', '14', 'st stone stones', 'pound'),
  ...named('M', '1/16', 'massounce', 'pound'),
  ...named('E', '1', 'kcal kcals kilocalorie kilocalories'),
  ...named('E', '125/523', 'kj kilojoule kilojoules'),
  ...named('E', '125000/523', 'mj megajoule megajoules'),
  ...named('T', '1', 'h hr hrs hour hours'),
  ...named('T', '1/60', 'min mins minute minutes'),
  ...named('T', '1/3600', 's sec secs second seconds'),
  ...named('T', '24', 'd day days'),
  ...named('T', '168', 'wk wks week weeks'),
  ...named('T', '730.5', 'mo month months'),
  ...named('T', '8766', 'y yr yrs year years'),
  ...named('L', '1', 'cm cms centimeter centimeters centimetre centimetres'),
  ...named('L', '100', 'm meter meters metre metres'),
  ...named('L', '1/10', 'mm millimeter millimeters millimetre millimetres'),
  ...named('L', '2.54', 'in inch inches "'),
  ...named('L', '30.48', 'ft foot feet'),
  ...named('L', '1/30', 'fr ch french charriere'),
  ...named('N', '1', 'mmol mmols millimole millimoles'),
  ...named('N', '1000', 'mol moles'),
  ...named('N', '1/1000', 'umol micromole micromoles'),
  ...named('Q', '1', 'meq meqs milliequivalent milliequivalents'),
  ...named('O', '1', 'mosm mosmol milliosmole milliosmoles'),
  ...named('I', '1', 'can cans carton cartons container containers bottle bottles bag bags packet packets'),
  ...named('I', '1', 'scoop scoops feed feeds bolus boluses flush flushes dose doses serving servings'),
  ...named('D', '1', 'gtt gtts drop drops'),
  ...named('C', '1', '°c degc celsius c'),
  ...named('P', '1', 'cmh2o cmwater'),
  ...named('P', '1.35951', 'mmhg'),
  ...named('Y', '1', 'mpas mpa·s cp centipoise'),
  ['%', { powers: {}, factor: of('1/100') }],
  ['percent', { powers: {}, factor: of('1/100') }],
  ['m2', { powers: { L: 2 }, factor: of(10_000) }],
  ['sqm', { powers: { L: 2 }, factor: of(10_000) }],
] satisfies [string, Named][]);
