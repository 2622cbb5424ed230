import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { OrderDocument } from '@feedwright/core/order/document';
import type { DeviceKind, TipSite } from '@feedwright/core/order/order';
import type { Policy } from '@feedwright/core/policy/policy';
import { DOCUMENT, judged, ofRule, orderWith, policyOf, SILENT } from './example.ts';

type Access = NonNullable<OrderDocument['access']>;

const codes = (rule: string, changes: Partial<OrderDocument>, policy: Policy = SILENT) =>
  ofRule(rule, judged(orderWith(changes), { policy })).map((one) => one.code);

/** A gastro-jejunal tube: one lumen in the stomach, one beyond it. */
const GASTRO_JEJUNAL: Access = {
  device: 'gastro-jejunal',
  lumens: [
    { name: 'gastric port', tip: 'gastric', uses: ['feed', 'medicine', 'drain'] },
    { name: 'jejunal port', tip: 'jejunal', uses: ['feed'] },
    { name: 'balloon', uses: [] },
  ],
  feedBy: 'jejunal port',
  medicineBy: 'gastric port',
};
const byGastricPort = { ...GASTRO_JEJUNAL, feedBy: 'gastric port' };

const single = (device: DeviceKind, tip: TipSite): Access => ({
  device,
  lumens: [{ name: 'port', tip, uses: ['feed', 'medicine'] }],
  feedBy: 'port',
  medicineBy: 'port',
});

const REGIMENS = {
  continuous: { method: 'pump', regimen: { kind: 'continuous', rateMlPerHour: 50 } },
  cyclic: { method: 'pump', regimen: { kind: 'cyclic', from: '20:00', until: '08:00', rateMlPerHour: 50 } },
  targeted: {
    method: 'pump',
    regimen: { kind: 'volume-targeted', volumeMlPerDay: 1_200, baseRateMlPerHour: 50 },
  },
  'intermittent by pump': {
    method: 'pump',
    regimen: { kind: 'intermittent', volumeMl: 200, times: ['08:00'], minutes: 60, by: 'pump' },
  },
  'intermittent by gravity': {
    method: 'gravity',
    regimen: { kind: 'intermittent', volumeMl: 200, times: ['08:00'], minutes: 60, by: 'gravity' },
  },
  'bolus by syringe': {
    method: 'syringe',
    regimen: { kind: 'bolus', volumeMl: 200, times: ['08:00'], minutes: 20 },
  },
  'bolus by gravity': {
    method: 'gravity',
    regimen: { kind: 'bolus', volumeMl: 200, times: ['08:00'], minutes: 20 },
  },
  'continuous by syringe': { method: 'syringe', regimen: { kind: 'continuous', rateMlPerHour: 50 } },
  'continuous by gravity': { method: 'gravity', regimen: { kind: 'continuous', rateMlPerHour: 50 } },
} as const satisfies Record<string, Partial<OrderDocument>>;

const LUMENS = {
  stomach: single('nasogastric', 'gastric'),
  duodenum: single('nasoduodenal', 'duodenal'),
  jejunum: single('jejunostomy', 'jejunal'),
  'gastric port': byGastricPort,
  'jejunal port': GASTRO_JEJUNAL,
};

/** S30 (read): never by bolus into the jejunum. All bodies agree. */
test('[OR8, OR10] which regimen may go down which lumen: the lumen decides, not the device', () => {
  const verdict = (changes: Partial<OrderDocument>, access: Access) => {
    const rules = judged(orderWith({ ...changes, access })).map((one) => one.rule);
    return rules.includes('OR8') ? 'stop' : rules.includes('OR10') ? 'ask' : 'yes';
  };
  const table = Object.fromEntries(
    Object.entries(REGIMENS).map(([regimen, changes]) => [
      regimen,
      Object.values(LUMENS)
        .map((access) => verdict(changes as never, access))
        .join(' '),
    ]),
  );
  assert.deepEqual(table, {
    // stomach, duodenum, jejunum, gastric port, jejunal port
    continuous: 'yes yes yes yes yes',
    cyclic: 'yes yes yes yes yes',
    targeted: 'yes yes yes yes yes',
    'intermittent by pump': 'yes yes yes yes yes',
    'intermittent by gravity': 'yes ask ask yes ask',
    'bolus by syringe': 'yes stop stop yes stop',
    'bolus by gravity': 'yes stop stop yes stop',
    'continuous by syringe': 'yes stop stop yes stop',
    'continuous by gravity': 'yes ask ask yes ask',
  });
});

