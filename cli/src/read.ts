/** What is in this file? Read whole, but never more than a sane size, so that a 50 MB export is refused and not parsed. */
import { readFileSync, statSync } from 'node:fs';
import { parseJson } from '@feedwright/core/base/json';
import { orRefuse, refuse } from './fail.ts';

const MOST_BYTES = 4 * 1024 * 1024;

export type ReadFile = { readonly name: string; readonly text: string };

/** The file's text as UTF-8 without a byte-order mark; `-` is standard input. Refuses what is missing, too large or unreadable. */
export function readText(name: string): ReadFile {
  try {
    if (name !== '-') {
      const size = statSync(name).size;
      if (size > MOST_BYTES) refuse(name, 'file/too-large', { file: name, size, most: MOST_BYTES });
    }
    return { name, text: readFileSync(name === '-' ? 0 : name, 'utf8').replace(/^\uFEFF/, '') };
  } catch (problem) {
    const code = (problem as NodeJS.ErrnoException).code;
    if (code === undefined) throw problem;
    if (code === 'EISDIR') return refuse(name, 'file/folder', { file: name });
    if (code === 'ENOENT') return refuse(name, 'file/not-found', { file: name });
    return refuse(name, 'file/unreadable', { file: name, why: code });
  }
}

/** The JSON in a text, or a refusal with line and column. */
export const jsonOf = ({ name, text }: ReadFile): unknown => orRefuse(parseJson(text, MOST_BYTES), name);
