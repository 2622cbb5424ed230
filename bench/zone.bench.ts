/** Are the ward's clock and its named times cheap once warm, against Temporal asked each time? */
import { DAY, instant } from '@feedwright/core/base/instant';
import { type DayName, dayAt, instantOf, timeOfDayAt, type Zone, zone } from '@feedwright/core/base/zone';
import { Temporal } from 'temporal-polyfill';
import { medians, type Report } from './measure.ts';

const TIMES = 2_000;
const START = Date.UTC(2026, 2, 22);

/** Fourteen days about a change of the clocks, in uneven steps. */
const moments = Array.from({ length: TIMES }, (_, index) => instant(START + index * 604_001));

/** The sum is handed back so that no compiler may leave the work out. */
const each = (run: (index: number) => number) => () => {
  let total = 0;
  for (let index = 0; index < TIMES; index++) total += run(index);
  return total;
};

export default async function zones(report: Report): Promise<void> {
  const london = zone('Europe/London') as Zone;
  const days: readonly DayName[] = moments.map((_, index) =>
    dayAt(instant(START + (index % 14) * DAY), london),
  );
  const at = (index: number) => moments[index] ?? instant(START);
  const [clock = Number.NaN, clockByTemporal = 0, named = Number.NaN, namedByTemporal = 0] = await medians(
    60,
    each((index) => timeOfDayAt(at(index), london)),
    each((index) => Temporal.Instant.fromEpochMilliseconds(at(index)).toZonedDateTimeISO(london).hour),
    each((index) => instantOf(days[index] ?? '', index % 1440, london)),
    each((index) => Temporal.PlainDate.from(days[index] ?? '').toZonedDateTime(london).epochMilliseconds),
  );
  const micro = (ms: number) => (ms / TIMES) * 1000;
  report({
    what: 'time of day of an instant, against Temporal',
    measured: clock / clockByTemporal,
    limit: 0.5,
    unit: '×',
  });
  report({
    what: 'instant of a named time, against Temporal',
    measured: named / namedByTemporal,
    limit: 0.5,
    unit: '×',
  });
  report({ what: 'time of day of an instant', measured: micro(clock), limit: 1, unit: 'µs' });
  report({ what: 'instant of a named time', measured: micro(named), limit: 3, unit: 'µs' });
}
