/** What is wrong with an order, in English: by the code of the problem. */
import type { Words } from './words.ts';

export const ENGLISH_PROBLEMS: Words['problems'] = {};
