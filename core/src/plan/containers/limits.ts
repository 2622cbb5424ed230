/**
 * By when must a container come down, and because of what? The hang clock starts when it is spiked or first poured; a
 * pause does not stop it. Every limit that applies is kept, because the shortest one governs and a nurse asks which.
 */
import { after, type Duration, duration, type Instant, instant } from '../../base/instant.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownDuration,
  shownInstant,
  type Worked,
  type WorkingInput,
  worked,
} from '../../base/working.ts';
import type { Feed } from '../../feeds/feed.ts';
import type { Order } from '../../order/order.ts';
import type { PolicyKey } from '../../policy/keys.ts';
import type { Local, Said } from '../local.ts';
import type { DownBecause } from '../plan.ts';

/** Elapsed time from putting up. */
export type HangLimit = {
  readonly because: DownBecause;
  readonly symbol: string;
  readonly lasts: Duration;
  readonly basis: Basis;
};
/** A moment past which what is hanging may not hang, whenever it was put up. */
export type FixedLimit = { readonly because: DownBecause; readonly at: Instant; readonly basis: Basis };

export type ContainerLimits = {
  readonly hang: readonly HangLimit[];
  readonly fixed: readonly FixedLimit[];
  /** Taken off the hang limit when planning, so that a late visit is not at once a broken limit. */
  readonly margin: Said<Duration>;
};

type OrderedFeed = NonNullable<Order['feed']>;
type ClassKey = Exclude<Extract<PolicyKey, `hang.${string}`>, 'hang.margin'>;

const isDiluted = ({ strength }: OrderedFeed): boolean => strength.n < strength.d;

/** Spiked as it comes: a closed container whose feed is diluted or mixed with something has been opened and poured. */
export const isSpiked = (feed: Feed, ordered: OrderedFeed): boolean =>
  feed.system === 'closed' && !isDiluted(ordered) && ordered.additives.length === 0;

const CLASS_KEYS: Readonly<Record<Feed['system'], ClassKey>> = {
  closed: 'hang.closed',
  'open-liquid': 'hang.open-liquid',
  powder: 'hang.powder',
  concentrate: 'hang.concentrate',
  'human-milk': 'hang.human-milk',
  blenderised: 'hang.blenderised',
  water: 'hang.water',
};

/** [PL12] Which class limits apply: how the feed comes, and what was done to it at the bedside. */
function classKeys(feed: Feed, ordered: OrderedFeed): readonly ClassKey[] {
  const asItComes =
    feed.system === 'closed' && !isSpiked(feed, ordered) ? 'hang.open-liquid' : CLASS_KEYS[feed.system];
  const liquid = feed.system === 'closed' || feed.system === 'open-liquid';
  return [
    asItComes,
    ...(liquid && isDiluted(ordered) ? (['hang.water-added'] as const) : []),
    ...(ordered.additives.length > 0 ? (['hang.additives'] as const) : []),
  ];
}

const NO_MARGIN: Said<Duration> = { value: duration(0), basis: ARITHMETIC };

function fixedLimits(ordered: OrderedFeed, local: Local): readonly FixedLimit[] {
  const limits: FixedLimit[] = [];
  if (ordered.expiresAt !== null) {
    const basis: Basis = { kind: 'order', path: 'feed.expiresAt' };
    limits.push({ because: 'expiry', at: ordered.expiresAt, basis });
  }
  const keep = ordered.preparedAt === null ? null : local.must('prepared.keep-for');
  if (ordered.preparedAt !== null && keep !== null) {
    limits.push({ because: 'prepared-limit', at: after(ordered.preparedAt, keep.value), basis: keep.basis });
  }
  return limits;
}

/** What was opened for a pour may be used no longer than what is kept of it: said where that is the shorter. */
function openedLimit(feed: Feed, hang: readonly HangLimit[], local: Local): readonly HangLimit[] {
  const keep = feed.packs.some((pack) => pack.kind === 'carton') && local.may('carton.keep')?.value === true;
  const limit = keep ? local.may('carton.keep-for') : null;
  return limit === null || hang.every((one) => one.lasts <= limit.value)
    ? []
    : [{ because: 'opened-limit', symbol: 'H_opened', lasts: limit.value, basis: limit.basis }];
}

