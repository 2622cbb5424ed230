/** How are care, notes, answers to advice and the rulings about other entries written? */
import { issue } from '../../base/result.ts';
import { line, optional, prose } from './field.ts';
import { kinds } from './kind.ts';

export const CARE_KINDS = kinds({
  'mouth-care-done/1': { about: 'Mouth care was done', fields: {} },
  'note-written/1': { about: 'What else is to be known', fields: { text: prose('text', 'The note') } },
  'advice-answered/1': {
    about: 'Somebody answered an advice',
    fields: {
      advice: line('advice', 'The advice’s id'),
      answer: line('answer', 'What was answered'),
      note: optional(prose('note', 'Why')),
    },
  },
  'duplicate-settled/1': {
    about: 'Two entries tell of one thing: one stays, the other is dropped',
    fields: {
      keeps: line('keeps', 'The id of the entry that stays'),
      drops: line('drops', 'The id of the entry that is dropped'),
    },
    contradicts: ({ keeps, drops }) =>
      keeps === drops ? issue(['drops'], 'entry/names-itself', { id: drops }) : null,
  },
  'entered-in-error/1': {
    about: 'An entry was made in error. It stays in the record and no longer counts',
    fields: { target: line('target', 'The id of the entry'), reason: line('reason', 'Why', 500) },
  },
});
