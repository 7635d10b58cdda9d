import { type Point3, scale3 } from '../../../geometry/index.ts';
import { practice } from '../../../quantity/index.ts';
import type { AppliedLoad } from './balance.ts';
import type { CasesInput, Draft } from './caseTypes.ts';
import type { Holds } from './riderHolds.ts';
import { newtons, onWheel } from './tireLoads.ts';
import { GRAVITY, type Whole } from './wholeBike.ts';

/** @source practice */
const USUAL_SPLAY = (20 * Math.PI) / 180;

/** The parked bike on its stand with the rider on. */
export function standCase({ build, bike, frame, settings }: CasesInput, whole: Whole, holds: Holds): Draft[] {
  const { stand } = build.seating;
  const pivot = bike.layout.places.stand;
  if (!stand || !pivot || !frame.stand) return [];
  const splay = stand.splay ?? USUAL_SPLAY;
  const foot = { x: pivot.x, y: pivot.y + pivot.z * Math.tan(splay), z: 0 };
  const up: Point3 = { x: 0, y: -Math.sin(stand.lean), z: Math.cos(stand.lean) };
  // About the line of the two contacts: the center leans over, the foot holds it.
  const arm = foot.y * Math.cos(stand.lean) + foot.z * Math.sin(stand.lean);
  const onStand = (settings.standFactor * whole.weight * whole.height * Math.sin(stand.lean)) / arm;
  const share = (foot.x - whole.contact.rear.x) / whole.wheelbase;
  const n = settings.standFactor;
  const lift = (wheel: 'front' | 'rear', load: number): AppliedLoad =>
    onWheel(wheel, whole.contact[wheel], scale3(up, load));
  return [
    {
      id: 'stand',
      name: 'side stand, rider on',
      basis: `${n} times the weight with the rider on, leaned ${((stand.lean * 180) / Math.PI).toFixed(0)}°: ${newtons(onStand)} on the stand.`,
      source: practice('rider sits down on the parked bike'),
      applied: [
        {
          what: 'ground on the stand',
          carrier: { by: 'node', node: frame.stand },
          at: foot,
          force: scale3(up, onStand),
        },
        lift('front', n * whole.front - onStand * share),
        lift('rear', n * whole.rear - onStand * (1 - share)),
      ],
      gravity: scale3(up, -GRAVITY),
      hold: holds.seated,
    },
  ];
}
