/**
 * A house with something wrong in it: a copy of the sound one, with a few files written anew or taken away.
 */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { TestContext } from 'node:test';

const SOUND = join(import.meta.dirname, '../fixtures/house');

/** The root of a copy that is removed when the test ends. A file that is planted as null is taken away. */
export function planted(t: TestContext, files: Readonly<Record<string, string | null>> = {}): string {
  const root = mkdtempSync(join(tmpdir(), 'planted-'));
  t.after(() => rmSync(root, { recursive: true, force: true }));
  cpSync(SOUND, root, { recursive: true });
  for (const [path, text] of Object.entries(files)) {
    if (text === null) rmSync(join(root, path), { recursive: true });
    else {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
  }
  return root;
}
