/**
 * How is what is given, by which tube and how, said as an enteral formula? A strength or a hold, which somebody must not
 * miss and FHIR has no element for, is put into the instruction, where a person reads it.
 */
import { showInstant } from '@feedwright/core/base/zone';
import type { AccessDevice, Order } from '@feedwright/core/order/order';
import type { Dialect, JsonObject } from '../dialect.ts';
import { ON_HOLD } from '../read/in-force.ts';
import { UCUM_SYSTEM } from '../read/quantity.ts';
import { parseUcum } from '../ucum.ts';
import { ROUTE_SYSTEM } from '../who/route.ts';
import { administrations } from './administrations.ts';
import { mL, type Out, quantity } from './quantity.ts';

const ROUTES: Readonly<Record<AccessDevice['device'], string>> = {
  nasogastric: 'NGT',
  orogastric: 'OGT',
  gastrostomy: 'GT',
  'gastrostomy-button': 'GT',
  'gastro-jejunal': 'GJT',
  jejunostomy: 'JJTINSTL',
  // The value set has no code for these.
  nasoduodenal: 'EFT',
  nasojejunal: 'EFT',
};

const routeOf = ({ device }: AccessDevice): JsonObject => ({
  coding: [{ system: ROUTE_SYSTEM, code: ROUTES[device] }],
  text: `${device} tube`,
});

/** `20 mL` as a Quantity; a free text is no amount that FHIR has a place for. */
function amountOf(text: string | null): JsonObject | null {
  const [, value = '', code = ''] = /^(\d{1,9}(?:\.\d{1,6})?) (\S+)$/.exec(text ?? '') ?? [];
  return value === '' || parseUcum(code) === null
    ? null
    : { value: Number(value), unit: code, system: UCUM_SYSTEM, code };
}

function additivesOf(out: Out, dialect: Dialect, { additives }: NonNullable<Order['feed']>): JsonObject {
  const amounts = additives.map(({ name, amount }) => ({ name, quantity: amountOf(amount) }));
  const { elements, carried } = dialect.toAdditives(amounts);
  const isLost = additives.some(
    ({ amount }, place) =>
      place >= carried ||
      (amount !== null && (dialect.version === 'R4' || amounts[place]!.quantity === null)),
  );
  if (isLost) out.notCarried.add('feed.additives');
  return elements;
}

/** What somebody must not miss although FHIR has no element for it. */
function instructionOf(order: Order): string | null {
  const { feed, holds, zone } = order;
  const strength = feed !== null && feed.strength.n !== feed.strength.d ? feed.strength : null;
  const lines = [
    ...(strength === null ? [] : [`Dilute to ${strength.n}/${strength.d} strength.`]),
    ...holds
      .filter(({ id }) => id !== ON_HOLD)
      .map(({ from, until }) => {
        const end = until === null ? '' : ` to ${showInstant(until, zone)}`;
        return `Hold from ${showInstant(from, zone)}${end}.`;
      }),
  ];
  return lines.length === 0 ? null : lines.join(' ');
}

export function formulaOf(out: Out, dialect: Dialect, order: Order): JsonObject {
  const { feed, access, regimen, mostVolumePerDay } = order;
  const bounds = { from: order.startsAt, until: order.endsAt };
  const given = regimen === null ? [] : administrations(out, dialect, bounds, regimen);
  const density = feed?.statedKcalPerMl ?? null;
  const instruction = instructionOf(order);
  return {
    ...(feed === null
      ? {}
      : { baseFormulaType: dialect.toConcept(feed.id), ...additivesOf(out, dialect, feed) }),
    ...(density === null
      ? {}
      : { caloricDensity: quantity(out, density, 'kcal/mL', 'feed.statedKcalPerMl') }),
    ...(access === null ? {} : { [dialect.route]: routeOf(access) }),
    ...(given.length === 0 ? {} : { administration: given }),
    ...(mostVolumePerDay === null
      ? {}
      : { maxVolumeToDeliver: mL(out, mostVolumePerDay, 'mostVolumePerDay', 'mL/d') }),
    ...(instruction === null ? {} : { administrationInstruction: instruction }),
  };
}
