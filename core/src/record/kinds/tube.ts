/** How is it written that a tube was placed, checked, moved, blocked or out, and how the person lies? */
import { issue } from '../../base/result.ts';
import { accessSchema, writeAccess } from '../../order/document-patient.ts';
import { choice, count, line, name, numberOf, optional, part, UTC, yesOrNo } from './field.ts';
import { kinds } from './kind.ts';

const lumen = optional(name('lumen', 'Which lumen, by its name on the device'));
const mark = numberOf('markCm', 'The mark at the nostril, lip or skin', 'length');
const how = optional(line('how', 'How'));

export const TUBE_KINDS = kinds({
  'tube-placed/1': {
    about: 'A tube was placed. It is not confirmed by having been placed',
    fields: {
      access: part('access', accessSchema, (access) => writeAccess(access, UTC)),
      markCm: optional(mark),
    },
  },
  'tube-checked/1': {
    about: 'Somebody checked where the tube is. Not confirmed does not say where it is',
    fields: {
      method: choice('method', 'By what', ['ph', 'radiograph', 'mark', 'under-vision', 'balloon-volume']),
      lumen,
      confirmed: yesOrNo('confirmed', 'Whether this check confirmed it'),
      ph: optional(numberOf('ph', 'pH of what was drawn; the higher of two pads', 'ph')),
      markCm: optional(mark),
      reader: optional(name('reader', 'Who read the radiograph, or checked a second time')),
    },
    contradicts: ({ method, confirmed, ph }) =>
      method === 'ph' && confirmed && ph === null ? issue(['ph'], 'fact/confirmed-without-ph') : null,
  },
  'tube-moved/1': { about: 'The tube was moved, or found moved', fields: { markCm: mark } },
  'tube-out/1': { about: 'The tube is out', fields: { how } },
  'tube-blocked/1': { about: 'The tube, or one lumen of it, is blocked', fields: { lumen } },
  'tube-cleared/1': { about: 'What was blocked is open again', fields: { lumen, how } },
  'position-set/1': {
    about: 'How the person lies',
    fields: {
      headOfBedDegrees: count(
        'headOfBedDegrees',
        'How high the head of the bed is, in degrees',
        0,
        90,
        'deg',
      ),
      posture: optional(name('posture', 'How else: on the left side, prone, in a chair')),
    },
  },
});
