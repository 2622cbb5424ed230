/**
 * What does somebody at the bedside want to record? A wish, in the imperative: one for each family of facts, those that
 * rule about other entries, and the visit as planned. `act` turns it into entries or refuses it.
 */
import type { Duration, Instant } from '../base/instant.ts';
import type { Plan, Task } from '../plan/plan.ts';
import type { Policy, PolicyContext } from '../policy/policy.ts';
import type { Entry } from '../record/entry.ts';
import type {
  BodyFact,
  CareFact,
  ContainerFact,
  Fact,
  FactKind,
  GivenFact,
  OrderFact,
  PersonFact,
  PumpFact,
  TubeFact,
} from '../record/fact.ts';
import type { Ledger } from '../record/ledger.ts';

export type RulingKind = 'duplicate-settled/1' | 'entered-in-error/1';
/** Whatever is no ruling about other entries. */
export type PlainFact = Exclude<Fact, { readonly kind: RulingKind }>;

type Tells<W extends string, F> = { readonly wish: W; readonly fact: F; readonly task?: string };

export type Wish = { readonly happenedAt: Instant } & (
  | Tells<'change-order', OrderFact>
  | Tells<'describe-person', PersonFact>
  | Tells<'tend-tube', TubeFact>
  | Tells<'handle-container', ContainerFact>
  | Tells<'run-pump', PumpFact>
  | Tells<'give', GivenFact>
  | Tells<'examine', BodyFact>
  | Tells<'care', Exclude<CareFact, { readonly kind: RulingKind }>>
  /** Takes the place of an entry; it does the task that that one did, unless another is named. */
  | (Tells<'correct', PlainFact> & { readonly target: string })
  | { readonly wish: 'mark-in-error'; readonly target: string; readonly reason: string }
  | { readonly wish: 'settle-duplicate'; readonly keeps: string; readonly drops: string }
  /** Everything planned for that visit was done as planned. */
  | { readonly wish: 'do-visit'; readonly visit: Instant }
);

/** What a device remembers of itself over all courses: its entries are numbered, and its time never runs backwards. */
export type Device = {
  readonly id: string;
  readonly nextNumber: number;
  readonly lastRecordedAt: Instant | null;
};

/** Everything that is known where the wish is made. */
export type Acting = {
  readonly course: string;
  /** When the course began: feed, water and containers of this course were handled at no time before. */
  readonly begins: Instant;
  readonly ledger: Ledger;
  readonly plan: Plan | null;
  readonly policy: Policy;
  readonly context: PolicyContext;
  readonly by: string;
  readonly device: Device;
  readonly clock: Instant;
  /** How far clocks may differ before something that has not happened yet is refused. */
  readonly tolerance: Duration;
  readonly newId: () => string;
};

/** A task that is not done by saying so: what it finds, decides or needs has to be told. */
export type Asked = {
  readonly task: Task;
  readonly answeredBy: FactKind;
  readonly because: 'measured' | 'decided' | 'not-known';
};

export type Refusal = {
  readonly rule: string;
  readonly code: string;
  readonly data: Readonly<Record<string, unknown>>;
};

export type Acted =
  | {
      readonly ok: true;
      readonly entries: readonly Entry[];
      readonly asked: readonly Asked[];
      /** The device as it is to be remembered once the entries are kept. */
      readonly device: Device;
    }
  | { readonly ok: false; readonly refusal: Refusal };

export const refusal = (rule: string, code: string, data: Refusal['data'] = {}): Refusal => ({
  rule,
  code,
  data,
});
