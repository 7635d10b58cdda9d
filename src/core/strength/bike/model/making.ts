import type { ContactSearch } from './contact.ts';
import type { DraftLine, FrameDraft } from './draft.ts';
import type { FrameInput, ModelFlaw, PlacedBearing, WeldSpot } from './frameTypes.ts';
import type { AxleNodes } from './frontModel.ts';

/** All that is found while the model is put together. */
export interface Making extends FrameInput {
  readonly draft: FrameDraft;
  readonly frameLines: readonly DraftLine[];
  readonly search: ContactSearch;
  readonly welds: WeldSpot[];
  readonly flaws: ModelFlaw[];
  /** Node of a placed plate by `id.hand`. */
  readonly plates: Map<string, string>;
}

export interface Places {
  readonly front: AxleNodes;
  readonly rear: AxleNodes;
  readonly upperClamp: string;
  readonly legs: readonly [string, string];
  readonly engine: string;
  readonly bearings: readonly PlacedBearing[];
  readonly seats: readonly { readonly node: string }[];
  readonly pegs: readonly [string, string];
  readonly grips: readonly [string, string];
}
