/**
 * What becomes of a wish: entries, or a refusal? The only door through which new entries come. Time, identity and the
 * device's own counter arrive as arguments; what was recorded so far and what was planned are looked at, nothing is
 * changed.
 */
import { type Instant, instant } from '../base/instant.ts';
import { localFor } from '../plan/local.ts';
import type { Plan, Visit } from '../plan/plan.ts';
import { sayTheSame } from '../record/duplicates.ts';
import type { Entry } from '../record/entry.ts';
import type { Fact } from '../record/fact.ts';
import { counts, entryOf, type Ledger, withEntry } from '../record/ledger.ts';
import { orderAt } from '../record/orders.ts';
import { atNoTime, impossibleIn, unacceptable } from './impossible.ts';
import { asPlanned } from './planned.ts';
import { situationAt } from './situation.ts';
import {
  type Acted,
  type Acting,
  type Asked,
  type Device,
  type Refusal,
  refusal,
  type Wish,
} from './wish.ts';

const refused = (why: Refusal): Acted => ({ ok: false, refusal: why });

/** [AC11] A device's time never runs backwards: where its clock was set back, it records at its last moment. */
const recordedAt = ({ clock, device }: Acting): Instant =>
  instant(Math.max(clock, device.lastRecordedAt ?? clock));

type Told = {
  readonly fact: Fact;
  readonly happenedAt: Instant;
  readonly task?: string | null;
  readonly corrects?: string | null;
};

function entryFor(acting: Acting, number: number, told: Told): Entry {
  const { course, by, device, ledger, policy, newId } = acting;
  const inForce = orderAt(ledger, told.happenedAt);
  return {
    id: newId(),
    course,
    happenedAt: told.happenedAt,
    recordedAt: recordedAt(acting),
    by,
    device: device.id,
    number,
    order: inForce.kind === 'one' ? inForce.order.id : null,
    policy: policy.version,
    task: told.task ?? null,
    corrects: told.corrects ?? null,
    fact: told.fact,
  };
}

const wrongWith = (acting: Acting, entry: Entry, ledger: Ledger): Refusal | null =>
  unacceptable(entry) ??
  atNoTime(entry, acting) ??
  impossibleIn(situationAt(ledger, entry.happenedAt, entry.corrects), entry.fact);

/** Each after the one before it, as if that had been recorded already; all of them or none. */
function record(acting: Acting, told: readonly Told[], asked: readonly Asked[] = []): Acted {
  const entries: Entry[] = [];
  let { ledger } = acting;
  for (const one of told) {
    const entry = entryFor(acting, acting.device.nextNumber + entries.length, one);
    const wrong = wrongWith(acting, entry, ledger);
    if (wrong !== null) return refused(wrong);
    ledger = withEntry(ledger, entry);
    entries.push(entry);
  }
  const device: Device =
    entries.length === 0
      ? acting.device
      : {
          ...acting.device,
          nextNumber: acting.device.nextNumber + entries.length,
          lastRecordedAt: recordedAt(acting),
        };
  return { ok: true, entries, asked, device };
}

type Of<W extends Wish['wish']> = Extract<Wish, { readonly wish: W }>;

/** [AC9] Once is enough, and what marks in error is never in error itself. */
function markInError(acting: Acting, { target, reason, happenedAt }: Of<'mark-in-error'>): Acted {
  const entry = entryOf(acting.ledger, target);
  if (entry === null) return refused(refusal('AC9', 'act/no-such-entry', { id: target }));
  if (entry.fact.kind.startsWith('entered-in-error/')) {
    return refused(refusal('AC9', 'act/marks-in-error-itself', { id: target }));
  }
  const out = acting.ledger.out.get(target);
  return out === undefined
    ? record(acting, [{ happenedAt, fact: { kind: 'entered-in-error/1', target, reason } }])
    : refused(refusal('AC9', 'act/out-already', { id: target, ...out }));
}

/** [AC10] Only of two that are marked as likely one. */
function settle(acting: Acting, { keeps, drops, happenedAt }: Of<'settle-duplicate'>): Acted {
  const { ledger, policy, context } = acting;
  const within = localFor(policy, context).may('duplicate.within');
  if (within === null) return refused(refusal('AC10', 'act/policy-silent', { key: 'duplicate.within' }));
  const [kept, dropped] = [entryOf(ledger, keeps), entryOf(ledger, drops)];
  const bothCount = kept !== null && dropped !== null && counts(ledger, kept) && counts(ledger, dropped);
  return bothCount && sayTheSame(kept, dropped, within.value)
    ? record(acting, [{ happenedAt, fact: { kind: 'duplicate-settled/1', keeps, drops } }])
    : refused(refusal('AC10', 'act/no-duplicates', { keeps, drops, within: within.value }));
}

/** [AC14] Only what counts can be corrected; the correction does the task that it did. */
function correct(acting: Acting, { target, fact, task, happenedAt }: Of<'correct'>): Acted {
  const entry = entryOf(acting.ledger, target);
  if (entry === null) return refused(refusal('AC14', 'act/no-such-entry', { id: target }));
  const out = acting.ledger.out.get(target);
  if (out !== undefined) return refused(refusal('AC14', 'act/out-already', { id: target, ...out }));
  return entry.fact.kind.startsWith('entered-in-error/')
    ? refused(refusal('AC14', 'act/marks-in-error-itself', { id: target }))
    : record(acting, [{ happenedAt, fact, task: task ?? entry.task, corrects: target }]);
}

const isDone = (ledger: Ledger, task: string): boolean =>
  ledger.entries.some((entry) => entry.task === task && counts(ledger, entry));

const visitAt = (plan: Plan | null, at: Instant): Visit | null =>
  plan?.visits.find((visit) => visit.at === at) ?? null;

/** [AC12] [AC13] The visit as planned: what is done already is left out, what has to be told is asked for. */
function doVisit(acting: Acting, { visit: at, happenedAt }: Of<'do-visit'>): Acted {
  const { ledger, plan, policy, context, newId } = acting;
  const visit = visitAt(plan, at);
  if (plan === null || visit === null) return refused(refusal('AC13', 'act/no-such-visit', { visit: at }));
  const inForce = orderAt(ledger, happenedAt);
  if (inForce.kind !== 'one') return refused(refusal('AC13', 'act/no-order', { inForce: inForce.kind }));
  const { containers, waterBags } = plan;
  const planned = {
    visit,
    containers,
    waterBags,
    order: inForce.order,
    newId,
    local: localFor(policy, context),
  };
  const told: Told[] = [];
  const asked: Asked[] = [];
  for (const task of visit.tasks.filter(({ id }) => !isDone(ledger, id))) {
    const outcome = asPlanned(task, planned);
    if ('facts' in outcome) told.push(...outcome.facts.map((fact) => ({ fact, happenedAt, task: task.id })));
    else asked.push({ task, ...outcome });
  }
  return told.length + asked.length === 0
    ? refused(refusal('AC13', 'act/visit-done', { visit: at }))
    : record(acting, told, asked);
}

/**
 * Turns a wish into entries that every ledger accepts, or says by which rule it is impossible. What has still to be told
 * comes back as asked.
 */
export function act(acting: Acting, wish: Wish): Acted {
  switch (wish.wish) {
    case 'mark-in-error':
      return markInError(acting, wish);
    case 'settle-duplicate':
      return settle(acting, wish);
    case 'correct':
      return correct(acting, wish);
    case 'do-visit':
      return doVisit(acting, wish);
    default:
      return record(acting, [{ happenedAt: wish.happenedAt, fact: wish.fact, task: wish.task ?? null }]);
  }
}