test('[OR8, OR9] local policy may allow a bolus beyond the stomach: then a named person is asked; unsaid is no', () => {
  const changes = { ...REGIMENS['bolus by syringe'], access: LUMENS.jejunum } as never;
  const [silent] = ofRule('OR8', judged(orderWith(changes)));
  assert.deepEqual(
    [silent?.level, silent?.data.key, silent?.data.why],
    ['stop', 'jejunal.bolus-allowed', 'no-row'],
  );
  const no = policyOf({ 'jejunal.bolus-allowed': false });
  assert.deepEqual(codes('OR8', changes, no), ['order/bolus-post-pyloric']);
  const yes = policyOf({ 'jejunal.bolus-allowed': true });
  assert.deepEqual(codes('OR8', changes, yes), []);
  const [asked] = ofRule('OR9', judged(orderWith(changes), { policy: yes }));
  assert.equal(asked?.level, 'ask');
  assert.equal(asked?.data.confirm, 'OR9');
  assert.deepEqual(asked?.data.basis, {
    kind: 'policy',
    key: 'jejunal.bolus-allowed',
    source: 'facility',
    provenance: 'facility',
    setBy: 'A. Tester',
    setOn: '2026-11-01',
  });
});

test('[OR6] a lumen that the device has not stops, as do two of one name', () => {
  const access = (changes: Partial<Access>) => ({ access: { ...GASTRO_JEJUNAL, ...changes } });
  const [problem] = ofRule('OR6', judged(orderWith(access({ feedBy: 'gastric' }))));
  assert.deepEqual(problem?.path, ['access', 'feedBy']);
  assert.deepEqual(problem?.data, {
    lumen: 'gastric',
    has: ['gastric port', 'jejunal port', 'balloon'],
    device: 'gastro-jejunal',
  });
  assert.deepEqual(codes('OR6', access({ medicineBy: 'Gastric port' })), ['order/no-such-lumen']);
  const lumens = [...GASTRO_JEJUNAL.lumens!, { name: 'balloon', uses: [] }];
  assert.deepEqual(codes('OR6', access({ lumens })), ['order/lumen-twice']);
  assert.deepEqual(codes('OR6', access({})), []);
});

test('[OR7] feed and medicine go only by lumens that are for them', () => {
  const at = (feedBy: string, medicineBy: string) =>
    ofRule('OR7', judged(orderWith({ access: { ...GASTRO_JEJUNAL, feedBy, medicineBy } }))).map(
      (one) => one.data.use,
    );
  assert.deepEqual(at('gastric port', 'gastric port'), []);
  assert.deepEqual(at('jejunal port', 'jejunal port'), ['medicine']);
  assert.deepEqual(at('balloon', 'balloon'), ['feed', 'medicine']);
});

test('[OR11] a tip that is not where the device ends is asked about', () => {
  const asked = (device: DeviceKind, tip: TipSite) => codes('OR11', { access: single(device, tip) }).length;
  const table: readonly (readonly [DeviceKind, string])[] = [
    // asked at gastric, duodenal, jejunal tips
    ['nasogastric', '0 1 1'],
    ['orogastric', '0 1 1'],
    ['nasoduodenal', '1 0 0'],
    ['nasojejunal', '1 0 0'],
    ['gastrostomy', '0 1 1'],
    ['gastrostomy-button', '0 1 1'],
    ['gastro-jejunal', '0 0 0'],
    ['jejunostomy', '1 1 0'],
  ];
  for (const [device, expected] of table) {
    const tips = (['gastric', 'duodenal', 'jejunal'] as const).map((tip) => asked(device, tip));
    assert.equal(tips.join(' '), expected, device);
  }
});

test('[OR44] medicines beyond the stomach are worth knowing about, and only where there are some', () => {
  const access = { ...LUMENS.jejunum };
  const medicines = [{ name: 'a medicine', times: ['08:00'], volumeMl: 10 }];
  assert.deepEqual(codes('OR44', { access }), []);
  assert.deepEqual(codes('OR44', { access, medicines }), ['order/medicine-post-pyloric']);
  assert.deepEqual(codes('OR44', { access: GASTRO_JEJUNAL, medicines }), [], 'by the gastric port');
  assert.deepEqual(codes('OR44', { access: DOCUMENT.access!, medicines }), []);
});
