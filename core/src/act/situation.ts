/** How did things stand at the bedside when it happened, as far as is recorded? Only what can make a wish impossible. */
import type { Instant } from '../base/instant.ts';
import type { Fact } from '../record/fact.ts';
import { counts, type Ledger } from '../record/ledger.ts';

export type Situation = {
  readonly tubeOut: boolean;
  readonly paused: boolean;
  readonly up: ReadonlySet<string>;
  /** Closed containers that were spiked at any time, before or after. */
  readonly spiked: ReadonlySet<string>;
};

type Sketch = { tubeOut: boolean; paused: boolean; up: Set<string>; spiked: Set<string> };

function happen(sketch: Sketch, fact: Fact): void {
  switch (fact.kind) {
    case 'tube-out/1':
      sketch.tubeOut = true;
      break;
    case 'tube-placed/1':
      sketch.tubeOut = false;
      break;
    case 'pump-paused/1':
      sketch.paused = true;
      break;
    case 'pump-started/1':
    case 'pump-resumed/1':
    case 'pump-stopped/1':
      sketch.paused = false;
      break;
    case 'container-put-up/1':
      sketch.up.add(fact.container);
      break;
    case 'container-taken-down/1':
      sketch.up.delete(fact.container);
      break;
  }
}

/** [AC16] As it was at that instant, whatever was recorded of later; `without` is an entry about to be corrected. */
export function situationAt(ledger: Ledger, at: Instant, without: string | null = null): Situation {
  const sketch: Sketch = { tubeOut: false, paused: false, up: new Set(), spiked: new Set() };
  for (const entry of ledger.entries) {
    if (entry.id === without || !counts(ledger, entry)) continue;
    const { fact } = entry;
    if (fact.kind === 'container-put-up/1' && fact.closed) sketch.spiked.add(fact.container);
    if (entry.happenedAt <= at) happen(sketch, fact);
  }
  return sketch;
}
