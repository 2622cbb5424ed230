/** What does every part of a printed plan need to know? Whose it is, the day it is read on, the words. */
import type { Instant } from '../../base/instant.ts';
import type { FeedList } from '../../feeds/feed.ts';
import type { Order } from '../../order/order.ts';
import { showMoment } from '../time.ts';
import type { Words } from '../words.ts';
import type { Reading } from '../working-text.ts';

export type PlanTextOptions = { readonly words: Words; readonly feeds: FeedList; readonly workings: boolean };

export type Page = Reading & PlanTextOptions & { readonly order: Order };

export const moment = (at: Instant, page: Reading): string =>
  showMoment(at, page.today, page.zone, page.words);
