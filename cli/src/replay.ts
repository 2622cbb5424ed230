/** `feedwright replay FILE`: what was true of each course at a moment, by its record, and the plan from there. */
import { type Instant, later } from '@feedwright/core/base/instant';
import { showInstant, type Zone } from '@feedwright/core/base/zone';
import type { FeedList } from '@feedwright/core/feeds/feed';
import type { Plan } from '@feedwright/core/plan/plan';
import { planFor } from '@feedwright/core/plan/plan-for';
import type { Policy } from '@feedwright/core/policy/policy';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import { BLANK, type Line } from '@feedwright/core/screen/line';
import { planJson } from '@feedwright/core/screen/plan/json';
import { planLines } from '@feedwright/core/screen/plan/text';
import { standingJson } from '@feedwright/core/screen/standing/json';
import { standingLines } from '@feedwright/core/screen/standing/text';
import type { CourseStanding } from '@feedwright/core/standing/standing-at';
import { type Ward, wardOf, wardStandings, zoneOf } from '@feedwright/core/standing/ward';
import { momentArgument } from './arguments.ts';
import { feedsFrom, policyFrom } from './facility.ts';
import { refuse } from './fail.ts';
import { entriesIn } from './ledger-entries.ts';
import { plain, printJson, printLines } from './print.ts';

type ReplayOptions = {
  readonly at?: string;
  readonly course?: string;
  readonly policy?: string;
  readonly feeds?: string;
  readonly json?: boolean;
  readonly working?: boolean;
};

const UTC = 'UTC' as Zone;

/** Somebody of whom the record knows something by then, and what should happen from there. */
type Replayed = {
  readonly course: string;
  readonly zone: Zone;
  readonly standing: CourseStanding;
  readonly plan: Plan | null;
};

type Facility = { readonly policy: Policy; readonly feeds: FeedList };

function replayed(ward: Ward, at: Instant, facility: Facility): readonly Replayed[] {
  const standings = wardStandings(ward, { at, ...facility, zone: UTC });
  return [...standings]
    .filter(([, { entries }]) => entries > 0)
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([course, standing]) => {
      const { orderInForce: order } = standing;
      const plan = order.kind === 'one' ? planFor({ order: order.order, standing, ...facility }) : null;
      return { course, zone: zoneOf(ward.get(course)!, UTC), standing, plan };
    });
}

const rule = (): readonly Line[] => [BLANK, plain('─'.repeat(72), 'quiet')];

function courseLines({ course, zone, standing, plan }: Replayed, feeds: FeedList, workings: boolean) {
  const { orderInForce: order } = standing;
  const says = standingLines(course, standing, zone, { words: ENGLISH, plan, workings });
  if (order.kind !== 'one' || plan === null) return says;
  return [...says, BLANK, ...planLines(plan, order.order, { words: ENGLISH, feeds, workings })];
}

const courseJson = ({ course, zone, standing, plan }: Replayed) => ({
  standing: standingJson(course, standing, { zone, words: ENGLISH }),
  plan: plan === null ? null : planJson(plan, { zone, words: ENGLISH }),
});

/** The latest moment of which the record tells. */
const lastMoment = (entries: readonly AnyEntry[]): Instant =>
  entries.map((one) => one.happenedAt).reduce(later);

function chosen(entries: readonly AnyEntry[], course: string | undefined): readonly AnyEntry[] {
  if (course === undefined) return entries;
  const own = entries.filter((one) => one.course === course);
  const known = [...new Set(entries.map((one) => one.course))].toSorted();
  return own.length > 0 ? own : refuse('--course', 'argument/name', { text: course, known });
}

/** By the clock of the orders, where they have one clock between them. */
function clockOf(ward: Ward): Zone {
  const zones = new Set([...ward.values()].map((held) => zoneOf(held, UTC)));
  const [only] = zones;
  return zones.size === 1 && only !== undefined ? only : UTC;
}

export async function replay(file: string, options: ReplayOptions): Promise<void> {
  const facility = { policy: policyFrom(options.policy), feeds: feedsFrom(options.feeds) };
  const entries = chosen(await entriesIn(file), options.course);
  const ward = wardOf(entries);
  const zone = clockOf(ward);
  const at = options.at === undefined ? lastMoment(entries) : momentArgument('--at', options.at, zone);
  const courses = replayed(ward, at, facility);
  if (options.json === true) {
    printJson({
      document: 'feedwright-replay/1',
      at: showInstant(at, zone),
      courses: courses.map(courseJson),
    });
    return;
  }
  const says = courses.map((one) => courseLines(one, facility.feeds, options.working === true));
  if (says.length === 0) printLines([plain(`Nothing is on record by ${showInstant(at, zone)}.`)]);
  else printLines(says.flatMap((lines, index) => [...(index === 0 ? [] : rule()), ...lines]));
}
