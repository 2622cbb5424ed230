/** Where is each figure about gravity from, and how did we come by it? Section “Hydraulics” of docs/sources.md is written from this list. */
import type { Provenance } from '../../base/working.ts';

export type HydraulicSource = {
  readonly cite: string;
  readonly taken: string;
  readonly provenance: Provenance;
};

const read = (cite: string, taken: string): HydraulicSource => ({ cite, taken, provenance: 'read' });
const secondary = (cite: string, taken: string): HydraulicSource => ({
  cite,
  taken,
  provenance: 'secondary',
});
const fromMemory = (cite: string, taken: string): HydraulicSource => ({
  cite,
  taken,
  provenance: 'from-memory',
});

export const HYDRAULICS = {
  H1: read(
    '12 nasogastric tubes and 13 liquid feeds on the bench. Clin Nutr 1984, PMID 16829427',
    'abstract: viscosity 1.9–28 mPa·s at 24 °C and 1.4–19 at 37 °C; stated bores 88–119 % of true ones; 1 to 2 mm bore runs ten times as fast; side eyes do not matter',
  ),
  H2: read(
    'Drainage catheters of 6–12 Fr by ISO 10555-1. Sci Rep 2025, doi 10.1038/s41598-024-71935-w',
    'abstract: bores by pin gauge and flows of water under 1 m, means and deviations',
  ),
  H5: read('A 10 mL syringe that was measured', 'bore 14.4 mm'),
  H6: read(
    'IAPWS SR6-08, properties of liquid water at 0.1 MPa, with a published table of water',
    'table read: 1.002 mPa·s at 20 °C, 0.797 at 30 °C; coefficients from memory',
  ),
  H7: secondary(
    'Steam tables as reprinted in a chemical engineers’ handbook, 9th edition',
    '0.8538 mPa·s at 300 K, 0.6935 at 310 K',
  ),
  H11: read(
    'Flow test with a 10 mL syringe. Ann Biomed Eng 2019, doi 10.1007/s10439-019-02308-y, with the bulletin of April 2017 on the test',
    'what is left after 10 s; water runs out in about 7 s',
  ),
  H13: read(
    'Intragastric pressure while feeding, PubMed 22519421',
    'fasting 9.6 ± 0.9 mmHg; falls at first, then rises',
  ),
  H15: read(
    'Bladder pressure and position. ANZ J Surg 2006, doi 10.1111/j.1445-2197.2006.03849.x',
    'medians 9.5, 11.5 and 14.0 cmH₂O flat, at 30° and at 45°; ranges 1–18, 3–19, 4–22',
  ),
  H18: read(
    'Gravity flow through intravenous cannulae, bench. Conference abstract 3AP8-8, 2007',
    'regressions Q = 113.3 d^2.21 and Q = 2.87 P^0.62',
  ),
  H19: read(
    'School laboratory bench study of a 7 Fr line, 20 against 10 cm, with saline',
    '94.8 and 72.0 mL/min',
  ),
  H20: read(
    'Blenderised feeds and the small-bore connector. J Am Coll Nutr 2019;38:311–317',
    'abstract: 20 min become 32 ± 18 min through ordinary gastrostomy tubes of 14–24 Fr',
  ),
  H21: secondary(
    'Catalogue flows of intravenous cannulae as compiled in two texts',
    'flows and lengths; bores not stated',
  ),
  H23: read(
    'Five fibre feeds by gravity through 8, 10 and 12 Fr. Nutr Hosp 2015;32:683–690, doi 10.3305/nh.2015.32.2.9199',
    'abstract: the two densest take over 4 h through 8 Fr, all others under 2 h 5 min',
  ),
  H36: fromMemory(
    'Hagenbach and Poiseuille, as in every textbook of viscometry',
    'laminar flow through a tube, with 1.14 ρv² for its two ends',
  ),
  H37: fromMemory(
    'ISO 10555-1, flow of water under 1 m of head',
    'rig that lets 525 mL/min through with nothing on it',
  ),
  H38: fromMemory(
    'Churchill SW. Friction factor equation spans all regimes. Chem Eng 1977;84(24):91–92; Moody LF. Trans ASME 1944;66:671–684',
    'friction factor of a smooth tube; values of the chart',
  ),
  H39: fromMemory(
    'Metzner AB, Reed JC. AIChE J 1955;1:434–440, and textbooks on liquids that thin as they move',
    'general Reynolds number, kinetic energy of the stream, end of laminar flow',
  ),
  H40: fromMemory(
    'Usual measures of tubes, sets, connectors and barrels, and usual viscosities of classes of feed',
    'bore by French size and material; giving set 3–4 mm; connector 2.9 mm over 2 cm; 60 mL barrel 26.7 mm; 5–15, 15–40 and 50–120 mPa·s; breathing ± 2–5 cmH₂O',
  ),
  H41: fromMemory('Kell GS. J Chem Eng Data 1975;20:97–105', 'density of water'),
} as const satisfies Readonly<Record<string, HydraulicSource>>;

export type HydraulicId = keyof typeof HYDRAULICS;
