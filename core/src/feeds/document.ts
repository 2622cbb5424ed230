/**
 * What does a feed list document say? Our own JSON form, `feedwright-feeds/1`, strict, with the unit of each number in
 * the name of its field, as labels print them. Writing is the exact inverse of reading. [FE2]
 */
import { z } from 'zod';
import { knownFields, toIssues, wrongKind } from '../base/document-issues.ts';
import { compare, type Fraction, fraction, over, times, ZERO } from '../base/fraction.ts';
import { HOUR } from '../base/instant.ts';
import { jsonNumber, readNumber } from '../base/number-text.ts';
import { bad, issue, ok, type Result, under } from '../base/result.ts';
import { inMl, PER_ML, type Volume, volume } from '../base/volume.ts';
import type { Feed, FeedList, Pack } from './feed.ts';

export const FEEDS_DOCUMENT = 'feedwright-feeds/1';

/** One line of text: no control characters, which could end a printed line or steer a terminal. */
const text = (about: string) =>
  z
    .string()
    .min(1)
    .max(200)
    .regex(/^\P{Cc}*$/u)
    .meta({ description: about });

/** Beyond what any field can mean; what a feed can be is for `judge.ts`. */
const MOST = fraction(1_000_000);
/** A nutrient finer than this was measured by nobody, and could not be multiplied exactly. */
const FINEST = 1_000_000_000;

/** A number, or text by the strict rules for what people type; never negative. */
const number = (about: string) =>
  z
    .union([z.number(), z.string()])
    .transform((written, context): Fraction => {
      const refuse = (code: string, data: Readonly<Record<string, unknown>>): never => {
        context.issues.push({ code: 'custom', input: written, params: { code, data } });
        return z.NEVER;
      };
      const read = readNumber(written);
      if (!read.ok) return refuse(read.issues[0]!.code, read.issues[0]!.data);
      if (compare(read.value, ZERO) < 0) return refuse('number/negative', { text: String(written) });
      if (compare(read.value, MOST) > 0) return refuse('number/too-large', { text: String(written) });
      return read.value.d > FINEST
        ? refuse('number/too-precise', { text: String(written), step: '0.000000001' })
        : read.value;
    })
    .meta({ description: about });

const packSchema = z.strictObject({
  kind: z.enum(['container', 'carton']).meta({ description: 'A container is spiked, a carton is poured' }),
  volumeMl: number('What is in it, in mL'),
});

const feedSchema = z
  .strictObject({
    id: text('The name by which orders call it'),
    name: text('The generic name, as it stands on labels'),
    feedClass: text('Its class: standard, energy-dense, peptide …'),
    system: z
      .enum(['closed', 'open-liquid', 'powder', 'concentrate', 'human-milk', 'blenderised', 'water'])
      .meta({ description: 'How it comes, which decides how long it may hang' }),
    energyKcalPerMl: number('Energy at full strength'),
    proteinGPer100Ml: number('Protein at full strength'),
    waterMlPer100Ml: number('Free water at full strength'),
    osmolalityMosmPerKg: z.number().min(0).max(10_000).nullish().meta({ description: 'As the label has it' }),
    allergens: z.array(text('In plain words: milk, soya')).max(50),
    packs: z.array(packSchema).max(20),
    labelHangLimitHours: number(
      'The label’s own limit; the shorter of it and local policy governs',
    ).nullish(),
    compositionVaries: z
      .literal(true)
      .nullish()
      .meta({ description: 'No two batches are alike: the figures are an assumption' }),
    gtins: z
      .array(text('8, 12, 13 or 14 digits, the last of them the check digit'))
      .max(50)
      .nullish()
      .meta({ description: 'The product numbers (GTIN) printed under the codes on its containers' }),
    source: text('A number in docs/sources.md, or what the facility goes by: label'),
    provenance: z.enum(['read', 'secondary', 'from-memory', 'common-practice', 'facility', 'derived']),
  })
  .meta({ description: 'One feed, by class and composition' });

const feedsSchema = z
  .strictObject({
    document: z.literal(FEEDS_DOCUMENT).meta({ description: 'What this document is, and its version' }),
    version: text('The facility’s own version of it'),
    feeds: z.array(feedSchema).max(2000),
  })
  .meta({ title: 'Feedwright feed list', description: 'The feeds that a facility uses' });

export type FeedsDocument = z.input<typeof feedsSchema>;
type WrittenFeed = z.input<typeof feedSchema>;
type ReadFeed = z.output<typeof feedSchema>;

const HUNDRED = fraction(100);

