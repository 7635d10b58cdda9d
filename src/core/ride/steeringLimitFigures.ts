import type { Bike } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { derived, type Figure, type FigureInput, figureMaker } from '../quantity/index.ts';
import type { LeanContact } from './leanContact.ts';
import type { LockContact } from './lockContact.ts';
import { headDrop, turningCircle } from './steering.ts';

const figure = figureMaker({ id: 'steeringLimits' });

/** The working of lock, turning circle, head drop and lean to first contact, in the loaded stance. */
export function steeringLimitFigures(
  build: Build,
  bike: Bike,
  locks: readonly LockContact[],
  leans: readonly LeanContact[],
): Figure[] {
  return [...lockFigures(build, bike), ...locks.map(contactFigure), ...leanFigures(leans)];
}

function lockFigures(build: Build, { layout }: Bike): Figure[] {
  const { lock, forkOffset } = build.steering;
  const { wheelbase, rake, frontRadius } = layout.stances.sag;
  const circle =
    lock === undefined ? undefined : turningCircle(wheelbase, rake, lock, layout.fitted.front.width);
  if (lock === undefined || !circle) return [];
  const inputs: FigureInput[] = [
    { name: 'p', value: wheelbase, kind: 'length' },
    { name: 'ε', value: rake, kind: 'angle' },
    { name: 'δ', value: lock, kind: 'angle' },
  ];
  const rolling = derived('both wheels roll about one center, bike upright');
  const wheel: FigureInput[] = [
    { name: 'R', value: frontRadius, kind: 'length' },
    { name: 'd', value: forkOffset, kind: 'length' },
    ...inputs.slice(1),
  ];
  return [
    figure(
      'groundSteer',
      'Δ',
      'angle of the front track on the ground at full lock',
      circle.groundSteer,
      'angle',
      'tan Δ = cos ε·tan δ',
      inputs,
      rolling,
    ),
    figure(
      'rearTrackRadius',
      'r',
      'radius of the rear track at full lock',
      circle.rearRadius,
      'length',
      'r = p/tan Δ',
      inputs,
      rolling,
    ),
    figure(
      'betweenWalls',
      'D',
      'turning circle between walls, walked upright',
      circle.betweenWalls,
      'length',
      'D = 2·p/sin Δ + tire width',
      inputs,
      rolling,
    ),
    figure(
      'headDrop',
      'h',
      'drop of the head at full lock, held upright',
      headDrop({ radius: frontRadius, forkOffset, rake, steer: lock }),
      'length',
      'h = R − d·sin ε·(1 − cos δ) − R·√(1 − sin²δ·sin²ε)',
      wheel,
      derived('lowest point of a turned knife-edge wheel'),
    ),
  ];
}

const contactFigure = ({ angle, by, against, toward }: LockContact): Figure =>
  figure(
    `contact.${toward}`,
    'δ_c',
    `steering angle to the ${toward} at which the ${by} meets ${against}`,
    angle,
    'angle',
    'first angle without a gap',
    [],
    derived('distance of tube points to tire and legs turned about the axis'),
  );

/** The first part of each side. */
function leanFigures(leans: readonly LeanContact[]): Figure[] {
  return (['left', 'right'] as const).flatMap((side) => {
    const first = leans.find((lean) => lean.side === side);
    if (!first) return [];
    const inputs: FigureInput[] = [
      { name: 'y', value: first.at.y, kind: 'length' },
      { name: 'z', value: first.at.z, kind: 'length' },
    ];
    const source = derived('height of a point of a bike that rolls over on its round tread');
    return [
      figure(
        `lean.${side}`,
        'φ',
        `lean to the ${side} at which ${first.part} touches first`,
        first.lean,
        'angle',
        '(z − t)·cos φ − y·sin φ + t = radius of the part',
        inputs,
        source,
      ),
    ];
  });
}
