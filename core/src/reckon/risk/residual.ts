/** What part of the feed came back, and in which band is that? */
import { gives, names, quantity } from '../asking/asks.ts';
import { calculation } from '../declare.ts';
import { compare, less, of, over, times } from '../exact.ts';

export const residualPercent = calculation({
  name: 'residual-percent',
  also: ['residual', 'grv-percent', 'preterm-residual'],
  asks: {
    residualMl: quantity('R', 'mL', ['0', '2000'], 'residual', 'aspirate', 'grv'),
    feedMl: quantity('F', 'mL', ['0.1', '2000'], 'feed', 'bolus', 'feedVolume'),
  },
  gives: { residualPercent: gives('p', '%', '0.1'), band: names('band') },
  equations: ['p = 100 × R / F', 'under 25 %, 25–50 %, over 50 % (preterm)'],
  sources: ['S42'],
  rule: 'RK10',
  cautions: ['residual-bands-are-for-preterm'],
  example: { residual: '9 mL', feed: '24 mL' },
  compute: ({ residualMl: R, feedMl: F }, sheet) => {
    const percent = over(times(of(100), R), F);
    const p = sheet.number('residualPercent', 'p = 100 × R / F', [R, F], percent, 'arithmetic');
    const band = less(percent, of(25)) ? 'under-25' : compare(percent, of(50)) <= 0 ? '25-to-50' : 'over-50';
    return [p, sheet.choice('band', 'under 25 %, 25–50 %, over 50 %', [p], band)];
  },
});
