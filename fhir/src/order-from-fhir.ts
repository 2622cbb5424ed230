/**
 * What does this FHIR document ask for?
 * A NutritionOrder of FHIR R4 (R4B) or R5, alone or in a Bundle, becomes one order of ours together with everything that
 * stands between the document and a plan. Every structured element is read or named as not used; free text is shown and
 * never carried out; nothing is made up; the document itself is kept to the byte beside what was read of it.
 */
import type { Instant } from '@feedwright/core/base/instant';
import { parseJson } from '@feedwright/core/base/json';
import { bad, issue, ok, type Result } from '@feedwright/core/base/result';
import { NOTHING } from '@feedwright/core/base/volume';
import type { Zone } from '@feedwright/core/base/zone';
import type { FeedList } from '@feedwright/core/feeds/feed';
import type { Order, Problem, WaterOrder } from '@feedwright/core/order/order';
import { type AnswerKey, readAnswers } from './answers.ts';
import { type Dialect, dialectOf, type FhirVersion, stopForeign, stopModifiers } from './dialect.ts';
import { administrationsOf } from './feed/administration.ts';
import { formulaOf } from './feed/formula.ts';
import { maximumOf, settleMaximum } from './feed/maximum.ts';
import { readProse } from './feed/prose.ts';
import { feedingOf } from './feed/regimen.ts';
import { R4 } from './r4.ts';
import { R5 } from './r5.ts';
import { type Document, documentOf } from './read/bundle.ts';
import { type Element, field, items, textOf, unread } from './read/element.ts';
import { declineOthers, heldFrom, statusOf } from './read/in-force.ts';
import { momentOf, noteClock, zoneOf } from './read/moment.ts';
import { numeral } from './read/numeral.ts';
import { answered, ask, note, type Place, pathText, type Reading, within } from './read/reading.ts';
import { patientOf, prescriberOf } from './who/patient.ts';
import { accessOf } from './who/route.ts';
import { subjectOf } from './who/subject.ts';
import { tubeOf } from './who/tube.ts';

export type Imported = {
  readonly order: Order;
  readonly problems: readonly Problem[];
  /** The document as it came, to the byte. */
  readonly original: string;
  readonly version: FhirVersion;
  /** The elements that were understood, as paths. */
  readonly read: readonly string[];
  /** The elements that were seen and not used, as paths; each is a note among the problems too. */
  readonly ignored: readonly string[];
};

/** A Bundle with one order and its patient takes some hundredths of this. */
export const MOST_FHIR_TEXT = 4_000_000;

/** Whether JSON that was read is FHIR rather than a document of ours. */
export const looksLikeFhir = (json: unknown): boolean =>
  typeof json === 'object' && json !== null && 'resourceType' in json;

function waterOf(order: Element): WaterOrder | null {
  const kind = answered(order, 'waterKind');
  const amount = answered(order, 'waterMl');
  const every = answered(order, 'waterEveryHours');
  if (kind !== null && amount !== null && every !== null) {
    return { water: kind, given: [{ kind: 'interval', volume: amount, every, from: null }] };
  }
  note(order, 'FH3', 'fhir/no-place-for', {
    what: 'water',
    answers: ['waterKind', 'waterMl', 'waterEveryHours'],
  });
  return null;
}

function settingOf(order: Element): Order['setting'] {
  const answer = answered(order, 'setting');
  if (answer === null)
    note(order, 'FH3', 'fhir/setting-assumed', { setting: 'hospital', answers: ['setting'] });
  return answer ?? 'hospital';
}

const idOf = (order: Element): string => {
  const [identifier] = items(order, 'identifier');
  const business = textOf(identifier ?? null, 'value');
  textOf(identifier ?? null, 'system');
  return textOf(order, 'id') ?? business ?? 'fhir-order';
};

type Feed = Pick<
  Order,
  'feed' | 'access' | 'method' | 'regimen' | 'startsAt' | 'endsAt' | 'mostVolumePerDay'
>;

const NO_FEED: Feed = {
  feed: null,
  access: null,
  method: null,
  regimen: null,
  startsAt: null,
  endsAt: null,
  mostVolumePerDay: null,
};

