// @ts-check
/**
 * May every package that we install be used and passed on under our licence?
 */
import { readJson } from './house.mjs';

/** Permissive: attribution is all they ask. */
const ALLOWED = ['MIT', 'ISC', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'BlueOak-1.0.0'];

/**
 * Packages whose licence is none of those, each with why it may be here. `devOnly` ones may not reach an installation.
 * @type {Record<string, { licence: string, devOnly: boolean, because: string }>}
 */
const BY_NAME = {
  '@lhncbc/ucum-lhc': {
    licence: 'SEE LICENSE IN LICENSE.md',
    devOnly: true,
    because:
      'UCUM terms: free to use, the table unchanged and its notice kept. The reference that our units are tested against.',
  },
  fhirpath: {
    licence: 'SEE LICENSE in LICENSE.md',
    devOnly: true,
    because:
      'BSD terms of a national library, with a wish to be cited. Tests evaluate the invariants with it.',
  },
  'hl7.fhir.r4.examples': {
    licence: 'CC0-1.0',
    devOnly: true,
    because: 'Public domain: the published examples of FHIR R4, read by tests.',
  },
  'hl7.fhir.r5.examples': {
    licence: 'CC0-1.0',
    devOnly: true,
    because: 'Public domain: the published examples of FHIR R5, read by tests.',
  },
  argparse: {
    licence: 'Python-2.0',
    devOnly: true,
    because: 'Permissive like BSD; comes with a test dependency.',
  },
};

/** `A OR B` lets us choose; `A AND B` binds us to both. @param {string} expression @returns {boolean} */
const allows = (expression) =>
  expression
    .replace(/[()]/g, '')
    .split(/\s+OR\s+/)
    .some((choice) => choice.split(/\s+AND\s+/).every((licence) => ALLOWED.includes(licence)));

/** @param {string} name @param {{ license?: string, dev?: boolean }} locked @returns {string | null} */
function refusal(name, { license = 'none', dev = false }) {
  if (allows(license)) return null;
  const known = BY_NAME[name];
  if (known?.licence !== license) return `${name}: licence ${license} is not on the list`;
  return known.devOnly && !dev ? `${name}: ${license} is for tests only` : null;
}

/** @param {string} root @returns {import('./house.mjs').Report} */
export function licences(root) {
  const installed = Object.entries(readJson(root, 'package-lock.json').packages).filter(
    ([path, { link }]) => path.includes('node_modules/') && !link,
  );
  const problems = installed
    .map(([path, locked]) => refusal(path.replace(/^.*node_modules\//, ''), locked))
    .filter((problem) => problem !== null);
  return { looked: installed.length, problems };
}
