/** Which fields of an order has a NutritionOrder no place for? Those that say something are named, so that nothing is lost unseen. */
import type { Order } from '@feedwright/core/order/order';
import { ON_HOLD } from '../read/in-force.ts';

/** Whether a field says something: not null, not empty, not nothing. */
const speaks = (value: unknown): boolean =>
  typeof value === 'object' && value !== null
    ? Object.values(value).some(speaks)
    : value !== null && value !== 0 && value !== false;

/** The fields of an order that a NutritionOrder alone has no place for. */
export function leftBehind(order: Order): readonly string[] {
  const { patient, feed, access, holds } = order;
  const fields: Readonly<Record<string, unknown>> = {
    replaces: order.replaces,
    zone: order.zone,
    setting: order.setting,
    'patient.birthDate': patient.birthDate,
    'patient.identifiers': patient.identifiers.slice(1),
    'patient.place': patient.place,
    'patient.dosingWeight': patient.dosingWeight,
    'patient.heightCm': patient.heightCm,
    'prescriber.role': order.prescriber?.role ?? null,
    'feed.strength': feed !== null && feed.strength.n !== feed.strength.d ? feed.strength : null,
    'feed.preparedAt': feed?.preparedAt ?? null,
    'feed.expiresAt': feed?.expiresAt ?? null,
    access: access === null ? null : [access.french, access.lumens, access.medicineBy, access.placedAt],
    method: order.method,
    water: order.water,
    holds: holds.filter(({ id }) => id !== ON_HOLD),
    medicines: order.medicines,
    modules: order.modules,
    mostRate: order.mostRate,
    fluidLimitPerDay: order.fluidLimitPerDay,
    intravenousPerDay: order.intravenousPerDay,
    otherEnergy: order.otherEnergy,
    needs: order.needs,
    catchUpProtocol: order.catchUpProtocol,
    refeedingCaution: order.refeedingCaution,
    confirmations: order.confirmations,
  };
  return Object.keys(fields).filter((name) => speaks(fields[name]));
}
