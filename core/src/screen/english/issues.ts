/** What is wrong with what was typed or read, in English: by the code of the issue. */

import type { Words } from '../words.ts';
import { ENGLISH_DOCUMENTS } from './documents.ts';
import { ENGLISH_FHIR_ISSUES } from './fhir.ts';
import { ENGLISH_RECORD } from './record.ts';
import { ENGLISH_SCAN_ISSUES } from './scan.ts';

const quoted = (value: unknown): string => `“${String(value)}”`;
const listed = (value: unknown): string => (Array.isArray(value) ? value.join(', ') : String(value));

export const ENGLISH_ISSUES: Words['issues'] = {
  ...ENGLISH_DOCUMENTS,
  ...ENGLISH_FHIR_ISSUES,
  ...ENGLISH_RECORD,
  ...ENGLISH_SCAN_ISSUES,
  'number/empty': () => ({ says: 'no number was given', remedy: 'Write the number with its digits.' }),
  'number/sign': ({ text }) => ({
    says: `${quoted(text)} starts with a sign`,
    remedy: 'Write the digits alone.',
  }),
  'number/foreign-digits': ({ text }) => ({
    says: `${quoted(text)} has characters that are not plain digits`,
    remedy: 'Write it with the digits 0 to 9.',
  }),
  'number/exponent': ({ text }) => ({
    says: `${quoted(text)} is written with an exponent`,
    remedy: 'Write the number out in full.',
  }),
  'number/no-digit-before-mark': ({ text }) => ({
    says: `${quoted(text)} has no digit before the decimal mark`,
    remedy: `Write a leading zero: 0${String(text).replace('-', '')}.`,
  }),
  'number/no-digit-after-mark': ({ text }) => ({
    says: `${quoted(text)} ends with a decimal mark`,
    remedy: 'Write the decimals, or leave the mark out.',
  }),
  'number/grouped': ({ text, readings }) => ({
    says: `${quoted(text)} can be read in more than one way`,
    remedy: Array.isArray(readings)
      ? `Write ${readings.join(' or ')}.`
      : 'Write it without spaces or groups.',
  }),
  'number/negative': ({ text }) => ({
    says: `${quoted(text)} is less than nothing`,
    remedy: 'Write a positive number.',
  }),
  'number/leading-zero': ({ text }) => ({
    says: `${quoted(text)} starts with a zero that means nothing`,
    remedy: 'Leave the leading zero out.',
  }),
  'number/too-long': ({ text }) => ({
    says: `${quoted(text)} has more digits than can be meant`,
    remedy: 'Check the number.',
  }),
  'number/too-precise': ({ step }) => ({
    says: `finer than ${String(step)}`,
    remedy: 'Write fewer decimals.',
  }),
  'number/not-a-number': ({ text }) => ({
    says: `${quoted(text)} is not a number`,
    remedy: 'Write it in digits.',
  }),
  'file/not-found': ({ file }) => ({
    says: `there is no file ${quoted(file)}`,
    remedy: 'Check the name and the folder.',
  }),
  'file/folder': ({ file }) => ({
    says: `${quoted(file)} is a folder`,
    remedy: 'Name the file in it.',
  }),
  'file/unreadable': ({ file, why }) => ({
    says: `${quoted(file)} cannot be read: ${String(why)}`,
    remedy: 'Check its permissions.',
  }),
  'file/too-large': ({ file, size, most }) => ({
    says: `${quoted(file)} is ${String(size)} bytes; at most ${String(most)} are read`,
    remedy: 'Give the one order, not a collection of records.',
  }),
  'argument/instant': ({ text }) => ({
    says: `${quoted(text)} is not a moment with its offset`,
    remedy: 'Write it like 2026-11-25T08:00:00+00:00, or with Z for UTC.',
  }),
  'argument/instant-twice': ({ text, zone }) => ({
    says: `the clock of ${String(zone)} shows ${quoted(text)} twice`,
    remedy: 'Write which is meant, with its offset: 2026-10-25T01:30+01:00.',
  }),
  'argument/instant-never': ({ text, zone }) => ({
    says: `the clock of ${String(zone)} skips ${quoted(text)}`,
    remedy: 'Write another time, or the moment with its offset.',
  }),
  'argument/zone': ({ text }) => ({
    says: `${quoted(text)} is not a time zone known here`,
    remedy: 'Write it like Europe/London.',
  }),
  'argument/zone-differs': ({ written, zone }) => ({
    says: `the order is written for ${quoted(written)}, not ${quoted(zone)}`,
    remedy: 'Leave the flag out: the times of an order belong to its own zone.',
  }),
  'argument/hours': ({ text }) => ({
    says: `${quoted(text)} is not a number of hours from 1 to 168`,
    remedy: 'Write it like 24.',
  }),
  'argument/confirm': ({ text }) => ({
    says: `${quoted(text)} is not KEY=VALUE`,
    remedy: 'Write it like OR31=“name of who confirmed”.',
  }),
  'argument/name': ({ text, known }) => ({
    says: `${quoted(text)} is not known`,
    remedy: `One of: ${listed(known)}.`,
  }),
};
