/** Where is the tube, how does the person lie, how is the feed borne, what was weighed and measured? */

import type { LabValue } from '../../standing/readings/person.ts';
import type { Residual } from '../../standing/readings/tolerance.ts';
import type { TubeCheck } from '../../standing/readings/tube.ts';
import type { CourseStanding } from '../../standing/standing-at.ts';
import { type Line, line } from '../line.ts';
import { showFraction, showVolume } from '../number.ts';
import { type StandingPage, time } from './page.ts';

function checkText(check: TubeCheck, page: StandingPage): string {
  const { standing } = page.words;
  const { method, ph, markCm, reader, at, confirmed } = check;
  const how = [
    ph === null ? standing.methods[method] : `${standing.methods[method]} ${showFraction(ph, 1)}`,
    ...(markCm === null ? [] : [standing.mark(showFraction(markCm, 1))]),
    ...(reader === null ? [] : [standing.reader(reader)]),
  ].join(', ');
  return confirmed ? standing.confirmed(how, time(at, page)) : standing.notConfirmed(how, time(at, page));
}

function checkLine({ tube }: CourseStanding, page: StandingPage): Line {
  const { lastCheck } = tube;
  if (lastCheck === null) return line(`  ${page.words.standing.neverConfirmed}`, 'ask');
  return line(`  ${checkText(lastCheck, page)}`, lastCheck.confirmed ? 'body' : 'stop');
}

export function tubeLines(standing: CourseStanding, page: StandingPage): readonly Line[] {
  const { words } = page;
  const { tube, orderInForce, position } = standing;
  const ordered = orderInForce.kind === 'one' ? orderInForce.order.access : null;
  const device = (tube.access ?? ordered)?.device ?? null;
  const name = device === null ? [] : [words.standing.devices[device]];
  const placed = tube.placedAt === null ? [] : [words.standing.tubePlaced(time(tube.placedAt, page))];
  const is = [...name, ...placed].join(', ');
  return [
    ...(is === '' ? [] : [line(`  ${is}`)]),
    ...(tube.out === null
      ? [checkLine(standing, page)]
      : [line(`  ${words.standing.tubeOut(time(tube.out.at, page), tube.out.how)}`, 'stop')]),
    ...(tube.movedSinceConfirmed ? [line(`  ${words.standing.tubeMoved}`, 'stop')] : []),
    ...tube.blocked.map((one) =>
      line(`  ${words.standing.tubeBlocked(one.lumen, time(one.at, page))}`, 'stop'),
    ),
    ...(position === null
      ? []
      : [
          line(
            `  ${words.standing.headOfBed(position.headOfBedDegrees, position.posture, time(position.at, page))}`,
          ),
        ]),
  ];
}

function residualText(residual: Residual, page: StandingPage): string {
  const { standing } = page.words;
  const { found, volume, look, returned, discarded, at } = residual;
  const what = [
    found === 'measured' && volume !== null ? showVolume(volume) : standing.found[found],
    ...(look === null ? [] : [standing.looks[look]]),
    ...(returned > 0 ? [standing.returned(showVolume(returned))] : []),
    ...(discarded > 0 ? [standing.discarded(showVolume(discarded))] : []),
  ].join(', ');
  return standing.residual(what, time(at, page));
}

const LATEST = 4;

export function toleranceLines(standing: CourseStanding, page: StandingPage): readonly Line[] {
  const { words } = page;
  const { residuals, residual, vomits, stools, tolerance, intolerance } = standing;
  const { distension, pain } = tolerance;
  const [vomit, stool] = [vomits.at(-1), stools.at(-1)];
  const says = words.standing;
  const texts = [
    ...residuals.slice(-LATEST).map((one) => residualText(one, page)),
    ...(residual.run !== null && residual.run > 1 ? [says.residualRun(residual.run)] : []),
    ...(vomit === undefined
      ? []
      : [says.vomited(vomit.volume === null ? null : showVolume(vomit.volume), time(vomit.at, page))]),
    ...(distension === null ? [] : [says.distension(distension.degree, time(distension.at, page))]),
    ...(pain === null ? [] : [says.pain(pain.degree, pain.onFeeding, time(pain.at, page))]),
    ...(stool === undefined ? [] : [says.stool(stool.form, time(stool.at, page))]),
  ];
  const open = intolerance.map((sign) => says.signs[sign]).join(', ');
  return [
    ...(open === '' ? [] : [line(`  ${says.open(open)}`, 'stop')]),
    ...texts.map((text) => line(`  ${text}`)),
  ];
}

/** `phosphate 0.92 → 0.74 → 0.58 mmol/L`: the last few as they came; a change of unit begins a line of its own. */
function labLine(values: readonly LabValue[], page: StandingPage): Line {
  const last = values.at(-1)!;
  const shown = values.slice(-LATEST).map((one) => showFraction(one.value, 2));
  return line(
    `  ${page.words.standing.analytes[last.analyte]} ${shown.join(' → ')} ${last.unit}, ${time(last.at, page)}`,
  );
}

export function measuredLines(
  { weights, labs, person }: CourseStanding,
  page: StandingPage,
): readonly Line[] {
  const { standing } = page.words;
  const weight = weights.at(-1);
  const groups = Map.groupBy(labs, (one) => `${one.analyte} ${one.unit}`);
  return [
    ...(weight === undefined
      ? []
      : [line(`  ${standing.weight(showFraction(weight.kg, 2), time(weight.at, page))}`)]),
    ...[...groups.values()].map((values) => labLine(values, page)),
    ...person.otherEnergy.map((one) =>
      line(`  ${standing.otherEnergy(one.name, `${showFraction(one.kcalPerDay, 0)} kcal/d`)}`),
    ),
  ];
}
