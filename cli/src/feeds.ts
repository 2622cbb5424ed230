/** `feedwright feeds [ID]`: the feed list by class and composition; or one feed with its packs and source. */
import { fraction, times } from '@feedwright/core/base/fraction';
import { writeFeeds } from '@feedwright/core/feeds/document';
import { type Feed, feedById } from '@feedwright/core/feeds/feed';
import { citationsOf } from '@feedwright/core/policy/sources';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import type { Line } from '@feedwright/core/screen/line';
import { showFraction, showVolume } from '@feedwright/core/screen/number';
import { feedsFrom } from './facility.ts';
import { refuse } from './fail.ts';
import { columns, plain, printJson, printLines } from './print.ts';

type FeedsOptions = { readonly feeds?: string; readonly json?: boolean };

const composition = (feed: Feed): readonly string[] => [
  `${showFraction(feed.energyKcalPerMl, 2)} kcal/mL`,
  `${showFraction(times(feed.proteinGPerMl, fraction(1000)), 0)} g/L protein`,
  `${showFraction(times(feed.waterFraction, fraction(100)), 0)} % water`,
];

const listRow = (feed: Feed): readonly string[] => [feed.id, feed.system, ...composition(feed), feed.name];

const explained = (feed: Feed): readonly Line[] => [
  plain(`${feed.id}  ${feed.name}`, 'title'),
  plain(`  ${feed.feedClass}, ${feed.system}; ${composition(feed).join(', ')}`),
  ...(feed.osmolalityMosmPerKg === null ? [] : [plain(`  ${feed.osmolalityMosmPerKg} mOsm/kg`)]),
  plain(
    `  contains ${feed.allergens.length === 0 ? 'nothing that is listed as an allergen' : feed.allergens.join(', ')}`,
  ),
  plain(
    `  comes as ${feed.packs.map((pack) => `${pack.kind} of ${showVolume(pack.volume)}`).join(', ') || 'no listed pack'}`,
  ),
  plain(
    `  ${ENGLISH.provenance[feed.provenance]}: ${citationsOf(feed.source)
      .map(({ id, citation }) => `${id} ${citation ?? ''}`.trim())
      .join('; ')}`,
    'quiet',
  ),
  plain('  Class values: use the composition on the label of the feed in hand.', 'quiet'),
];

export function feeds(id: string | undefined, options: FeedsOptions): void {
  const list = feedsFrom(options.feeds);
  const asked = id === undefined ? list.feeds : [feedById(list, id)].filter((feed) => feed !== null);
  if (asked.length === 0)
    refuse('feeds', 'argument/name', { text: id, known: list.feeds.map((feed) => feed.id) });
  if (options.json === true) printJson(writeFeeds({ ...list, feeds: asked }));
  else if (id !== undefined) printLines(asked.flatMap(explained));
  else {
    printLines([
      plain(`Feed list ${list.version}: generic classes; the label of the feed in hand decides`, 'title'),
      ...columns(list.feeds.map(listRow)).map((text) => plain(text)),
    ]);
  }
}
