/** Which local policy and which feed list hold for this call? The defaults, with the facility's own files laid over them. */
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { FeedList } from '@feedwright/core/feeds/feed';
import { readLocalFeeds } from '@feedwright/core/feeds/local';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { readLocalPolicy } from '@feedwright/core/policy/local';
import type { Policy } from '@feedwright/core/policy/policy';
import { orRefuse } from './fail.ts';
import { jsonOf, readText } from './read.ts';

export const policyFrom = (file: string | undefined): Policy =>
  file === undefined ? DEFAULT_POLICY : orRefuse(readLocalPolicy(jsonOf(readText(file))), file);

export const feedsFrom = (file: string | undefined): FeedList =>
  file === undefined ? DEFAULT_FEEDS : orRefuse(readLocalFeeds(jsonOf(readText(file))), file);
