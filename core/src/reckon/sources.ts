/**
 * Where is each equation, coefficient and convention printed, and how did we come by it?
 * The E ids are section “Equations” of docs/sources.md, which is written from this list; the S ids stand there already.
 */
import type { Basis, Provenance } from '../base/working.ts';
import { SOURCES as CITATIONS } from '../policy/sources.ts';

export type Source = { readonly cite: string; readonly taken: string; readonly provenance: Provenance };

const read = (cite: string, taken: string): Source => ({ cite, taken, provenance: 'read' });
const secondary = (cite: string, taken: string): Source => ({ cite, taken, provenance: 'secondary' });
const fromMemory = (cite: string, taken: string): Source => ({ cite, taken, provenance: 'from-memory' });

const S = (id: string): string => CITATIONS[id] ?? id;

export const SOURCES = {
  E1: read(
    'Practice enteral and parenteral calculations, dietetics course handout',
    'volume and rate for a goal; what is delivered is worked again from the rounded rate; formula water, extra water; 1 mL per kcal; lb/2.2',
  ),
  E2: read(
    'Nutrition support calculations, dietetics course NDFS 356, university worksheet with answers',
    'volume for a protein goal; nutrients per can and per 237 and 250 mL',
  ),
  E3: read(
    'Tube feeding worksheet 1, dietetics course, with answers',
    'grams from a percentage of energy; total kcal to nitrogen',
  ),
  E4: read(
    'Open RN, Nursing skills (open textbook), sections 5.7 and 5.16',
    'hours to empty, minutes from the decimal part; 1 fl oz as 30 mL, 1 tbsp as 15 mL',
  ),
  E5: read(
    'University of South Alabama, College of Nursing, dilution problems with answers',
    'formula = total × strength, water = total − formula',
  ),
  E6: read(
    'Paediatric practice handout, high-calorie formula or breast milk for the preterm infant',
    'recipes from liquid concentrate; ounces at 29.57 mL',
  ),
  E7: read(
    'Hospital patient handout 53:B:12a, term formula from powder to 22 kcal/oz',
    'powder adds volume: about 0.2 fl oz a scoop; 30 mL to the fl oz',
  ),
  E8: read(
    'Olsen, Giangrasso, Shrimpton, Medical dosage calculations, 10th edition, chapter 10',
    'drops per minute to the nearest whole drop',
  ),
  E9: read(
    'Davison N, Numeracy and clinical calculations for nurses; nursing numeracy test 300NAS209 (2008)',
    'intake less output; only what lies in the window counts',
  ),
  E10: read(
    'Intake and output practice packet, nursing worksheet',
    'ice counts half; irrigation is taken off the bag; feeds within a shift',
  ),
  E11: fromMemory(
    'Nursing practice, discarded residual',
    'what is thrown away is output; what is given back is not counted',
  ),
  E12: read(
    'Mifflin MD et al. A new predictive equation for resting energy expenditure. Am J Clin Nutr 1990;51:241–247',
    'abstract: 10W + 6.25H − 5A + 5 or − 161; long form 9.99W + 6.25H − 4.92A + 166 (men) − 161',
  ),
  E13: secondary('Harris JA, Benedict FG, 1919', 'both equations, four decimals'),
  E14: secondary(
    'Roza AM, Shizgal HM. Am J Clin Nutr 1984, by way of Expedition education update 4.4',
    'both revised equations',
  ),
  E15: secondary(
    'Penn State 2003b (Frankenfield 2004 and 2009), by way of a hospital manual of clinical nutrition management, 2013',
    'coefficients, and for whom it holds',
  ),
  E16: fromMemory(
    'Penn State 2010 (Frankenfield 2011)',
    'coefficients, and for whom it holds: 60 years or more and BMI 30 or more',
  ),
  E17: secondary(
    'McClave SA et al. SCCM/ASPEN guideline. JPEN 2016;40:159–211, recommendation Q5',
    '25–30 kcal/kg; BMI 30–50: 11–14 kcal/kg actual, over 50: 22–25 kcal/kg ideal; protein 2.0 and 2.5 g/kg ideal',
  ),
  E18: secondary(
    'ASPEN critical care guideline, 2022',
    '12–25 kcal/kg in the first 7 to 10 days of intensive care',
  ),
  E19: secondary('ESPEN guideline on nutrition in intensive care, 2023', '20–25 kcal/kg'),
  E20: secondary(
    'Schofield WN. Hum Nutr Clin Nutr 1985;39C suppl 1:5–41, by way of an encyclopedia article',
    'all twelve equations from weight; under 3 years the constant is subtracted',
  ),
  E21: secondary('FAO/WHO/UNU 1985, WHO technical report 724', 'basal rate from weight, by sex and age'),
  E22: fromMemory('FAO/WHO/UNU 1985, women over 60 years', '10.5W + 596; a secondary page prints 579'),
  E23: secondary(
    'FAO/WHO/UNU 2004, by way of Koletzko, Pediatric nutrition in practice 2015, page 37',
    'total energy of boys and girls of 1 to 18 years',
  ),
  E24: secondary(
    'NICE CG32, recommendation on the nutritional prescription, as reproduced by an evidence portal',
    '25–35 kcal/kg, 0.8–1.5 g protein/kg, 30–35 mL/kg for people not severely ill nor at risk of refeeding',
  ),
  E25: secondary('Devine BJ, 1974', '50 or 45.5 kg and 2.3 kg for each inch over 60'),
  E26: secondary(
    'Hamwi GJ, 1964',
    '106 lb and 6 lb, or 100 lb and 5 lb, for each inch over 60; ± 10 % for frame',
  ),
  E27: secondary('ESPEN adjusted weight, Critical Care 2022;26, table 1', 'ideal + 0.25 × (actual − ideal)'),
  E28: read(
    'University of Houston, pharmacy calculations, adjusted body weight, solved problem',
    'factor 0.4; 0.1, 0.2 and 0.25 named as in use',
  ),
  E29: secondary(
    'Holliday MA, Segar WE. Pediatrics 1957, by way of University of Texas Medical Branch, paediatric core',
    '100, 50 and 20 mL/kg a day; 4, 2 and 1 mL/kg/h',
  ),
  E30: secondary(
    'A yearly textbook of medical diagnosis and treatment, chapter on nutrition',
    '1500 mL for 20 kg and 20 mL for each further kg; 30–35 mL/kg',
  ),
  E31: secondary(
    'Dietetics course sheets (Gaston College DET 120 and others)',
    '15 or 25 mL for each kg over 20; 25, 30 and 35 mL/kg; 30 mL/kg at 55–75 years, 25 over 75',
  ),
  E32: read(
    'Saddleback College nursing, paediatric fluid calculation by weight and by body surface',
    '1500–2000 mL/m2 a day, 1200 restricted',
  ),
  E33: secondary(
    'Mosteller RD. N Engl J Med 1987;317:1098, by way of a PICU handbook, 2018',
    '√(H × W / 3600)',
  ),
  E34: secondary(
    'Du Bois D, Du Bois EF. Arch Intern Med 1916;17:863–871, by way of a pharmacy reference page',
    '0.007184 × H^0.725 × W^0.425',
  ),
  E35: read(
    'Practice enteral and parenteral calculations, dietetics course handout',
    'BMI, the height squared to two places first',
  ),
  E36: secondary('Body mass index in pounds and inches, course sheets', '703 × lb / in2'),
  E37: fromMemory(
    'NICE CG32, little eaten for more than five days',
    'at most half of needs for the first two days',
  ),
  E38: read(
    'ADEPT trial protocol. BMC Pediatrics 2009;9:63, tables 2 and 3',
    '150 mL/kg a day is 6.25 mL/kg/h; steps in two halves of 12 h',
  ),
  E39: secondary(
    'Forfar and Arneil’s textbook of pediatrics, 7th edition',
    '75, 90, 120, 135 and 150 mL/kg on days 1 to 5; at most 180',
  ),
  E40: secondary(
    'WHO 2003, number of feeds by weight, as given in neonatal feeding notes',
    'at least 8 feeds a day at 1.25–2.5 kg, 12 under 1.25 kg',
  ),
  E41: fromMemory(
    'WHO/NHD/02.4, Training course on the management of severe malnutrition, module 4',
    'starter formula 130 mL/kg a day, 100 with gross oedema, each feed to 5 mL',
  ),
  E42: secondary(
    'Neonatal feeding notes and course sheets',
    'mL/kg/day × kg; kcal = mL × kcal/oz / 30; birth weight in the first week, then the day before’s',
  ),
  E43: read(
    'California State University Northridge, parenteral nutrition tutorial, nitrogen balance',
    'N = protein / 6.25; balance = N in − (urine urea N + 4)',
  ),
  E44: read(
    'HSCI 368 handout, California State University San Bernardino',
    'kcal to nitrogen; 100–150:1 stressed, 250–300:1 maintenance',
  ),
  E45: secondary(
    'Fomon SJ, potential renal solute load, as printed on a paediatric teaching page',
    'N/28 + Na + Cl + K + P; estimate = potential − 0.9 × weight gain',
  ),
  E46: secondary(
    'Older estimate of renal solute load, paediatric teaching page',
    'Na + K + Cl + 4 × protein in g',
  ),
  E47: secondary(
    'Free-water deficit, general medical texts',
    'fraction × kg × (Na / target − 1); 0.6 child or man, 0.5 woman or older man, 0.45 older woman',
  ),
  E48: secondary('Corrected calcium, general medical texts', 'Ca + 0.8 × (4 − albumin)'),
  E49: fromMemory(
    'Dilution of a hypertonic liquid, pharmacy teaching',
    'final volume = volume × mOsm / wanted mOsm',
  ),
  E50: read(
    'Unified Code for Units of Measure (UCUM), tables',
    'lb 0.45359237 kg, in 2.54 cm, fl oz 29.5735295625 mL, Fr 1/3 mm, kcal 4.184 kJ, °F',
  ),
  E51: read(
    'IUPAC conventional atomic weights, 2016, as tabled by University of Wisconsin, Chem 109',
    'Na 22.99, Mg 24.31, P 30.97, Cl 35.45, K 39.10, Ca 40.08; C 12.01, H 1.008, N 14.01, O 16.00',
  ),
  E52: read('French catheter scale, encyclopedia article', '1 Fr is 1/3 mm of OUTER diameter'),
  E53: secondary(
    'van den Broek PW et al. Br J Nutr 2008',
    'within 10 % of what was ordered counts as adequate',
  ),
  E54: read(
    'Article on resting metabolic rate for general readers',
    'resting energy times an activity factor, half rounded up',
  ),
  E55: secondary('Percentage of usual weight lost, dietetics case studies', '(usual − now) / usual'),
  E56: fromMemory(
    'McClave SA et al. SCCM/ASPEN guideline, 2016, protein where BMI is under 30',
    '1.2–2.0 g/kg actual weight',
  ),
  E57: fromMemory('Dietetics course sheets, adults under 55 years', '35 mL/kg'),
  S7: secondary(S('S7'), 'NICE and ASPEN 2020: criteria, bands, starting energy'),
  S8: secondary(S('S8'), 'severity bands'),
  S30: read(S('S30'), 'start, step, 4 to 6 boluses a day, hours of a cycle'),
  S37: read(S('S37'), 'remaining volume over remaining hours, never over the ceiling'),
  S42: read(S('S42'), 'steps by weight; residual bands 25–50 % and over 50 %'),
  S112: secondary(S('S112'), 'phosphate 2.0 mg/dL or less, or a fall over 0.5 mg/dL'),
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;

export const basisOf = (id: SourceId): Basis => ({
  kind: 'published',
  source: id,
  provenance: SOURCES[id].provenance,
});
