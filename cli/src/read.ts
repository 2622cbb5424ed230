/** What is in this file? Read whole, but never more than a sane size, so that a 50 MB export is refused and not parsed. */
import { readFileSync, statSync } from 'node:fs';
import { refuse } from './fail.ts';

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
    if (code === 'ENOENT') return refuse(name, 'file/not-found', { file: name });
    return refuse(name, 'file/unreadable', { file: name, why: code });
  }
}

/** The JSON in a text, or a refusal with line and column. */
export function parseJson({ name, text }: ReadFile): unknown {
  try {
    return JSON.parse(text);
  } catch (problem) {
    const position = Number(/position (\d+)/.exec((problem as Error).message)?.[1] ?? text.length);
    const before = text.slice(0, position).split('\n');
    return refuse(name, 'file/not-json', { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 });
  }
}
