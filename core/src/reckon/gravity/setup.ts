/** Which set-up do the inputs describe, and what was assumed for it? A bore or a viscosity nobody gave is asked for. */
import { bad, type Issue, issue, ok, type Result } from '../../base/result.ts';
import type { Known } from '../declare.ts';
import { compare, toDouble as float, of } from '../exact.ts';
import type { GravityGiven } from './asks.ts';
import type { Setup, Tube } from './band.ts';
import { GRAVITY } from './flow.ts';
import {
  about,
  FEED_CLASSES,
  type FeedClass,
  type Spread,
  scaled,
  thickerAt,
  waterDensity,
  waterViscosity,
} from './fluid.ts';
import type { HydraulicId } from './sources.ts';
import { viscosityByThickness } from './thickness.ts';
import { boreOf } from './tube-bore.ts';

/** Said with every answer: a code, its figures, and where they are from. */
export type Assumption = {
  readonly code: string;
  readonly data: Readonly<Record<string, number | string>>;
  readonly source: HydraulicId | null;
};

const MM = 1e-3;
const CM = 1e-2;
const ML = 1e-6;
/** Pa */
export const CM_WATER = 98.0665;
/** Of a bore that somebody measured or read off the packet. */
const BORE_SHARE = 0.05;
const VISCOSITY_SHARE = 0.25;
const SET_MM: Spread = { low: 3, mid: 3.5, high: 4 };
const EXTENSION_MM: Spread = { low: 2.5, mid: 3.2, high: 4 };
const CONNECTOR = { bore: 2.9, length: 2 } as const;
const BARREL_60_MM = 26.7;
/** 1.645 standard deviations of 4 cmH₂O; and what breathing alone does about a measured pressure. */
const STOMACH_BAND = 6.6;
const BREATHING = 4;
/**
 * cmH₂O: 10 flat, and what 30° and 45° add in the medians of H15; raised: 15 to 20 with obesity, ascites, ventilation, a
 * judgement. H13 has 13 in the healthy and fasting, which is within the band.
 */
const STOMACH: Readonly<Record<GravityGiven['position'], number>> = {
  flat: 10,
  'head-up-30': 12,
  'head-up-45': 14.5,
  raised: 17.5,
};
/** A density nobody gave, of feed measured for viscosity. */
const DENSITY = 1050;
const BLENDED_DENSITY = 1045;

const inMetres = (mm: Spread): Spread => scaled(mm, MM);

type Noted = { readonly assumptions: Assumption[]; readonly issues: Issue[] };
const note = (to: Noted, code: string, data: Assumption['data'], source: HydraulicId | null): void => {
  to.assumptions.push({ code, data, source });
};
const banded = ({ low, mid, high }: Spread): Assumption['data'] => ({ low, mid, high });

function tubeBore({ boreMm, french, material }: GravityGiven, to: Noted): Spread | null {
  if (boreMm !== null) {
    note(to, 'bore-given', { mm: float(boreMm), percent: BORE_SHARE * 100 }, null);
    return about(float(boreMm), BORE_SHARE);
  }
  if (french === null || material === null) {
    to.issues.push(issue(['boreMm'], 'gravity/bore-missing'));
    return null;
  }
  const bore = boreOf(float(french), material);
  if (bore === null)
    to.issues.push(issue(['french'], 'gravity/bore-unknown', { french: float(french), material }));
  else note(to, 'bore-by-size', { french: float(french), material, ...banded(bore) }, 'H40');
  return bore;
}

const partOf = (
  what: Tube['what'],
  length: Known | null,
  bore: Known | null,
  usual: Spread,
  to: Noted,
): readonly Tube[] => {
  if (length === null) {
    if (bore !== null)
      to.issues.push(
        issue([what === 'giving-set' ? 'setCm' : 'extensionCm'], 'reckon/missing', { unit: 'cm' }),
      );
    return [];
  }
  if (bore === null) note(to, `${what}-usual`, banded(usual), 'H40');
  const mm = bore === null ? usual : about(float(bore), BORE_SHARE);
  return [{ what, bore: inMetres(mm), length: float(length) * CM }];
};

function tubesOf(given: GravityGiven, to: Noted): readonly Tube[] {
  const bore = tubeBore(given, to);
  const connector = given.connector === 'small-bore';
  if (connector) note(to, 'connector', { mm: CONNECTOR.bore, cm: CONNECTOR.length }, 'H40');
  return [
    ...partOf('giving-set', given.setCm, given.setMm, SET_MM, to),
    ...(connector
      ? [
          {
            what: 'connector' as const,
            bore: inMetres(about(CONNECTOR.bore, BORE_SHARE)),
            length: CONNECTOR.length * CM,
          },
        ]
      : []),
    ...partOf('extension', given.extensionCm, given.extensionMm, EXTENSION_MM, to),
    ...(bore === null
      ? []
      : [{ what: 'tube' as const, bore: inMetres(bore), length: float(given.lengthCm) * CM }]),
  ];
}

type Feed = Pick<Setup, 'density' | 'consistency' | 'index'>;

const isClass = (feed: string): feed is FeedClass => Object.hasOwn(FEED_CLASSES, feed);

