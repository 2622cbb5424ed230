/** How is it written what was drawn, passed, seen and measured? */
import { type Issue, issue } from '../../base/result.ts';
import { inMl, NOTHING } from '../../base/volume.ts';
import { choice, line, mlOf, numberOf, optional, yesOrNo } from './field.ts';
import { type FactOf, kinds } from './kind.ts';

/** Three different things, of which only what was drawn has a number, a look, and something to return or discard. */
function residualContradicts(fact: FactOf<'residual-checked/1'>): Issue | null {
  const { found, volume, look, returned, discarded } = fact;
  if (found === 'measured' && volume === null) return issue(['volumeMl'], 'residual/no-volume');
  const drawn = found === 'measured' ? (volume ?? NOTHING) : NOTHING;
  if (found !== 'measured' && (volume ?? NOTHING) !== NOTHING) {
    return issue(['volumeMl'], 'residual/volume-without-aspirate', {
      found,
      volumeMl: inMl(volume ?? NOTHING),
    });
  }
  if ((found === 'could-not-aspirate' || found === 'not-done') && (volume !== null || look !== null)) {
    return issue(['found'], 'residual/seen-without-aspirate', { found });
  }
  const handled = { returnedMl: inMl(returned), discardedMl: inMl(discarded), drawnMl: inMl(drawn) };
  return returned + discarded > drawn ? issue(['returnedMl'], 'residual/more-than-drawn', handled) : null;
}

const volume = optional(mlOf('volumeMl', 'How much, where it was measured', 'amountOrNone'));

export const BODY_KINDS = kinds({
  'residual-checked/1': {
    about: 'What was in the stomach: nothing, so much, nothing could be drawn, or nobody looked',
    fields: {
      found: choice('found', 'What was found', ['zero', 'measured', 'could-not-aspirate', 'not-done']),
      volume: optional(mlOf('volumeMl', 'How much was drawn', 'amountOrNone')),
      look: optional(
        choice('look', 'What it looked like', [
          'feed',
          'clear',
          'bile',
          'blood',
          'coffee-ground',
          'faeculent',
          'green',
        ]),
      ),
      returned: mlOf('returnedMl', 'How much was given back', 'amountOrNone'),
      discarded: mlOf('discardedMl', 'How much was thrown away', 'amountOrNone'),
    },
    contradicts: residualContradicts,
  },
  'vomited/1': { about: 'The person vomited', fields: { volume } },
  'stool-passed/1': {
    about: 'The person passed stool',
    fields: { volume, form: choice('form', 'What it was like', ['formed', 'loose', 'liquid']) },
  },
  'distension-noted/1': {
    about: 'Whether the belly is distended',
    fields: {
      degree: choice('degree', 'How much', ['none', 'mild', 'marked']),
      girthCm: optional(numberOf('girthCm', 'Girth', 'length')),
    },
  },
  'pain-noted/1': {
    about: 'Whether there is pain',
    fields: {
      degree: choice('degree', 'How much', ['none', 'mild', 'severe']),
      onFeeding: yesOrNo('onFeeding', 'Whether it comes with feeding'),
    },
  },
  'bowel-sounds-noted/1': {
    about: 'Whether bowel sounds are heard',
    fields: { heard: yesOrNo('heard', 'Whether they are heard') },
  },
  'output-measured/1': {
    about: 'What came out otherwise',
    fields: {
      what: choice('what', 'What', ['urine', 'drain', 'gastric-drainage', 'stoma', 'other']),
      volume: mlOf('volumeMl', 'How much', 'amountOrNone'),
    },
  },
  'laboratory-result/1': {
    about: 'A value from the laboratory or the bedside, in the unit in which it came',
    fields: {
      analyte: choice('analyte', 'Of what', [
        'glucose',
        'potassium',
        'magnesium',
        'phosphate',
        'sodium',
        'urea',
        'creatinine',
      ]),
      value: numberOf('value', 'The value', 'result'),
      unit: line('unit', 'Its unit: mmol/L', 40),
    },
  },
});