/** The whole number of units of the account in so many of a label's, or null where there is none. */
function whole(amount: Fraction, each: number): number | null {
  const units = BigInt(amount.n) * BigInt(each);
  const rest = units % BigInt(amount.d);
  return rest === 0n && Number.isSafeInteger(Number(units / BigInt(amount.d)))
    ? Number(units / BigInt(amount.d))
    : null;
}

const tooPrecise = (field: readonly (string | number)[], step: string) =>
  bad(issue(field, 'number/too-precise', { step }));

function readPacks(packs: ReadFeed['packs']): Result<readonly Pack[]> {
  const read = packs.map(({ kind, volumeMl }) => ({ kind, units: whole(volumeMl, PER_ML) }));
  const odd = read.findIndex(({ units }) => units === null);
  return odd < 0
    ? ok(read.map(({ kind, units }) => ({ kind, volume: volume(units ?? 0) })))
    : tooPrecise(['packs', odd, 'volumeMl'], '1/360000000 mL');
}

function readFeed(feed: ReadFeed): Result<Feed> {
  const { proteinGPer100Ml, waterMlPer100Ml, labelHangLimitHours, compositionVaries, gtins, ...rest } = feed;
  const packs = readPacks(feed.packs);
  const given = labelHangLimitHours ?? null;
  const labelHangLimit = given === null ? null : whole(given, HOUR);
  if (!packs.ok) return packs;
  if (given !== null && labelHangLimit === null) return tooPrecise(['labelHangLimitHours'], '1 ms');
  return ok({
    ...rest,
    proteinGPerMl: over(proteinGPer100Ml, HUNDRED),
    waterFraction: over(waterMlPer100Ml, HUNDRED),
    osmolalityMosmPerKg: rest.osmolalityMosmPerKg ?? null,
    packs: packs.value,
    labelHangLimit,
    ...(compositionVaries === true ? { compositionVaries } : {}),
    ...(gtins === null || gtins === undefined ? {} : { gtins }),
  });
}

/**
 * Reads a feed list document that is already JSON.
 * @returns the list exactly as written, not judged; or everything that is wrong, each with its path. Never throws on input.
 */
export function parseFeeds(json: unknown): Result<FeedList> {
  const wrong = wrongKind(json, FEEDS_DOCUMENT);
  if (wrong !== null) return bad(wrong);
  const read = feedsSchema.safeParse(json, { error: knownFields, reportInput: true });
  if (!read.success) return bad(...read.error.issues.flatMap(toIssues));
  const feeds = read.data.feeds.map(readFeed);
  const issues = feeds.flatMap((feed, index) => (feed.ok ? [] : under('feeds', under(index, feed)).issues));
  return issues.length > 0
    ? bad(...issues)
    : ok({ version: read.data.version, feeds: feeds.flatMap((feed) => (feed.ok ? [feed.value] : [])) });
}

const mlOf = (amount: Volume): number | string => jsonNumber(inMl(amount));

function writeFeed(feed: Feed): WrittenFeed {
  return {
    id: feed.id,
    name: feed.name,
    feedClass: feed.feedClass,
    system: feed.system,
    energyKcalPerMl: jsonNumber(feed.energyKcalPerMl),
    proteinGPer100Ml: jsonNumber(times(feed.proteinGPerMl, HUNDRED)),
    waterMlPer100Ml: jsonNumber(times(feed.waterFraction, HUNDRED)),
    ...(feed.osmolalityMosmPerKg === null ? {} : { osmolalityMosmPerKg: feed.osmolalityMosmPerKg }),
    allergens: [...feed.allergens],
    packs: feed.packs.map((pack) => ({ kind: pack.kind, volumeMl: mlOf(pack.volume) })),
    ...(feed.labelHangLimit === null
      ? {}
      : { labelHangLimitHours: jsonNumber(fraction(feed.labelHangLimit, HOUR)) }),
    ...(feed.compositionVaries === true ? { compositionVaries: true } : {}),
    ...(feed.gtins === undefined ? {} : { gtins: [...feed.gtins] }),
    source: feed.source,
    provenance: feed.provenance,
  };
}

/** The document of a feed list: reading it gives the same list back. */
export const writeFeeds = (list: FeedList): FeedsDocument => ({
  document: FEEDS_DOCUMENT,
  version: list.version,
  feeds: list.feeds.map(writeFeed),
});

/** The JSON Schema (2020-12) of a feed list document. */
export const feedsJsonSchema = (): object => z.toJSONSchema(feedsSchema, { io: 'input' });
