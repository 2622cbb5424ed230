import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { hours } from '@feedwright/core/base/instant';
import { ml, volume } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { feedsJsonSchema, parseFeeds, writeFeeds } from '@feedwright/core/feeds/document';
import type { Feed, FeedList } from '@feedwright/core/feeds/feed';
import { judgeFeeds } from '@feedwright/core/feeds/judge';
import { readLocalFeeds } from '@feedwright/core/feeds/local';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const ROW = {
  id: 'house-1.5',
  name: 'house feed 1.5 kcal/mL',
  feedClass: 'energy-dense',
  system: 'open-liquid',
  energyKcalPerMl: 1.5,
  proteinGPer100Ml: '6.4',
  waterMlPer100Ml: 76,
  allergens: ['milk'],
  packs: [{ kind: 'carton', volumeMl: 250 }],
  source: 'label',
  provenance: 'facility',
};
const documentOf = (...feeds: readonly object[]) => ({ document: 'feedwright-feeds/1', version: '4', feeds });

const codesOf = (json: unknown): readonly string[] => {
  const read = parseFeeds(json);
  return read.ok ? [] : read.issues.map((one) => `${one.path.join('.')} ${one.code}`);
};

const line = fc
  .string({ minLength: 1, maxLength: 30, unit: 'grapheme' })
  .filter((text) => /^\P{Cc}+$/u.test(text));
const fractions = fc
  .tuple(fc.nat(10_000), fc.integer({ min: 1, max: 10_000 }))
  .map(([n, d]) => fraction(n, d));

const feeds: fc.Arbitrary<Feed> = fc
  .record(
    {
      id: line,
      name: line,
      feedClass: line,
      system: fc.constantFrom(
        'closed',
        'open-liquid',
        'powder',
        'concentrate',
        'human-milk',
        'blenderised',
        'water',
      ),
      energyKcalPerMl: fractions,
      proteinGPerMl: fractions,
      waterFraction: fractions,
      osmolalityMosmPerKg: fc.option(fc.nat(10_000)),
      allergens: fc.array(line, { maxLength: 3 }),
      packs: fc.array(
        fc.record(
          {
            kind: fc.constantFrom('container' as const, 'carton' as const),
            volume: fc.integer({ min: 0, max: ml(10_000) }).map(volume),
          },
          { noNullPrototype: true },
        ),
        { maxLength: 3 },
      ),
      labelHangLimit: fc.option(fc.nat(hours(1000))),
      source: line,
      provenance: fc.constantFrom('read', 'facility', 'from-memory'),
      varies: fc.boolean(),
    },
    { noNullPrototype: true },
  )
  .map(({ varies, ...feed }) => ({ ...feed, ...(varies ? { compositionVaries: true } : {}) }) as Feed);

const lists: fc.Arbitrary<FeedList> = fc.record(
  { version: line, feeds: fc.array(feeds, { maxLength: 6 }) },
  { noNullPrototype: true },
);

test('[FE2] [FE11] list → document → list is the identity, through JSON text', () => {
  fc.assert(
    fc.property(lists, (list) => {
      assert.deepEqual(parseFeeds(JSON.parse(JSON.stringify(writeFeeds(list)))), { ok: true, value: list });
    }),
    runs(2000),
  );
  assert.deepEqual(parseFeeds(JSON.parse(JSON.stringify(writeFeeds(DEFAULT_FEEDS)))), {
    ok: true,
    value: DEFAULT_FEEDS,
  });
});

test('[FE2] document → list → document is the identity', () => {
  fc.assert(
    fc.property(lists, (list) => {
      const written = writeFeeds(list);
      const read = parseFeeds(written);
      assert.ok(read.ok);
      assert.deepEqual(writeFeeds(read.value), written);
    }),
    runs(1000),
  );
});

test('[FE2] numbers are read exactly, as labels print them', () => {
  const read = parseFeeds(documentOf({ ...ROW, labelHangLimitHours: 24, osmolalityMosmPerKg: 525 }));
  assert.ok(read.ok);
  const [feed] = read.value.feeds;
  assert.deepEqual(feed?.energyKcalPerMl, fraction(3, 2));
  assert.deepEqual(feed?.proteinGPerMl, fraction(64, 1000));
  assert.deepEqual(feed?.waterFraction, fraction(76, 100));
  assert.deepEqual(feed?.packs, [{ kind: 'carton', volume: ml(250) }]);
  assert.equal(feed?.labelHangLimit, hours(24));
});

