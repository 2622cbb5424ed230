/** What cannot be planned as asked, in English, with the best that can be done. */
import { plainly } from '../said.ts';
import type { Data, Words } from '../words.ts';

const done = ({ done: moved }: Data): string =>
  moved === false
    ? 'It is left out of the plan: do it by hand.'
    : 'It is planned at the nearest time that is free.';

export const ENGLISH_INFEASIBLE: Words['infeasible'] = {
  'empty-window': (data) => ({
    says: `No visit can fall in the time allowed for ${plainly(data.about)}.`,
    remedy: done(data),
  }),
  'protected-window': (data) => ({
    says: `Protected time covers all of the time allowed for ${plainly(data.about)}.`,
    remedy: done(data),
  }),
  'protected-start': ({ about }) => ({
    says: `Without a visit in protected time ${plainly(about)} would run out or hang too long.`,
    remedy: 'That one visit is planned all the same.',
  }),
  'step-over-capacity': ({ about }) => ({
    says: `The smallest pour of ${plainly(about)}, or the prime, does not fit into its container.`,
    remedy: 'Use a larger container, or a smaller pour step in local policy.',
  }),
  'grid-over-capacity': ({ about }) => ({
    says: `Five minutes of ${plainly(about)} are more than its container holds.`,
    remedy: 'Check the rate against the order, or use a larger container.',
  }),
  'feed-over-capacity': ({ about }) => ({
    says: `One feed (${plainly(about)}) is more than its container holds.`,
    remedy: 'Use a larger container, or fill it twice: ask.',
  }),
  'limit-too-short': ({ about }) => ({
    says: `The limit of ${plainly(about)} is too short for the next visit to come in time.`,
    remedy: 'Check the hang limit and its margin in local policy.',
  }),
};
