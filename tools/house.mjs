// @ts-check
/**
 * What is in this house? The workspaces and the source files that every check walks.
 * Checks take the root as an argument, so that they can be tried on a house with something wrong in it.
 */
import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * What a check found. `looked` is how many things it looked at: none means that it did not do its work.
 * @typedef {{ looked: number, problems: string[], notes?: string[] }} Report
 */

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** Where code lives that belongs to no workspace. */
export const LOOSE = ['tools', 'bench', 'demo'];

const SOURCE = '**/*.{ts,tsx,mts,js,mjs}';
/** @param {string} path */
const skipped = (path) => /(^|\/)(node_modules|dist|fixtures)(\/|$)/.test(path);

/** @param {string} root @param {string} path */
export const read = (root, path) => readFileSync(join(root, path), 'utf8');

/** @param {string} root @param {string} path @returns {Record<string, any>} */
export const readJson = (root, path) => JSON.parse(read(root, path));

/** @param {string} root @returns {string[]} the folders of the workspaces */
export const workspaces = (root) => readJson(root, 'package.json').workspaces ?? [];

/** Source files under a folder, as paths from the root with forward slashes, in order. @param {string} root @param {string} folder */
export function sources(root, folder) {
  if (!existsSync(join(root, folder))) return [];
  return globSync(SOURCE, { cwd: join(root, folder), exclude: skipped })
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .sort();
}

/** @param {string} root */
export const allSources = (root) =>
  [...workspaces(root), ...LOOSE].flatMap((folder) => sources(root, folder));
