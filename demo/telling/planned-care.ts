/** What comes again and again, each time as the task that was planned for it. */
import { atMark, flush, headUp, medicine, module, mouthCare, tubeChecked, water } from './at-the-bedside.ts';
import type { Deed } from './scene.ts';
import { asPlanned } from './who-and-when.ts';

/** On a round: the water that is due, the head of the bed, the tube at its mark, the mouth. */
export const round = (what: {
  readonly flush?: number;
  readonly degrees: number;
  readonly markCm: number;
}): Deed[] => [
  ...(what.flush === undefined ? [] : [asPlanned('flush', {}, flush(what.flush))]),
  asPlanned('check-position', {}, headUp(what.degrees)),
  asPlanned('check-tube', { about: 'mark' }, atMark(what.markCm)),
  asPlanned('mouth-care', {}, mouthCare),
];

type Dose = {
  readonly name: string;
  readonly volume: number;
  readonly before?: number;
  readonly after: number;
};

/** A medicine with its water around it. */
export const dose = ({ name, volume, before, after }: Dose): readonly Deed[] => [
  ...(before === undefined
    ? []
    : [asPlanned('flush', { about: name, beside: 'before' }, water(before, 'medicine'))]),
  asPlanned('give-medicine', { about: name }, medicine(name, volume)),
  asPlanned('flush', { about: name, beside: 'after' }, water(after, 'medicine')),
];

export const proteinDose = (name: string, energyKcal: number, proteinG: number, waterMl: number): Deed =>
  asPlanned('give-module', { about: name }, module(name, energyKcal, proteinG), water(waterMl, 'module'));

/** Water around one feed; `due` where that is not now. */
export const flushBeforeFeed = (volume: number, due?: string): Deed =>
  asPlanned(
    'flush',
    { about: 'feed', beside: 'before', ...(due === undefined ? {} : { due }) },
    flush(volume),
  );
export const flushAfterFeed = (volume: number, due?: string): Deed =>
  asPlanned(
    'flush',
    { about: 'feed', beside: 'after', ...(due === undefined ? {} : { due }) },
    flush(volume),
  );

/** Water where a feed that ran for hours begins and ends. */
export const flushIn = (volume: number): Deed => asPlanned('flush', { beside: 'before' }, flush(volume));
export const flushOut = (volume: number): Deed => asPlanned('flush', { beside: 'after' }, flush(volume));

export const waterDose = (volume: number): Deed => asPlanned('give-water', {}, water(volume, 'free-water'));

export const checkedByPh = (ph: number, markCm: number, due?: string): Deed =>
  asPlanned(
    'check-tube',
    { about: 'ph', ...(due === undefined ? {} : { due }) },
    tubeChecked('ph', { ph, markCm }),
  );
