/** How is it written that an order was placed, held, stopped or stepped up? */
import { holdSchema, orderDocument, orderSchema, toOrder, writeHold } from '../../order/document.ts';
import { count, line, name, part, UTC } from './field.ts';
import { kinds } from './kind.ts';

const MOST_STEPS = 1_000;
const step = count('step', 'Which step of the advancement, counted from 1', 1, MOST_STEPS);

export const ORDER_KINDS = kinds({
  'order-placed/1': {
    about: 'An order was placed; it may name the one whose place it takes',
    fields: {
      placed: part(
        'order',
        orderSchema.transform(toOrder).meta({ description: 'The order document' }),
        orderDocument,
      ),
    },
  },
  'order-held/1': {
    about: 'Feed is held, for a while or until somebody ends it',
    fields: { hold: part('hold', holdSchema, (hold) => writeHold(hold, UTC)) },
  },
  'order-hold-ended/1': {
    about: 'A hold was ended',
    fields: { hold: name('hold', 'The id of the hold') },
  },
  'order-stopped/1': {
    about: 'An order was stopped for good',
    fields: { stopped: name('order', 'The id of the order'), reason: line('reason', 'Why') },
  },
  'step-confirmed/1': {
    about: 'Somebody confirmed that the next step may be taken',
    fields: { step },
  },
  'step-declined/1': {
    about: 'Somebody declined the next step',
    fields: { step, reason: line('reason', 'Why') },
  },
});
