/**
 * How is a course written down, to be gone on from after a restart? As JSON with the version of the fold that made it: one
 * that was made by another version is not read, and the course is folded from its entries instead. [ST60]
 */
import { bad, issue, ok, type Result } from '../base/result.ts';
import { beginCourse, type Course } from './course.ts';

/** Goes up whenever the same entries come to another course. The frozen courses say when that is. */
export const FOLD_VERSION = 1;

const DOCUMENT = 'feedwright-course';

const isTrail = (value: unknown): value is { items: unknown[]; length: number } =>
  typeof value === 'object' && value !== null && 'items' in value && 'length' in value;

/** Of a trail only what is its own: others may have gone on from it. */
const own = (_: string, value: unknown): unknown =>
  isTrail(value) && value.items.length !== value.length
    ? { ...value, items: value.items.slice(0, value.length) }
    : value;

export const writeCheckpoint = (course: Course): string =>
  JSON.stringify({ document: DOCUMENT, version: FOLD_VERSION, course }, own);

const FIELDS: readonly string[] = Object.keys(beginCourse());

const isCourse = (value: unknown): value is Course =>
  typeof value === 'object' && value !== null && FIELDS.every((field) => Object.hasOwn(value, field));

/**
 * The course that was written. Whether the text is as it was written is for whoever kept it to know.
 * @returns `checkpoint/unreadable`, or `checkpoint/version` where another version of the fold wrote it.
 */
export function readCheckpoint(text: string): Result<Course> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return bad(issue([], 'checkpoint/unreadable'));
  }
  if (typeof json !== 'object' || json === null) return bad(issue([], 'checkpoint/unreadable'));
  const { document, version, course } = json as Readonly<Record<string, unknown>>;
  if (document !== DOCUMENT) return bad(issue(['document'], 'checkpoint/unreadable'));
  if (version !== FOLD_VERSION)
    return bad(issue(['version'], 'checkpoint/version', { version, reads: FOLD_VERSION }));
  return isCourse(course) ? ok(course) : bad(issue(['course'], 'checkpoint/unreadable'));
}
