/**
 * Down which tube, to where?
 * The route's code names the tube for nasogastric, orogastric, gastrostomy and jejunostomy. It does not say which lumen of
 * a gastro-jejunal tube, nor what an "enteral feeding tube" is: asked. By mouth is no tube, and a vein never is.
 */
import type { Fraction } from '@feedwright/core/base/fraction';
import type { AccessDevice, DeviceKind, Lumen, TipSite } from '@feedwright/core/order/order';
import type { Dialect } from '../dialect.ts';
import { type Concept, conceptOf, labelOf, namesOf } from '../read/coded.ts';
import { type Element, field } from '../read/element.ts';
import { answered, answeredInstead, ask, type Place, stop } from '../read/reading.ts';

export const ROUTE_SYSTEM = 'http://terminology.hl7.org/CodeSystem/v3-RouteOfAdministration';

type Tube = { readonly device: DeviceKind | null; readonly tip: TipSite | null };

/** The value set of enteral routes (FHIR 4.0.1 and 5.0.0), less `PO`, which is no tube. */
export const TUBES: Readonly<Record<string, Tube>> = {
  NGT: { device: 'nasogastric', tip: 'gastric' },
  OGT: { device: 'orogastric', tip: 'gastric' },
  GT: { device: 'gastrostomy', tip: 'gastric' },
  JJTINSTL: { device: 'jejunostomy', tip: 'jejunal' },
  GJT: { device: 'gastro-jejunal', tip: null },
  // An orojejunal tube is no kind that an order knows.
  OJJ: { device: null, tip: 'jejunal' },
  EFT: { device: null, tip: null },
  ENTINSTL: { device: null, tip: null },
};

const TIPS: Readonly<Partial<Record<DeviceKind, TipSite>>> = {
  nasogastric: 'gastric',
  orogastric: 'gastric',
  gastrostomy: 'gastric',
  'gastrostomy-button': 'gastric',
  nasoduodenal: 'duodenal',
  nasojejunal: 'jejunal',
  jejunostomy: 'jejunal',
};

const isVein = (code: string): boolean => /^(IV|PCA|PARENT|_Intravenous|_Parenteral)/.test(code);
const speaksOfVein = (concept: Concept): boolean =>
  namesOf(concept).some((name) => /intra-?venous|parenteral|central (venous )?line|\biv\b/i.test(name));

/** [FH9] The code of the route where it is one for a tube; anything else is a stop or, unknown, a question. */
function tubeOf(route: Element): Tube | null {
  const concept = conceptOf(route);
  const codes = concept.codings.flatMap(({ system, code }) =>
    system === ROUTE_SYSTEM && code !== null ? [code] : [],
  );
  const label = labelOf(concept);
  if (codes.some(isVein) || speaksOfVein(concept)) {
    stop(route, 'FH9', 'fhir/route-intravenous', { route: label });
    return null;
  }
  const known = codes.filter((code) => Object.hasOwn(TUBES, code));
  if (known.length === 0) {
    if (codes.length > 0) {
      stop(route, 'FH9', 'fhir/route-no-tube', { route: label, code: codes[0] });
      return null;
    }
    return { device: null, tip: null };
  }
  if (known.length > 1) {
    stop(route, 'FH9', 'fhir/routes-several', { codes: known });
    return null;
  }
  return TUBES[known[0]!]!;
}

const lumen = (name: string, tip: TipSite | null, isFed: boolean): Lumen => ({
  name,
  tip,
  uses: isFed ? ['feed'] : [],
});

/** [FH10] Both lumens of a gastro-jejunal tube, and the one that is fed by. */
function gastroJejunal(place: Place, french: Fraction | null): AccessDevice {
  const feedBy = ask(place, 'FH10', 'fhir/lumen-unsaid', 'lumen');
  return {
    device: 'gastro-jejunal',
    french,
    lumens: (['gastric', 'jejunal'] as const).map((name) => lumen(name, name, name === feedBy)),
    feedBy,
    medicineBy: null,
    placedAt: null,
  };
}

/** A button is a gastrostomy too, by the same code. */
const refines = (device: DeviceKind, { device: routed }: Tube): boolean =>
  device === routed || (routed === 'gastrostomy' && device === 'gastrostomy-button');

/** [FH10] The kind of tube: as the route says, where nobody says otherwise. */
function deviceOf(place: Place, tube: Tube, called: DeviceKind | null): DeviceKind | null {
  const other = called ?? answered(place, 'device');
  const disagrees = tube.device !== null && other !== null && !refines(other, tube);
  if (tube.device !== null && !disagrees) return other ?? tube.device;
  return ask(place, 'FH10', disagrees ? 'fhir/device-disagrees' : 'fhir/device-unsaid', 'device', {
    routed: tube.device,
    called,
  });
}

const LUMEN = 'feed';

/**
 * [FH10] The access device; null where the route forbids one or does not tell, with the reason on record.
 * @param called what a Device in the same Bundle calls itself, for comparison only.
 */
export function accessOf(
  formula: Element,
  dialect: Dialect,
  french: Fraction | null,
  called: DeviceKind | null,
): AccessDevice | null {
  const route = field(formula, dialect.route);
  const tube = route === null ? { device: null, tip: null } : tubeOf(route);
  if (tube === null) return null;
  const place = route ?? formula;
  const device = deviceOf(place, tube, called);
  if (device === null) return null;
  if (device === 'gastro-jejunal') return gastroJejunal(place, french);
  const known = tube.tip ?? TIPS[device] ?? null;
  const tip = answeredInstead(place, 'tip', known ?? '', (said) => said === known) ?? known;
  return {
    device,
    french,
    lumens: [lumen(LUMEN, tip, true)],
    feedBy: LUMEN,
    medicineBy: null,
    placedAt: null,
  };
}