function feedOf(
  order: Element,
  formula: Element,
  dialect: Dialect,
  feeds: FeedList,
  tube: ReturnType<typeof tubeOf>,
  zone: Zone,
): Feed {
  const { feed, density } = formulaOf(formula, dialect, feeds);
  const access = accessOf(formula, dialect, tube.french, tube.called);
  const method = ask(formula, 'FH10', 'fhir/method-unsaid', 'method');
  const administrations = items(formula, 'administration').flatMap((one) =>
    administrationsOf(one, dialect, zone),
  );
  const place = within(formula, 'administration');
  const scheduled = feedingOf(place, administrations, zone, method);
  const { most, regimen } = settleMaximum({ place, zone, density }, scheduled, maximumOf(formula));
  const feeding = { ...scheduled, regimen };
  noteClock(place, feeding.from, zone);
  readProse(order, formula, { feeding, density, most, additives: feed?.additives ?? [] });
  return {
    feed,
    access,
    method,
    regimen,
    startsAt: feeding.from,
    endsAt: feeding.until,
    mostVolumePerDay: most,
  };
}

function orderOf(document: Document, dialect: Dialect, feeds: FeedList): Order {
  const { order } = document;
  const zone = zoneOf(order);
  const status = statusOf(order);
  const formula = field(order, 'enteralFormula');
  declineOthers(order, formula);
  const subject = subjectOf(document, dialect);
  const patient = patientOf(subject);
  const prescriber = prescriberOf(document);
  const prescribedAt =
    momentOf(field(order, 'dateTime'), zone, 'prescribedAt') ?? answered(order, 'prescribedAt');
  const feed = formula === null ? NO_FEED : feedOf(order, formula, dialect, feeds, tubeOf(subject), zone);
  return {
    id: idOf(order),
    replaces: null,
    zone,
    setting: settingOf(order),
    patient,
    prescriber,
    prescribedAt,
    ...feed,
    water: waterOf(order),
    holds: heldFrom(status, feed.startsAt ?? prescribedAt ?? (0 as Instant)),
    medicines: [],
    modules: [],
    mostRate: null,
    fluidLimitPerDay: null,
    intravenousPerDay: NOTHING,
    otherEnergy: [],
    needs: { energyKcalPerDay: null, proteinGPerDay: null, waterPerDay: null },
    catchUpProtocol: null,
    refeedingCaution: false,
    confirmations: [],
  };
}

/** [FH3] What nobody read is named, one note each. */
function noteUnread(root: Element): readonly string[] {
  const left = unread(root);
  for (const { path, value } of left) note({ ...root, path }, 'FH3', 'fhir/not-used', { value });
  return left.map(({ path }) => pathText(path));
}

/** [FH21] An answer that settled nothing may have been meant for something else. */
function noteIdleAnswers(place: Place): void {
  const { answers, given, used } = place.reading;
  for (const key of Object.keys(answers) as AnswerKey[]) {
    if (key !== 'by' && !used.has(key)) note(place, 'FH21', 'answer/idle', { key, answer: given[key] });
  }
}

const startReading = (answers: Reading['answers'], given: Readonly<Record<string, string>>): Reading => ({
  answers,
  given,
  problems: [],
  read: new Set(),
  touched: new Set(),
  used: new Set(),
});

/**
 * Reads a FHIR document as one order for tube feeding.
 * @param answers what a person answered, by the keys of `ANSWERS`; keys that name a rule (`OR31`) are passed over.
 * @returns the order with its problems, which come before those of the order itself; or issues where the text is no JSON
 * (`json/…`, `fhir/xml`), is no single order for nutrition (`fhir/…`), or an answer cannot be read (`answer/…`).
 */
export function orderFromFhir(
  text: string,
  answers: Readonly<Record<string, string>>,
  feeds: FeedList,
): Result<Imported> {
  const settled = readAnswers(answers);
  if (!settled.ok) return settled;
  if (text.length <= MOST_FHIR_TEXT && text.trimStart().startsWith('<')) return bad(issue([], 'fhir/xml'));
  const json = parseJson(text, MOST_FHIR_TEXT, numeral);
  if (!json.ok) return json;
  const reading = startReading(settled.value, answers);
  const root: Element = { reading, path: [], json: json.value };
  const document = documentOf(root);
  if (!document.ok) return document;
  const dialect = dialectOf(document.value.order, R4, R5);
  stopForeign(document.value.order, dialect);
  stopModifiers(document.value.order);
  const order = orderOf(document.value, dialect, feeds);
  const ignored = noteUnread(root);
  noteIdleAnswers(root);
  return ok({
    order,
    problems: reading.problems,
    original: text,
    version: dialect.version,
    read: [...reading.read],
    ignored,
  });
}
