/** Intake and output, catch-up, percentages, nitrogen, solutes. */
import type { Example, Trap } from './example.ts';

export const ACCOUNT: readonly Example[] = [
  {
    id: 'C02',
    source: 'X12',
    kind: 'printed',
    runs: [
      {
        work: 'intake-output',
        given: {
          start: '0800',
          until: '1600',
          oral: '120; 180; 200; 100; 60; 17:00 200 mL; 18:00 150 mL',
          iv: '500; 500',
        },
        shows: { intakeMl: 1660, leftOut: 2 },
      },
    ],
    note: 'entries at 1700 and 1800 are left out; their amounts are our own',
  },
  {
    id: 'C04',
    source: 'X13',
    kind: 'printed',
    runs: [
      { work: 'intake-output', given: { intake_mL: '2455', output_mL: '2260' }, shows: { balanceMl: 195 } },
    ],
  },
  {
    id: 'C05',
    source: 'X14',
    kind: 'own',
    runs: [
      {
        work: 'feeds-in-window',
        given: {
          feed_mL: '300',
          feed_times: '04:00; 08:00; 12:00; 16:00; 20:00; 24:00',
          water_after_each_mL: '100',
          start: '23:00',
          until: '07:00',
        },
        shows: { feedsInWindow: 2, intakeMl: 800 },
      },
    ],
  },
  {
    id: 'C07',
    source: 'X14',
    kind: 'own',
    runs: [
      {
        work: 'irrigation',
        given: { irrigation_mL_h: '50', start: '07:00', end: '12:00', bag_mL: '925' },
        shows: { trueUrineMl: 675 },
      },
    ],
  },
  {
    id: 'C09',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'intake-output',
        given: {
          feed_mL: '480',
          flush_mL: '120',
          med_water_mL: '60',
          iv_mL: '100',
          urine_mL: '500',
          grv_discarded_mL: '150',
          grv_returned_mL: '200',
        },
        shows: { intakeMl: 760, outputMl: 650, balanceMl: 110 },
      },
      {
        work: 'intake-output',
        given: {
          feed: '480',
          flush: '120',
          meds: '60',
          iv: '100',
          urine: '500',
          discarded: '150',
          discardedAs: 'off-intake',
        },
        shows: { intakeMl: 610, outputMl: 500, balanceMl: 110 },
      },
    ],
    note: 'whether discarded residual is output or comes off intake is local policy',
  },
  {
    id: 'D01',
    source: 'X15',
    kind: 'own',
    runs: [
      {
        work: 'catch-up',
        given: { goal_mL: '1680', received_mL: '560', hours_left: '10', cap_mL_h: '150' },
        shows: { remainingMl: 1120, rateMlPerHour: 112, atCeiling: 'no', shortfallMl: 0 },
      },
    ],
  },
  {
    id: 'D02',
    source: 'X15',
    kind: 'own',
    runs: [
      {
        work: 'catch-up',
        given: { goal_mL: '1800', received_mL: '300', hours_left: '8', cap_mL_h: '150' },
        shows: {
          neededRateMlPerHour: 187.5,
          rateMlPerHour: 150,
          atCeiling: 'yes',
          deliverableMl: 1200,
          shortfallMl: 300,
        },
      },
    ],
  },
  {
    id: 'D04',
    source: 'X15',
    kind: 'own',
    runs: [
      {
        work: 'catch-up',
        given: { goal_mL: '1440', received_mL: '1500', hours_left: '2' },
        shows: { remainingMl: 0, overMl: 60, rateMlPerHour: 0 },
      },
    ],
  },
  {
    id: 'D06',
    source: 'X16',
    kind: 'printed',
    runs: [
      {
        work: 'hold-adjusted-rate',
        given: { held_hours_per_day: '3.5', hours: '24' },
        shows: { lostPercent: 15 },
        exact: { lostPercent: 14.583333 },
      },
    ],
  },
  {
    id: 'H02',
    source: 'X26',
    kind: 'printed',
    runs: [
      {
        work: 'percentage',
        given: { n: '46', of: '64' },
        shows: { percent: 71.9 },
        exact: { percent: 71.875 },
      },
      {
        work: 'percentage',
        given: { n: '59', of: '64' },
        shows: { percent: 92.2 },
        exact: { percent: 92.1875 },
      },
    ],
  },
  {
    id: 'H03',
    source: 'X27',
    kind: 'printed',
    runs: [
      {
        work: 'percentage',
        given: { n: '31', of: '384', round: 'whole' },
        shows: { percent: 8 },
        exact: { percent: 8.072917 },
      },
      {
        work: 'percent-change',
        given: { earlier: '114', later: '150', round: 'whole' },
        shows: { changePercent: 32 },
        exact: { changePercent: 31.578947 },
      },
    ],
  },
  {
    id: 'H06',
    source: 'X36',
    kind: 'own',
    runs: [
      {
        work: 'residual-percent',
        given: { feed_mL: '24', residual_mL: '9' },
        shows: { residualPercent: 37.5, band: '25-to-50' },
      },
    ],
  },
  {
    id: 'J01',
    source: 'X28',
    kind: 'own',
    runs: [
      {
        work: 'percentage',
        given: { deficit: '271', percent: '14' },
        shows: { whole: 1935.7 },
        exact: { whole: 1935.714286 },
      },
      { work: 'percentage', given: { part: '271', of: '1920' }, exact: { percent: 14.114583 } },
    ],
    note: 'the prescribed volume is not in the abstract; 14 % implies it',
  },
  {
    id: 'J02',
    source: 'X29',
    kind: 'printed',
    runs: [{ work: 'percentage', given: { part: '36 + 55 + 9', of: '100' }, shows: { percent: 100 } }],
  },
  {
    id: 'J03',
    source: 'X30',
    kind: 'own',
    runs: [
      {
        work: 'percent-delivered',
        given: { prescribed_mL: '1500', delivered_mL: '1365' },
        shows: { percentDelivered: 91, lowMl: 1350, highMl: 1650, adequate: 'yes' },
      },
      {
        work: 'percent-delivered',
        given: { prescribed_mL: '1500', delivered_mL: '1365', tolerance: '5' },
        shows: { lowMl: 1425, highMl: 1575, adequate: 'no' },
      },
    ],
  },
  {
    id: 'K02',
    source: 'X32',
    kind: 'printed',
    runs: [
      {
        work: 'nitrogen-for-energy',
        given: { kcal: '1500', kcal_per_g_N: '150' },
        shows: { nitrogenG: 10, proteinG: 62.5 },
      },
    ],
  },
  {
    id: 'K04',
    source: 'X3',
    kind: 'printed',
    runs: [
      {
        work: 'energy-to-nitrogen',
        given: { kcal: '2162', protein_percent_of_kcal: '16.7' },
        shows: { totalKcalPerG: 150, nonProteinKcalPerG: 125 },
        exact: { totalKcalPerG: 149.700599, nonProteinKcalPerG: 124.700599 },
      },
    ],
    note: 'the printed 150:1 is TOTAL kcal to nitrogen; non-protein is 125:1',
  },
  {
    id: 'K08',
    source: 'X35',
    kind: 'own',
    runs: [
      {
        work: 'renal-solute-load',
        given: { protein_g_L: '15', na: '8', k: '18', cl: '12', p_mg_L: '310' },
        shows: { nitrogenMg: 2400, phosphorusMmol: 10, loadMosm: 133.7 },
        exact: { ureaMosm: 85.714286, loadMosm: 133.714286 },
      },
    ],
  },
  {
    id: 'K10',
    source: 'X1',
    kind: 'own',
    runs: [{ work: 'fluid-for-energy', given: { kcal: '1848' }, shows: { fluidMl: 1848 } }],
  },
];

export const ACCOUNT_TRAPS: readonly Trap[] = [
  {
    id: 'K01',
    source: 'X31',
    run: {
      work: 'nitrogen-balance',
      given: { protein_g: '90', uun_g: '20', other_g: '4' },
      shows: { nitrogenInG: 14.4, nitrogenOutG: 24, balanceG: -9.6, proteinBalanceG: -60 },
      exact: { balanceG: -9.6, proteinBalanceG: -60 },
    },
    printed: { balanceG: -10, proteinBalanceG: -62.5 },
    because: '14.4 was cut to 14 before subtracting',
  },
];
