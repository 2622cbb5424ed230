/** How is it written who the person is, what they weigh, and what else they receive? */
import { z } from 'zod';
import { MOST_ITEMS } from '../../order/credible.ts';
import { text } from '../../order/document-values.ts';
import { line, name, numberOf, onDay, optional, part } from './field.ts';
import { kinds } from './kind.ts';

const identifier = z.strictObject({
  kind: text('Whose number it is: hospital-number'),
  value: text('The number itself'),
});

export const PERSON_KINDS = kinds({
  'person-identified/1': {
    about: 'Who the person is',
    fields: {
      name: line('name', 'Name'),
      birthDate: optional(onDay('birthDate', 'Date of birth')),
      identifiers: part(
        'identifiers',
        z
          .array(identifier)
          .max(MOST_ITEMS.identifiers)
          .meta({ description: 'Numbers that identify the person; may be empty' }),
        (list) => list,
      ),
      place: optional(name('place', 'Ward, room, bed')),
    },
  },
  'weight-measured/1': {
    about: 'The person was weighed',
    fields: { kg: numberOf('kg', 'Weight', 'weight') },
  },
  'height-measured/1': {
    about: 'The person was measured',
    fields: { cm: numberOf('cm', 'Height', 'height') },
  },
  'allergies-recorded/1': {
    about: 'All that the person is allergic to; an empty list says: none known',
    fields: {
      allergies: part(
        'allergies',
        z
          .array(text('Something the person is allergic to, in plain words'))
          .max(MOST_ITEMS.allergies)
          .meta({ description: 'Allergies' }),
        (list) => list,
      ),
    },
  },
  'other-energy-recorded/1': {
    about: 'Energy that runs from elsewhere: glucose drips, lipid in sedation, parenteral, oral; 0 ends it',
    fields: {
      name: name('name', 'What it is'),
      kcalPerDay: numberOf('kcalPerDay', 'Its energy a day', 'energy'),
    },
  },
});
