/**
 * Which feeds are there before a facility lists its own? Generic classes, with figures from the middle of what is
 * published for the class. No product: the label of what is really on the shelf replaces these row by row.
 */
import { fraction } from '../base/fraction.ts';
import { ml } from '../base/volume.ts';
import type { Provenance } from '../base/working.ts';
import type { Feed, FeedList, FeedSystem, Pack } from './feed.ts';

const cartons = (...sizes: readonly number[]): readonly Pack[] =>
  sizes.map((size) => ({ kind: 'carton', volume: ml(size) }));
const containers = (...sizes: readonly number[]): readonly Pack[] =>
  sizes.map((size) => ({ kind: 'container', volume: ml(size) }));

/** Pack sizes are common practice: no publication fixes them. */
const CARTONS = cartons(200, 250, 500);
const CONTAINERS = containers(500, 1000, 1500);

const FORMULA_ALLERGENS = ['milk', 'soya', 'fish'];

type Figures = {
  readonly name: string;
  readonly feedClass: string;
  readonly kcalPer100Ml: number;
  readonly proteinMgPer100Ml: number;
  readonly waterMlPerLitre: number;
  readonly osmolality: number | null;
  readonly allergens: readonly string[];
  readonly source: string;
  readonly provenance: Provenance;
};

const feed = (id: string, system: FeedSystem, packs: readonly Pack[], figures: Figures): Feed => ({
  id,
  name: figures.name,
  feedClass: figures.feedClass,
  system,
  energyKcalPerMl: fraction(figures.kcalPer100Ml, 100),
  proteinGPerMl: fraction(figures.proteinMgPer100Ml, 100_000),
  waterFraction: fraction(figures.waterMlPerLitre, 1000),
  osmolalityMosmPerKg: figures.osmolality,
  allergens: figures.allergens,
  packs,
  labelHangLimit: null,
  source: figures.source,
  provenance: figures.provenance,
});

/** The same class as a carton that is poured and as a container that is spiked. */
const poured = (id: string, figures: Figures): readonly Feed[] => [
  feed(id, 'open-liquid', CARTONS, figures),
  feed(`${id}-closed`, 'closed', CONTAINERS, { ...figures, name: `${figures.name}, closed` }),
];

const ADULT_FEEDS: readonly Feed[] = [
  ...poured('standard-1.0', {
    name: 'standard 1.0 kcal/mL',
    feedClass: 'standard',
    kcalPer100Ml: 100,
    proteinMgPer100Ml: 4000,
    waterMlPerLitre: 850,
    osmolality: 300,
    allergens: FORMULA_ALLERGENS,
    source: 'S31, S95',
    provenance: 'read',
  }),
  ...poured('high-protein-1.2', {
    name: 'high protein 1.2 kcal/mL',
    feedClass: 'high-protein',
    kcalPer100Ml: 120,
    proteinMgPer100Ml: 6000,
    waterMlPerLitre: 825,
    osmolality: 395,
    allergens: FORMULA_ALLERGENS,
    source: 'common-practice',
    provenance: 'from-memory',
  }),
  ...poured('energy-1.5', {
    name: 'energy-dense 1.5 kcal/mL',
    feedClass: 'energy-dense',
    kcalPer100Ml: 150,
    proteinMgPer100Ml: 6400,
    waterMlPerLitre: 760,
    osmolality: 525,
    allergens: FORMULA_ALLERGENS,
    source: 'S95',
    provenance: 'read',
  }),
  ...poured('energy-low-carbohydrate-1.5', {
    name: 'energy-dense low carbohydrate 1.5 kcal/mL',
    feedClass: 'energy-dense-low-carbohydrate',
    kcalPer100Ml: 150,
    proteinMgPer100Ml: 6300,
    waterMlPerLitre: 790,
    osmolality: 475,
    allergens: FORMULA_ALLERGENS,
    source: 'S95',
    provenance: 'read',
  }),
  ...poured('two-calorie-2.0', {
    name: 'two-calorie 2.0 kcal/mL',
    feedClass: 'two-calorie',
    kcalPer100Ml: 200,
    proteinMgPer100Ml: 8250,
    waterMlPerLitre: 710,
    osmolality: 740,
    allergens: FORMULA_ALLERGENS,
    source: 'S31',
    provenance: 'from-memory',
  }),
  ...poured('renal-2.0', {
    name: 'renal (dialysis) 2.0 kcal/mL',
    feedClass: 'renal-dialysis',
    kcalPer100Ml: 200,
    proteinMgPer100Ml: 7000,
    waterMlPerLitre: 700,
    osmolality: 665,
    allergens: FORMULA_ALLERGENS,
    source: 'S95',
    provenance: 'read',
  }),
  ...poured('renal-low-protein-1.8', {
    name: 'renal low protein 1.8 kcal/mL',
    feedClass: 'renal-low-protein',
    kcalPer100Ml: 180,
    proteinMgPer100Ml: 3850,
    waterMlPerLitre: 720,
    osmolality: 650,
    allergens: FORMULA_ALLERGENS,
    source: 'common-practice',
    provenance: 'from-memory',
  }),
  ...poured('peptide-1.0', {
    name: 'peptide-based 1.0 kcal/mL',
    feedClass: 'peptide',
    kcalPer100Ml: 100,
    proteinMgPer100Ml: 4000,
    waterMlPerLitre: 850,
    osmolality: null,
    allergens: FORMULA_ALLERGENS,
    source: 'common-practice',
    provenance: 'from-memory',
  }),
  ...poured('peptide-1.5', {
    name: 'peptide-based 1.5 kcal/mL',
    feedClass: 'peptide',
    kcalPer100Ml: 150,
    proteinMgPer100Ml: 6800,
    waterMlPerLitre: 770,
    osmolality: null,
    allergens: FORMULA_ALLERGENS,
    source: 'common-practice',
    provenance: 'from-memory',
  }),
];

