/** Which feeds does this facility have? Its own laid over the default: a feed of the same id is replaced, others are added. */
import { bad, ok, type Result } from '../base/result.ts';
import { DEFAULT_FEEDS } from './default-list.ts';
import { parseFeeds } from './document.ts';
import type { FeedList } from './feed.ts';
import { judgeFeeds } from './judge.ts';

/** The facility's feeds over the base's; the version names both. [FE9] */
export function layFeedsOver(base: FeedList, own: FeedList): FeedList {
  const replaced = new Set(own.feeds.map((feed) => feed.id));
  return {
    version: `${base.version}+${own.version}`,
    feeds: [...base.feeds.filter((feed) => !replaced.has(feed.id)), ...own.feeds],
  };
}

/**
 * Reads a facility's feed list and lays it over the base.
 * @returns the list that holds, or all that is wrong with the facility's document, named by place in it.
 */
export function readLocalFeeds(json: unknown, base: FeedList = DEFAULT_FEEDS): Result<FeedList> {
  const own = parseFeeds(json);
  if (!own.ok) return own;
  const issues = judgeFeeds(own.value);
  return issues.length > 0 ? bad(...issues) : ok(layFeedsOver(base, own.value));
}