test('[FE2] everything that is wrong is found at once, each with its place', () => {
  assert.deepEqual(
    codesOf(
      documentOf(
        { ...ROW, energyKcalPerMl: '1,500', waterMlPer100Ml: '.76', system: 'tin' },
        { ...ROW, proteinGPer100Ml: -6.4, brand: 'x', packs: [{ kind: 'carton', volumeMl: '1e3' }] },
      ),
    ),
    [
      'feeds.0.system field/not-a-choice',
      'feeds.0.energyKcalPerMl number/grouped',
      'feeds.0.waterMlPer100Ml number/no-digit-before-mark',
      'feeds.1.proteinGPer100Ml number/negative',
      'feeds.1.packs.0.volumeMl number/exponent',
      'feeds.1.brand field/unknown',
    ],
  );
  assert.deepEqual(codesOf(documentOf({ ...ROW, packs: [{ kind: 'carton', volumeMl: '1/7' }] })), [
    'feeds.0.packs.0.volumeMl number/too-precise',
  ]);
  assert.deepEqual(codesOf(documentOf({ ...ROW, energyKcalPerMl: 1e7 })), [
    'feeds.0.energyKcalPerMl number/too-large',
  ]);
  assert.deepEqual(codesOf(documentOf({ ...ROW, waterMlPer100Ml: '0.0000000001' })), [
    'feeds.0.waterMlPer100Ml number/too-precise',
  ]);
  assert.deepEqual(codesOf({ ...documentOf(), document: 'feedwright-feeds/2' }), [
    'document document/newer-version',
  ]);
  assert.deepEqual(codesOf({ ...documentOf(), document: 'feedwright-policy/1' }), [
    'document document/wrong-kind',
  ]);
});

test('[FE2] nothing that JSON can hold makes reading or judging throw', () => {
  const numbers = fc.oneof(
    fc.double(),
    fc.tuple(fc.maxSafeNat(), fc.maxSafeNat()).map(([n, d]) => `${n}/${d}`),
    fc.bigInt({ min: 0n, max: 10n ** 16n }).map(String),
  );
  const some = fc.oneof(
    fc.jsonValue(),
    fc
      .dictionary(fc.constantFrom(...Object.keys(ROW)), fc.jsonValue())
      .map((changed) => documentOf({ ...ROW, ...changed })),
    fc
      .tuple(numbers, numbers, numbers, numbers, numbers)
      .map(([energyKcalPerMl, proteinGPer100Ml, waterMlPer100Ml, labelHangLimitHours, volumeMl]) =>
        documentOf({
          ...ROW,
          energyKcalPerMl,
          proteinGPer100Ml,
          waterMlPer100Ml,
          labelHangLimitHours,
          packs: [{ kind: 'carton', volumeMl }],
        }),
      ),
    fc.tuple(fc.nat(10 ** 12), fc.integer({ min: 1, max: 10 ** 9 })).map(([n, d]) =>
      documentOf({
        ...ROW,
        energyKcalPerMl: `${n}/${d}`,
        packs: [{ kind: 'carton', volumeMl: `${n}/${d}` }],
      }),
    ),
  );
  fc.assert(
    fc.property(some, (json) => {
      const read = parseFeeds(json);
      if (read.ok) judgeFeeds(read.value);
      else assert.ok(read.issues.length > 0);
    }),
    runs(10_000),
  );
});

test('[FE2] the JSON Schema refuses further fields and names what must be there', () => {
  const schema = JSON.parse(JSON.stringify(feedsJsonSchema()));
  const feed = schema.properties.feeds.items;
  assert.equal(feed.additionalProperties, false);
  assert.ok(feed.required.includes('energyKcalPerMl'));
  assert.ok(!feed.required.includes('labelHangLimitHours'));
});

test('[FE9] a facility’s feed replaces the default of the same id, or is added; the rest stays', () => {
  const own = readLocalFeeds(documentOf(ROW, { ...ROW, id: 'energy-1.5', proteinGPer100Ml: 6 }));
  assert.ok(own.ok);
  assert.equal(own.value.version, '1+4');
  assert.equal(own.value.feeds.length, DEFAULT_FEEDS.feeds.length + 1);
  const byId = (id: string) => own.value.feeds.filter((feed) => feed.id === id);
  assert.deepEqual(
    byId('energy-1.5').map((feed) => feed.proteinGPerMl),
    [fraction(6, 100)],
  );
  assert.equal(byId('house-1.5').length, 1);
  assert.deepEqual(
    byId('standard-1.0'),
    DEFAULT_FEEDS.feeds.filter((feed) => feed.id === 'standard-1.0'),
  );
});

test('[FE9] an impossible feed refuses the whole list, named by its place in the facility’s document', () => {
  const read = readLocalFeeds(documentOf(ROW, { ...ROW, id: 'b', energyKcalPerMl: 1500 }));
  assert.deepEqual(read.ok ? [] : read.issues.map((one) => [one.code, one.path, one.data.feed]), [
    ['feeds/energy', ['feeds', 1, 'energyKcalPerMl'], 'b'],
  ]);
});

test('[FE9] the default list, copied whole into a facility’s document, changes nothing', () => {
  const read = readLocalFeeds(JSON.parse(JSON.stringify(writeFeeds(DEFAULT_FEEDS))));
  assert.deepEqual(read.ok && read.value.feeds, DEFAULT_FEEDS.feeds);
});