const INFANT: Figures = {
  name: 'infant 0.67 kcal/mL, ready to feed',
  feedClass: 'infant',
  kcalPer100Ml: 67,
  proteinMgPer100Ml: 1400,
  waterMlPerLitre: 900,
  osmolality: 285,
  allergens: FORMULA_ALLERGENS,
  source: 'common-practice',
  provenance: 'from-memory',
};

const CHILD_FEEDS: readonly Feed[] = [
  ...poured('paediatric-1.0', {
    name: 'paediatric 1.0 kcal/mL',
    feedClass: 'paediatric',
    kcalPer100Ml: 100,
    proteinMgPer100Ml: 2900,
    waterMlPerLitre: 845,
    osmolality: 345,
    allergens: FORMULA_ALLERGENS,
    source: 'common-practice',
    provenance: 'from-memory',
  }),
  feed('infant-0.67', 'open-liquid', cartons(60, 100, 200), INFANT),
  feed('infant-0.67-powder', 'powder', [], { ...INFANT, name: 'infant 0.67 kcal/mL, from powder' }),
  feed('infant-0.67-concentrate', 'concentrate', [], {
    ...INFANT,
    name: 'infant 0.67 kcal/mL, from liquid concentrate',
  }),
  {
    ...feed('human-milk', 'human-milk', [], {
      name: 'human milk',
      feedClass: 'human-milk',
      kcalPer100Ml: 67,
      proteinMgPer100Ml: 1100,
      waterMlPerLitre: 875,
      osmolality: null,
      allergens: [],
      source: 'common-practice',
      provenance: 'from-memory',
    }),
    compositionVaries: true,
  },
];

const OTHER_FEEDS: readonly Feed[] = [
  {
    // What went into it is not known here: whoever is allergic to something is asked about, until the kitchen's own row.
    ...feed('blenderised', 'blenderised', [], {
      name: 'blenderised food',
      feedClass: 'blenderised',
      kcalPer100Ml: 100,
      proteinMgPer100Ml: 4000,
      waterMlPerLitre: 800,
      osmolality: null,
      allergens: ['milk', 'soya', 'fish', 'egg', 'wheat', 'nuts'],
      source: 'common-practice',
      provenance: 'common-practice',
    }),
    compositionVaries: true,
  },
  feed('modular-protein', 'powder', [], {
    name: 'modular protein, 6 g in 60 mL',
    feedClass: 'modular-protein',
    kcalPer100Ml: 40,
    proteinMgPer100Ml: 10_000,
    waterMlPerLitre: 950,
    osmolality: null,
    allergens: ['milk'],
    source: 'common-practice',
    provenance: 'common-practice',
  }),
  feed('water', 'water', containers(500, 1000), {
    name: 'water',
    feedClass: 'water',
    kcalPer100Ml: 0,
    proteinMgPer100Ml: 0,
    waterMlPerLitre: 1000,
    osmolality: 0,
    allergens: [],
    source: 'common-practice',
    provenance: 'common-practice',
  }),
];

export const DEFAULT_FEEDS: FeedList = {
  version: '1',
  feeds: [...ADULT_FEEDS, ...CHILD_FEEDS, ...OTHER_FEEDS],
};
