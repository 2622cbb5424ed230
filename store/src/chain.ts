/**
 * How does one notice that a ledger was changed? Each course's entries are chained: every head is the hash of the head
 * before it and of the entry's bytes, so one head, kept elsewhere, vouches for all that came before.
 * SHA-256 by the platform (FIPS 180-4).
 */
import { createHash } from 'node:crypto';

const SCHEME = 'feedwright-chain/1';

/** The head of a course that has no entries yet: bound to the course's name, so that chains cannot be swapped. */
export const firstHead = (course: string): string =>
  createHash('sha256').update(`${SCHEME}\n${course}`).digest('hex');

/** The length goes in before the bytes, so that no two histories can run together into the same one. */
export function nextHead(head: string, text: string): string {
  const bytes = Buffer.from(text, 'utf8');
  const length = Buffer.alloc(8);
  length.writeBigUInt64BE(BigInt(bytes.length));
  return createHash('sha256').update(Buffer.from(head, 'hex')).update(length).update(bytes).digest('hex');
}
