/** [OR22] [OR23] Can what drives the feed give it in the way that is ordered? */
import type { Order, Problem, Regimen } from '../order.ts';
import { problem } from '../problem.ts';

type Method = NonNullable<Order['method']>;
type Verdict = 'fits' | 'unusual' | 'contradicts';

const PUMPED = { pump: 'fits', gravity: 'unusual', syringe: 'contradicts' } as const;

/** A rate is a pump's; a syringe gives boluses and nothing else; a funnel of a syringe gives them by gravity too. */
const FITS: Readonly<Record<Exclude<Regimen['kind'], 'intermittent'>, Readonly<Record<Method, Verdict>>>> = {
  continuous: PUMPED,
  cyclic: PUMPED,
  'volume-targeted': PUMPED,
  bolus: { pump: 'unusual', gravity: 'fits', syringe: 'fits' },
};

const verdict = (method: Method, regimen: Regimen): Verdict =>
  regimen.kind === 'intermittent'
    ? regimen.by === method
      ? 'fits'
      : 'contradicts'
    : FITS[regimen.kind][method];

export function method({ method: by, regimen }: Order): readonly Problem[] {
  if (by === null || regimen === null) return [];
  const says = {
    method: by,
    regimen: regimen.kind,
    ...(regimen.kind === 'intermittent' ? { by: regimen.by } : {}),
  };
  const found = verdict(by, regimen);
  if (found === 'fits') return [];
  return [
    problem(found === 'contradicts' ? 'order/method-contradicts' : 'order/method-unusual', ['method'], says),
  ];
}
