/** Are the ward's clock and its named times cheap once warm, against one conversion by the runtime's own Intl? */
import { DAY, instant } from '@feedwright/core/base/instant';
import { type DayName, dayAt, instantOf, timeOfDayAt, type Zone, zone } from '@feedwright/core/base/zone';
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
  const byIntl = new Intl.DateTimeFormat('en-GB', { timeZone: london, timeStyle: 'short' });
  const [clock = Number.NaN, named = Number.NaN, intl = 0] = await medians(
    60,
    each((index) => timeOfDayAt(at(index), london)),
    each((index) => instantOf(days[index] ?? '', index % 1440, london)),
    each((index) => byIntl.format(at(index)).length),
  );
  const micro = (ms: number) => (ms / TIMES) * 1000;
  report({
    what: 'time of day, against a conversion by Intl',
    measured: clock / intl,
    limit: 0.5,
    unit: '×',
  });
  report({ what: 'named time, against a conversion by Intl', measured: named / intl, limit: 0.5, unit: '×' });
  report({ what: 'time of day of an instant', measured: micro(clock), limit: 1, unit: 'µs' });
  report({ what: 'instant of a named time', measured: micro(named), limit: 3, unit: 'µs' });
}
