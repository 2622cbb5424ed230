/**
 * What is in the bottle? A feed as a facility's own list describes it: by class and composition, never by trade name.
 */
import type { Fraction } from '../base/fraction.ts';
import type { Volume } from '../base/volume.ts';
import type { Provenance } from '../base/working.ts';

/** How the feed comes, which decides whether it is spiked or poured and which hang limit applies. */
export type FeedSystem =
  | 'closed'
  | 'open-liquid'
  | 'powder'
  | 'concentrate'
  | 'human-milk'
  | 'blenderised'
  | 'water';

/** What one may take from the store: a closed container that is spiked, a carton that is poured, a can of powder. */
export type Pack = { readonly kind: 'container' | 'carton'; readonly volume: Volume };

export type Feed = {
  readonly id: string;
  /** The generic name, as it stands on labels: `standard 1.0 kcal/mL`. */
  readonly name: string;
  readonly feedClass: string;
  readonly system: FeedSystem;
  /** Of the feed as it is given at full strength. */
  readonly energyKcalPerMl: Fraction;
  readonly proteinGPerMl: Fraction;
  /** mL of water in one mL of feed. */
  readonly waterFraction: Fraction;
  readonly osmolalityMosmPerKg: number | null;
  /** What it contains that people are allergic to, in plain words: `milk`, `soya`. */
  readonly allergens: readonly string[];
  readonly packs: readonly Pack[];
  /** Its own hang limit where the product has one, in ms; local policy's class limit still governs if shorter. */
  readonly labelHangLimit: number | null;
  /** True where no two batches are alike (human milk, a kitchen's feed): the figures above are an assumption. */
  readonly compositionVaries?: boolean;
  /** The product numbers on its containers, as they are printed; the facility's own, and none where it has none. */
  readonly gtins?: readonly string[];
  /** Numbers in docs/sources.md, or what the facility goes by: `S31, S95`, `label`. */
  readonly source: string;
  readonly provenance: Provenance;
};

export type FeedList = { readonly feeds: readonly Feed[]; readonly version: string };

export const feedById = (list: FeedList, id: string): Feed | null =>
  list.feeds.find((feed) => feed.id === id) ?? null;