/** Every limit of the feed's containers, the set's own apart. What policy does not say is missed there. */
export function limitsFor(feed: Feed, ordered: OrderedFeed, local: Local): ContainerLimits {
  const hang: HangLimit[] = [];
  for (const key of classKeys(feed, ordered)) {
    const limit = local.must(key);
    if (limit !== null) {
      const symbol = key === 'hang.water-added' ? 'H_water' : key === 'hang.additives' ? 'H_additives' : 'H';
      hang.push({ because: 'hang-limit', symbol, lasts: limit.value, basis: limit.basis });
    }
  }
  if (feed.labelHangLimit !== null) {
    const basis: Basis = { kind: 'feed-list', feed: feed.id, field: 'labelHangLimit' };
    hang.push({ because: 'label-limit', symbol: 'H_label', lasts: duration(feed.labelHangLimit), basis });
  }
  const opened = isSpiked(feed, ordered) ? [] : openedLimit(feed, hang, local);
  return {
    hang: [...hang, ...opened],
    fixed: fixedLimits(ordered, local),
    margin: local.may('hang.margin') ?? NO_MARGIN,
  };
}

/** A batch or product already past its limit when the container was put up was not what went into it. */
const standing = (limits: ContainerLimits, putUpAt: Instant): readonly FixedLimit[] =>
  limits.fixed.filter((limit) => limit.at > putUpAt);

/**
 * [PL13] The last moment to which a container put up at `putUpAt` is planned to hang: the shortest of its limits, a hang
 * limit less the margin. `more` are limits of this container alone, such as its set's.
 */
export function plannedDown(
  limits: ContainerLimits,
  putUpAt: Instant,
  more: readonly FixedLimit[] = [],
): Instant {
  let least = Number.POSITIVE_INFINITY;
  for (const { lasts } of limits.hang) least = Math.min(least, putUpAt + lasts - limits.margin.value);
  for (const { at } of standing(limits, putUpAt)) least = Math.min(least, at);
  for (const { at } of more) least = Math.min(least, at);
  return instant(Math.max(least, putUpAt));
}

export type TakeDown = { readonly by: Worked<Instant>; readonly because: DownBecause };

const SYMBOLS: Readonly<Record<DownBecause, string>> = {
  'hang-limit': 't_hang',
  'label-limit': 't_label',
  'set-limit': 't_set',
  expiry: 't_expiry',
  'prepared-limit': 't_prepared',
  'opened-limit': 't_opened',
  'feed-ends': 't_end',
};

type Candidate = {
  readonly at: Instant;
  readonly because: DownBecause;
  readonly term: string;
  readonly input: WorkingInput;
};

const ofHang = (limit: HangLimit, putUpAt: Instant): Candidate => ({
  at: after(putUpAt, limit.lasts),
  because: limit.because,
  term: `t_up + ${limit.symbol}`,
  input: input(limit.symbol, shownDuration(limit.lasts), limit.basis),
});

const ofFixed = ({ at, because, basis }: FixedLimit): Candidate => ({
  at,
  because,
  term: SYMBOLS[because],
  input: input(SYMBOLS[because], shownInstant(at), basis),
});

/** [PL12] By when a container put up at `putUpAt` must be down, which limit says so, and the others it was weighed against. */
export function takeDown(
  limits: ContainerLimits,
  putUpAt: Instant,
  more: readonly FixedLimit[] = [],
): TakeDown {
  // Sorting keeps the order of equals: of limits that fall together the feed's own is named before the set's.
  const all = [
    ...limits.hang.map((limit) => ofHang(limit, putUpAt)),
    ...[...standing(limits, putUpAt), ...more].map(ofFixed),
  ].toSorted((a, b) => a.at - b.at);
  const terms = all.map(({ term }) => term);
  const first = all[0];
  const by = worked(first?.at ?? putUpAt, shownInstant, {
    symbol: 't_down',
    equation: `t_down = ${terms.length > 1 ? `min(${terms.join(', ')})` : (terms[0] ?? 't_up')}`,
    inputs: [input('t_up', shownInstant(putUpAt), ARITHMETIC), ...all.map((one) => one.input)],
    rule: 'PL12',
    basis: first?.input.basis ?? ARITHMETIC,
  });
  return { by, because: first?.because ?? 'hang-limit' };
}
