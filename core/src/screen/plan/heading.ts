/** Whose plan is this, and what are they fed with? */
import { feedById } from '../../feeds/feed.ts';
import type { Order } from '../../order/order.ts';
import type { Page } from './page.ts';

/** Name and identifiers: enough to know the person by two of them. */
export function whoLine({ patient }: Order): string {
  const ids = patient.identifiers.map((one) => `${one.kind} ${one.value}`);
  const born = patient.birthDate === null ? [] : [`born ${patient.birthDate}`];
  return [patient.name ?? '—', ...ids, ...born, ...(patient.place === null ? [] : [patient.place])].join(
    ' · ',
  );
}

export function feedLine(page: Page): string {
  const { order, words, feeds } = page;
  if (order.feed === null) return '';
  const { strength } = order.feed;
  const name = feedById(feeds, order.feed.id)?.name ?? order.feed.id;
  const share = strength.n === strength.d ? words.plan.full : `${strength.n}/${strength.d}`;
  const lumen = order.access?.lumens.find((one) => one.name === order.access?.feedBy);
  const by = order.access === null ? [] : [order.access.device, ...(lumen?.tip == null ? [] : [lumen.tip])];
  return [
    name,
    words.plan.strength(share),
    ...by,
    ...(order.method === null ? [] : [order.method]),
    ...(order.water === null ? [] : [words.plan.waters[order.water.water]]),
  ].join(' · ');
}
