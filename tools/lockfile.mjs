// @ts-check
/**
 * Does the lock say exactly what is installed, from nowhere in particular, with nothing to run or compile?
 */
import { read, readJson, workspaces } from './house.mjs';

const LOCK = 'package-lock.json';
const KINDS = ['dependencies', 'devDependencies', 'optionalDependencies'];

/**
 * Where npm would find a package for a workspace: its own node_modules first, then the root's.
 * @param {Record<string, any>} packages @param {string} folder @param {string} name
 */
const lockedFor = (packages, folder, name) =>
  packages[`${folder}/node_modules/${name}`] ?? packages[`node_modules/${name}`];

/** @param {string} root @returns {import('./house.mjs').Report} */
export function lockfile(root) {
  const { packages } = readJson(root, LOCK);
  const problems = [];
  for (const [number, line] of read(root, LOCK).split('\n').entries())
    if (/"resolved": *"(?:https?|git)/.test(line))
      problems.push(`${LOCK}:${number + 1}: names a place to fetch from`);
  for (const [path, { hasInstallScript, integrity, link }] of Object.entries(packages)) {
    if (hasInstallScript) problems.push(`${LOCK}: ${path} has an install script`);
    if (path.includes('node_modules/') && !link && !integrity)
      problems.push(`${LOCK}: ${path} is locked without its integrity`);
  }
  for (const folder of ['', ...workspaces(root)]) {
    const manifest = readJson(root, folder === '' ? 'package.json' : `${folder}/package.json`);
    const declared = KINDS.flatMap((kind) => Object.entries(manifest[kind] ?? {}));
    for (const [name, version] of declared) {
      const found = lockedFor(packages, folder, name);
      const locked = found?.link ? packages[found.resolved]?.version : found?.version;
      if (locked !== version)
        problems.push(
          `${folder || 'the root'} declares ${name} ${version}; the lock has ${locked ?? 'none'}`,
        );
    }
  }
  return { looked: Object.keys(packages).length, problems };
}
