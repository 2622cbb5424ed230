/** An order in a Bundle, with the patient, the tube and what was measured beside it. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  ANSWERED,
  bundle,
  coded,
  imported,
  only,
  PATIENT,
  plainOrder,
  quantity,
  refusal,
  standing,
  tube,
  weight,
} from './given.ts';

test('[FH19] name, date of birth, numbers, weight, height, allergy and tube come from what stands beside the order', () => {
  const read = imported(
    bundle(
      PATIENT,
      weight(70.5, 'kg', '2026-11-20T08:00:00+00:00'),
      weight(172, 'cm', '2026-11-20', { code: { coding: [{ system: 'http://loinc.org', code: '8302-2' }] } }),
      tube('Nasogastric feeding tube', 10),
      {
        resourceType: 'AllergyIntolerance',
        patient: { reference: 'Patient/p1' },
        code: { text: 'soya' },
      },
    ),
    ANSWERED,
  );
  assert.deepEqual(standing(read), []);
  assert.deepEqual(read.ignored, ['type', 'entry[4].resource.property[0].type']);
  const { patient, access } = read.order;
  assert.deepEqual(patient, {
    name: 'Ada Mary Example',
    birthDate: '1950-02-28',
    identifiers: [
      { kind: 'hospital number', value: 'HN 7' },
      { kind: 'urn:nhs', value: '943 476 5919' },
    ],
    place: null,
    allergies: ['soya'],
    dosingWeight: { kg: { n: 141, d: 2 }, on: '2026-11-20' },
    heightCm: { n: 172, d: 1 },
  });
  assert.deepEqual(access?.french, { n: 10, d: 1 });
});

test('[FH3] of a Bundle too, what nobody reads is named', () => {
  const read = imported(
    bundle(PATIENT, { resourceType: 'Encounter', id: 'e1', status: 'in-progress' }),
    ANSWERED,
  );
  assert.deepEqual(read.ignored, ['type', 'entry[2].resource.status']);
});

test('[FH19] the latest weight counts, in kg whatever its unit; the others are named', () => {
  const read = imported(
    bundle(
      PATIENT,
      weight(80, 'kg', '2026-01-05'),
      weight(154, '[lb_av]', '2026-11-01'),
      weight(71000, 'g', '2026-10-01'),
    ),
    ANSWERED,
  );
  // 154 lb of 0.45359237 kg.
  assert.deepEqual(read.order.patient.dosingWeight, { kg: { n: 3492661249, d: 50000000 }, on: '2026-11-01' });
  assert.deepEqual(
    coded(read, 'fhir/older-measurement').map(({ data }) => data.on),
    ['2026-10-01', '2026-01-05'],
  );
});

test('[FH19] what is withdrawn, or is about somebody else, is left alone and said', () => {
  const read = imported(
    bundle(
      PATIENT,
      weight(70, 'kg', '2026-11-01', { status: 'entered-in-error' }),
      weight(50, 'kg', '2026-11-02', { subject: { reference: 'Patient/p2' } }),
      { ...tube('Nasogastric tube', 8), patient: { reference: 'Patient/p2' } },
      {
        resourceType: 'AllergyIntolerance',
        patient: { reference: 'Patient/p1' },
        code: { text: 'milk' },
        verificationStatus: { coding: [{ code: 'refuted' }] },
      },
    ),
    ANSWERED,
  );
  assert.equal(read.order.patient.dosingWeight, null);
  assert.equal(read.order.access?.french, null);
  assert.deepEqual(read.order.patient.allergies, []);
  assert.deepEqual(
    [coded(read, 'fhir/withdrawn').length, coded(read, 'fhir/another-patient').length],
    [2, 2],
  );
});

test('[FH19] a Patient to whom the order does not lead stops it', () => {
  const read = imported(bundle({ ...PATIENT, id: 'p2' }), ANSWERED);
  assert.equal(only(read, 'fhir/patient-unresolved').level, 'stop');
  assert.equal(read.order.patient.name, null);
});

test('[FH19] references are followed by full URL, by type and id, and into what the order contains', () => {
  const byUrl = bundle();
  byUrl.entry[0].resource.patient = { reference: 'urn:uuid:1' };
  byUrl.entry.push({ fullUrl: 'urn:uuid:1', resource: { ...PATIENT, id: undefined } });
  assert.equal(imported(byUrl, ANSWERED).order.patient.name, 'Ada Mary Example');
  const contained = plainOrder((order) => {
    order.contained = [PATIENT, { resourceType: 'Practitioner', id: 'd1', name: [{ text: 'Dr B. Kind' }] }];
    order.patient = { reference: '#p1' };
    order.orderer = { reference: '#d1' };
  });
  const { order } = imported(contained, ANSWERED);
  assert.deepEqual([order.patient.name, order.prescriber?.name], ['Ada Mary Example', 'Dr B. Kind']);
});

test('[FH10] a tube that calls itself something else than the route, or two sizes, are questions', () => {
  const other = imported(bundle(PATIENT, tube('Jejunostomy tube', 10)), ANSWERED);
  assert.deepEqual(
    [only(other, 'fhir/device-disagrees').data.routed, only(other, 'fhir/device-disagrees').data.called],
    ['nasogastric', 'jejunostomy'],
  );
  assert.equal(other.order.access, null);
  const two = imported(bundle(PATIENT, tube('Nasogastric tube', 8), tube('Nasogastric tube', 10)), ANSWERED);
  assert.equal(only(two, 'fhir/sizes-differ').data.confirm, 'french');
});

test('[FH10] R5 writes the type of a Device as a list and its size as one value; both are read', () => {
  const r5 = {
    ...tube('x', 1),
    type: [{ text: 'Nasogastric tube' }],
    property: [{ valueQuantity: quantity(12, '[Ch]') }],
  };
  assert.deepEqual(imported(bundle(PATIENT, r5), ANSWERED).order.access?.french, { n: 12, d: 1 });
});

test('[FH8] a weight that cannot be one stops', () => {
  const read = imported(bundle(PATIENT, weight(70500, 'kg', '2026-11-01')), ANSWERED);
  assert.equal(only(read, 'fhir/not-credible').data.written, '70500 kg');
});

test('[FH1] one order for tube feeding is found beside diets; two are refused, and none is', () => {
  const diet = {
    resourceType: 'NutritionOrder',
    id: 'diet',
    status: 'active',
    intent: 'order',
    oralDiet: {},
  };
  assert.equal(imported(bundle(PATIENT, diet), ANSWERED).order.id, 'plain');
  const two = refusal(JSON.stringify(bundle(PATIENT, plainOrder())));
  assert.deepEqual(two[0]?.data.places, ['entry[0].resource', 'entry[2].resource']);
  const none = refusal(JSON.stringify({ resourceType: 'Bundle', entry: [{ resource: PATIENT }] }));
  assert.equal(none[0]?.code, 'fhir/no-order');
});

test('[FH19] an order for a group, or for anything but a patient, stops', () => {
  for (const reference of ['Group/1', 'https://example.org/fhir/Group/1', 'Device/1']) {
    const group = imported(
      plainOrder((order) => Object.assign(order.patient, { reference })),
      ANSWERED,
    );
    assert.equal(only(group, 'fhir/no-patient').level, 'stop');
  }
  const patient = plainOrder((order) => Object.assign(order.patient, { reference: 'Patient/1' }));
  assert.equal(coded(imported(patient, ANSWERED), 'fhir/no-patient').length, 0);
});

test('[FH19] [FH21] a weight that was measured stands, whatever is answered', () => {
  const read = imported(bundle(PATIENT, weight(70, 'kg', '2026-11-20')), { ...ANSWERED, weightKg: '80' });
  assert.deepEqual(read.order.patient.dosingWeight?.kg, { n: 70, d: 1 });
  assert.equal(only(read, 'answer/idle').data.key, 'weightKg');
});