/** mPa·s in the band, kept in Pa·s. A measured viscosity is that of its own temperature; a class's is carried over. */
function feedOf(given: GravityGiven, to: Noted): Feed | null {
  const { feed, viscosityMpas, leftMl, temperatureCel, consistency: thick, flowIndex } = given;
  const celsius = float(temperatureCel);
  const density = isClass(feed) ? FEED_CLASSES[feed].density : feed === 'blended' ? BLENDED_DENSITY : DENSITY;
  const measures = [viscosityMpas, leftMl, thick].filter((one) => one !== null).length;
  if (measures > (feed === 'water' ? 0 : 1)) {
    const alternatives = ['feed=water', 'viscosityMpas', 'leftMl', 'consistency + flowIndex'];
    to.issues.push(issue(['viscosityMpas'], 'reckon/only-one-of', { alternatives }));
    return null;
  }
  if (feed === 'water') {
    const viscosity = waterViscosity(celsius);
    note(to, 'water', { mPas: viscosity * 1e3, celsius }, 'H6');
    return {
      density: waterDensity(celsius),
      consistency: { low: viscosity, mid: viscosity, high: viscosity },
      index: 1,
    };
  }
  if (!isClass(feed)) note(to, 'density-usual', { density }, 'H40');
  if (thick !== null || flowIndex !== null) {
    if (thick === null || flowIndex === null) {
      to.issues.push(issue([thick === null ? 'consistency' : 'flowIndex'], 'reckon/missing', { unit: '1' }));
      return null;
    }
    const index = float(flowIndex);
    note(to, 'power-law', { K: float(thick), n: index, percent: VISCOSITY_SHARE * 100 }, null);
    return { density, consistency: about(float(thick), VISCOSITY_SHARE), index };
  }
  if (viscosityMpas !== null) {
    note(to, 'viscosity-given', { mPas: float(viscosityMpas), percent: VISCOSITY_SHARE * 100 }, null);
    return { density, consistency: about(float(viscosityMpas) * 1e-3, VISCOSITY_SHARE), index: 1 };
  }
  if (leftMl !== null) {
    const consistency = viscosityByThickness(float(leftMl), density);
    note(to, 'viscosity-by-thickness', { mL: float(leftMl), ...banded(scaled(consistency, 1e3)) }, 'H11');
    return { density, consistency, index: 1 };
  }
  if (!isClass(feed)) {
    if (feed === 'measured') to.issues.push(issue(['viscosityMpas'], 'gravity/viscosity-missing'));
    return null;
  }
  const viscosity = scaled(FEED_CLASSES[feed].viscosity, thickerAt(celsius));
  note(to, 'viscosity-of-class', { feed, celsius, ...banded(viscosity) }, 'H40');
  return { density, consistency: scaled(viscosity, 1e-3), index: 1 };
}

function stomachOf({ stomachCmH2O, position }: GravityGiven, to: Noted): Spread {
  const mid = stomachCmH2O === null ? STOMACH[position] : float(stomachCmH2O);
  const half = stomachCmH2O === null ? STOMACH_BAND : BREATHING;
  const cm = { low: mid - half, mid, high: mid + half };
  note(
    to,
    stomachCmH2O === null ? 'stomach-by-position' : 'stomach-given',
    { position, ...banded(cm) },
    stomachCmH2O === null ? 'H15' : null,
  );
  return scaled(cm, CM_WATER);
}

/** Straight sides: a barrel by its bore, a bag by how far its surface sinks. */
function vesselOf(given: GravityGiven, to: Noted): Setup['vessel'] | null {
  const { container, volumeMl, barrelMm, dropCm, heightCm, feedMl, topUpMl } = given;
  const volume = float(volumeMl) * ML;
  const more = feedMl !== null && compare(feedMl, volumeMl) > 0;
  // The height is that of the surface as first filled, which is below the brim where the feed is less than the vessel.
  const unfilled = feedMl === null || more ? 0 : volume - float(feedMl) * ML;
  const heightOver = (area: number): number => float(heightCm) * CM + unfilled / area;
  if (container === 'bag') {
    if (more) to.issues.push(issue(['feedMl'], 'gravity/bag-too-small', { volumeMl: float(volumeMl) }));
    note(to, 'bag-drop', { cm: float(dropCm) }, null);
    const area = volume / (float(dropCm) * CM);
    return { volume, area, height: heightOver(area) };
  }
  if (more && compare(topUpMl, volumeMl) >= 0)
    to.issues.push(issue(['topUpMl'], 'gravity/top-up-too-high', { volumeMl: float(volumeMl) }));
  if (barrelMm === null && compare(volumeMl, of(60)) !== 0) {
    to.issues.push(issue(['barrelMm'], 'gravity/barrel-missing', { volumeMl: float(volumeMl) }));
    return null;
  }
  const bore = barrelMm === null ? BARREL_60_MM : float(barrelMm);
  if (barrelMm === null) note(to, 'barrel-60', { mm: bore }, 'H40');
  const area = (Math.PI / 4) * (bore * MM) ** 2;
  return { volume, area, height: heightOver(area) };
}

/** @returns null in `setup` where blended feed has no viscosity: nothing can be said. */
export function describe(
  given: GravityGiven,
): Result<{ setup: Setup | null; assumptions: readonly Assumption[] }> {
  const to: Noted = { assumptions: [], issues: [] };
  const tubes = tubesOf(given, to);
  const feed = feedOf(given, to);
  const stomach = stomachOf(given, to);
  const vessel = vesselOf(given, to);
  if (to.issues.length > 0) return bad(...to.issues);
  const setup = feed === null || vessel === null ? null : { tubes, ...feed, stomach, vessel };
  return ok({ setup, assumptions: to.assumptions });
}

/** cm of this feed that hold the stomach's pressure up. */
export const balanceCm = ({ stomach, density }: Setup): Spread => scaled(stomach, 100 / (density * GRAVITY));
