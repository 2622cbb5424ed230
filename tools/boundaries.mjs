// @ts-check
/**
 * Does every file stand where the river lets it, and import only what it may?
 * TypeScript sees none of this: not the order of the folders, not an undeclared package that happens to be installed,
 * not a clock inside the core.
 */

import { existsSync } from 'node:fs';
import { join } from 'node:path/posix';
import { LOOSE, read, readJson, sources, workspaces } from './house.mjs';
import { dissect, importsOf } from './source.mjs';

/** The stages of the core in the order in which data passes through; neighbours in a list do not know each other. */
const RIVER = [
  ['base'],
  ['policy'],
  ['feeds'],
  ['reckon'],
  ['order'],
  ['programme'],
  ['record'],
  ['standing'],
  ['plan'],
  ['advice', 'act'],
  ['screen'],
];
const APPS = ['cli', 'server', 'web'];
/** No host in these: neither Node's own modules nor anything that leads to them. */
const PURE = ['core', 'fhir'];
const CORE_MAY_USE = ['zod', 'temporal-polyfill'];
/** What would let a moment, a coin or a place slip into the core from the machine it runs on. */
const AMBIENT =
  /\bDate\b|\bMath\s*\.\s*random\b|\bperformance\b|\bcrypto\b|\bTemporal\s*\.\s*Now\b|\bresolvedOptions\b/g;
const DRAWER = /^(types|utils|helpers|common|misc|shared|lib|index)$/;
const MOST_LINES = 400;

/** @param {string} folder */
const stage = (folder) => RIVER.findIndex((folders) => folders.includes(folder));
/** @param {string} specifier */
const packageOf = (specifier) =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

/**
 * @typedef {{ root: string, folders: string[], names: Map<string, string>, declared: (folder: string, forTests: boolean) => Set<string> }} House
 * @param {string} root
 * @returns {House}
 */
function houseAt(root) {
  const folders = workspaces(root);
  const manifests = new Map(folders.map((folder) => [folder, readJson(root, `${folder}/package.json`)]));
  const names = new Map([...manifests].map(([folder, { name }]) => [name, folder]));
  const own = readJson(root, 'package.json');
  return {
    root,
    folders,
    names,
    declared: (folder, forTests) => {
      const { dependencies, devDependencies, name } = manifests.get(folder) ?? {};
      const forAll = forTests ? { ...own.devDependencies, ...devDependencies } : {};
      return new Set([...Object.keys({ ...dependencies, ...forAll }), ...(name ? [name] : names.keys())]);
    },
  };
}

/**
 * Where a specifier leads: a file of this house (as a path from the root), or a package.
 * @param {House} house @param {string} file @param {string} specifier
 * @returns {{ path: string } | { name: string }}
 */
function target(house, file, specifier) {
  if (specifier.startsWith('.')) return { path: join(file, '..', specifier) };
  const name = packageOf(specifier);
  const folder = house.names.get(name);
  return folder === undefined ? { name } : { path: join(folder, 'src', specifier.slice(name.length + 1)) };
}

/** @param {string} file @param {string} path @returns {string | null} */
function againstTheRiver(file, path) {
  const [from, to] = [file, path].map((one) => /^core\/src\/([^/]+)\//.exec(one)?.[1]);
  if (from === undefined || to === undefined || from === to) return null;
  if (stage(to) < 0) return `${to} is no stage of the river`;
  return stage(to) < stage(from) ? null : `${from} may not import ${to}: the river flows the other way`;
}

/**
 * Why a file may not import something, or null.
 * @param {House} house @param {string} file @param {string} specifier
 */
function refusal(house, file, specifier) {
  const [folder = ''] = file.split('/');
  const isSource = file.startsWith(`${folder}/src/`);
  const to = target(house, file, specifier);
  if (specifier.startsWith('node:'))
    return PURE.includes(folder) && isSource ? `${folder} has no host, so no ${specifier}` : null;
  if ('path' in to) {
    const [there = ''] = to.path.split('/');
    if (there !== folder && APPS.includes(there)) return `nothing imports the app ${there}`;
    if (file.startsWith(`${folder}/test/`) && to.path.startsWith('core/test/')) return null;
    if (there !== folder && specifier.startsWith('.') && house.folders.includes(there))
      return `${there} is another workspace: import it by its name, not as ${specifier}`;
    const river = againstTheRiver(file, to.path);
    if (river !== null || specifier.startsWith('.')) return river;
  }
  const name = packageOf(specifier);
  if (folder === 'core' && isSource && !house.names.has(name) && !CORE_MAY_USE.includes(name))
    return `core imports ${CORE_MAY_USE.join(' and ')} and no other package`;
  return house.declared(folder, !isSource && !file.startsWith(`${folder}/bin/`)).has(name)
    ? null
    : `${name} is not declared in ${house.folders.includes(folder) ? `${folder}/package.json` : 'package.json'}`;
}

/** Only the scripts of the house may work out what they import. @param {string} file */
const computed = (file) =>
  LOOSE.some((folder) => file.startsWith(`${folder}/`)) ? null : 'imports what it works out at run time';

/** @param {string} file @param {string} text @returns {string[]} */
function placeProblems(file, text) {
  const problems = [];
  const parts = file.split('/').map((part) => /** @type {string} */ (part.split('.')[0]));
  const drawer = parts.find((part) => DRAWER.test(part));
  if (drawer !== undefined) problems.push(`${file}: "${drawer}" names no thing`);
  if (!file.startsWith('core/src/')) return problems;
  const [, , folder = ''] = file.split('/');
  if (stage(folder) < 0) problems.push(`${file}: not in a stage of the river`);
  for (const found of dissect(text).code.matchAll(AMBIENT)) {
    const line = text.slice(0, found.index).split('\n').length;
    problems.push(`${file}:${line}: ${found[0]} comes from the machine; take it as an argument`);
  }
  return problems;
}

/** @param {string} root @returns {import('./house.mjs').Report} */
export function boundaries(root) {
  const house = houseAt(root);
  const plan = existsSync(join(root, 'ARCHITECTURE.md')) ? read(root, 'ARCHITECTURE.md') : '';
  const files = [...house.folders, ...LOOSE].flatMap((folder) => sources(root, folder));
  const problems = [];
  const notes = [];
  for (const file of files) {
    const text = read(root, file);
    problems.push(...placeProblems(file, text));
    const length = text.split('\n').length - 1;
    if (length > MOST_LINES && !plan.includes(file))
      notes.push(`${file}: ${length} lines; cut it, or say in ARCHITECTURE.md why not`);
    for (const specifier of importsOf(text)) {
      const why = specifier === null ? computed(file) : refusal(house, file, specifier);
      if (why !== null) problems.push(`${file}: ${why}`);
    }
  }
  return { looked: files.length, problems, notes };
}
