import type { Point3 } from '../../../geometry/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import { addBearings } from './bearings.ts';
import { addLump, carriedBodies } from './bodies.ts';
import { ContactSearch, midpoint } from './contact.ts';
import { tieCopes } from './copes.ts';
import { FrameDraft } from './draft.ts';
import { addEngine } from './engine.ts';
import type { BikeFrame, FrameInput, ModelFlaw } from './frameTypes.ts';
import { type AxleNodes, addFront } from './frontModel.ts';
import type { Making } from './making.ts';
import { addPlates } from './plates.ts';
import { addRear } from './rearAxle.ts';
import { addContacts } from './riderContacts.ts';
import { addTubes } from './tubes.ts';

/**
 * Tubes split at their joints and bends, neck, fork and axles as members; plates, clamps, engine and bars as stiff
 * bodies; held at the axles in six directions that add no strain.
 * @param longest cuts members to this length, for buckling and vibration [m]
 */
export function bikeFrame(input: FrameInput, settings: LoadSettings, longest?: number): BikeFrame {
  const { build, bike, masses } = input;
  const draft = new FrameDraft();
  const frameLines = addTubes(draft, build, bike, masses);
  const making: Making = {
    ...input,
    draft,
    frameLines,
    search: new ContactSearch(draft, frameLines),
    welds: [],
    flaws: [],
    plates: new Map(),
  };
  tieCopes(making);
  const { front, upperClamp, legs } = addFront(draft, build, bike, masses, settings);
  const rear = addRear(making);
  making.flaws.push(...hubFlaws(front, rear));
  addPlates(making, legs);
  const engine = addEngine(making);
  const bearings = addBearings(making);
  const rider = addContacts(making, upperClamp);
  holdAtAxles(draft, rear);
  const places = { front, rear, upperClamp, legs, engine, bearings, ...rider };
  const bodies = carriedBodies(making, places);
  if (longest !== undefined) draft.refine(longest);
  for (const body of bodies) addLump(draft, body, places);
  const side = (wheel: 'front' | 'rear'): 0 | 1 => (build.brakes[wheel]?.side === 'right' ? 1 : 0);
  return {
    model: draft.model(),
    draft,
    bodies,
    welds: making.welds,
    flaws: making.flaws,
    wheels: { front, rear },
    brakeNodes: { front: front.held[side('front')], rear: rear.held[side('rear')] },
    engine,
    bearings,
    ...rider,
  };
}

const hubFlaws = (front: AxleNodes, rear: AxleNodes): ModelFlaw[] =>
  Object.entries({ frontAxle: front, rearAxle: rear })
    .filter(([, { isHubLost }]) => isHubLost)
    .map(([part]) => ({
      rule: 'gap',
      part,
      reason:
        'its stack leaves the hub no width between what holds the axle; taken as wide as the wheel says',
    }));

/** Six directions, so that nothing moves freely and nothing is strained. */
function holdAtAxles(draft: FrameDraft, rear: AxleNodes): void {
  draft.support(rear.held[0], ['ux', 'uy', 'uz']);
  draft.support(rear.held[1], ['ux', 'uz']);
  const axle = draft.lines.get('frontAxle')!;
  draft.support(draft.station(axle, axle.length / 2), ['uz']);
}

/** Middle of a member [m]. */
export const memberMiddle = (frame: BikeFrame, from: string, to: string): Point3 =>
  midpoint(frame.draft.nodes.get(from)!, frame.draft.nodes.get(to)!);
