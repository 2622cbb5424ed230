/**
 * How does one notice that a ledger was changed? Each course's entries are chained: every head is the hash of the head
 * before it and of the entry's bytes, so one head, kept elsewhere, vouches for all that came before.
 * SHA-256 by the platform (FIPS 180-4).
 */
import { hash } from 'node:crypto';

const SCHEME = 'feedwright-chain/1';

/** The head of a course that has no entries yet: bound to the course's name, so that chains cannot be swapped. */
export const firstHead = (course: string): string => hash('sha256', `${SCHEME}\n${course}`, 'hex');

const HEAD = 32;
const LENGTH = 8;
/** Room for the head before, the length and the bytes; grown when a longer entry comes. */
let room = Buffer.alloc(4_096);

/** The length goes in before the bytes, so that no two histories can run together into the same one. */
export function nextHead(head: string, text: string): string {
  const most = HEAD + LENGTH + text.length * 3;
  if (most > room.length) room = Buffer.alloc(2 * most);
  room.write(head, 0, 'hex');
  const length = room.write(text, HEAD + LENGTH, 'utf8');
  room.writeBigUInt64BE(BigInt(length), HEAD);
  return hash('sha256', room.subarray(0, HEAD + LENGTH + length), 'hex');
}
