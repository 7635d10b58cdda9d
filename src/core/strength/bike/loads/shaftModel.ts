import type { Bike, PlacedStack } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import type { Point3 } from '../../../geometry/index.ts';
import type { Across, Shaft, ShaftLoad, ShaftSupport } from '../../shaft/shaft.ts';
import { type ShaftSolution, solveShaft } from '../../shaft/solveShaft.ts';
import type { PlacedBearing } from '../model/frameTypes.ts';
import type { DrivePull } from './drivePull.ts';

/** A shaft between engine and wheel with its bearings; x of the shaft runs along the bike's y. */
export interface DriveShaftModel {
  readonly id: string;
  readonly stack: PlacedStack;
  readonly diameter: number;
  readonly bearings: readonly PlacedBearing[];
  readonly shaft: Shaft;
}

const E_STEEL = 205e9;
const G_STEEL = 80e9;

/** Along the shaft's y and z, which are the bike's z and x: y → z → x is right-handed. */
export const acrossShaft = ({ x, z }: Point3): Across<ShaftForce> => [z as ShaftForce, x as ShaftForce];
type ShaftForce = NonNullable<ShaftLoad['force']>[0];
type ShaftTorque = NonNullable<ShaftLoad['torque']>;
type ShaftLength = ShaftLoad['at'];

/** Shafts that a stack places, with two bearings or more, and what pulls on them. */
export function driveShafts(
  build: Build,
  bike: Bike,
  bearings: readonly PlacedBearing[],
  pulls: readonly DrivePull[],
): readonly DriveShaftModel[] {
  return Object.entries(bike.stacks).flatMap(([name, stack]): DriveShaftModel[] => {
    const id = stack.shaft;
    if (id === 'engine' || id === 'rearAxle' || id === 'frontAxle') return [];
    const own = bearings.filter(({ node }) => node.startsWith(`bearing:${id}.`));
    const diameter = stack.axle?.diameter ?? build.driveline.shafts[id]?.diameter;
    if (own.length < 2 || diameter === undefined) return [];
    const ys = [
      ...own.map(({ y }) => y),
      ...stack.items.flatMap(({ left, right }) => [left, right]),
      ...(stack.axle ? [stack.axle.left, stack.axle.right] : []),
    ].filter((y) => Number.isFinite(y));
    const [from, to] = [Math.min(...ys), Math.max(...ys)] as [ShaftLength, ShaftLength];
    const loads = shaftLoads(id, bike, pulls).filter(({ at }) => at >= from && at <= to);
    const shaft: Shaft = {
      segments: [{ from, to, diameter: diameter as ShaftLength }],
      supports: own.map(({ y, item }) => ({ at: y as ShaftLength, ...seatOf(build, name, item) })),
      loads,
      elasticModulus: E_STEEL as Shaft['elasticModulus'],
      shearModulus: G_STEEL as Shaft['shearModulus'],
    };
    return [{ id, stack, diameter, bearings: own, shaft }];
  });
}

/** Give and place of a bearing as the file tells them. */
function seatOf(build: Build, stack: string, item: string): Pick<ShaftSupport, 'stiffness' | 'offset'> {
  const { stiffness, offset } = build.stacks[stack]?.items.find(({ id }) => id === item) ?? {};
  const none = 0 as ShaftLength;
  return {
    ...(stiffness === undefined ? {} : { stiffness }),
    ...(offset ? { offset: [offset.up ?? none, offset.forward ?? none] as const } : {}),
  };
}

/** Strands on a shaft: force across it and torque about it. */
function shaftLoads(id: string, bike: Bike, pulls: readonly DrivePull[]): ShaftLoad[] {
  const center = bike.shafts[id]!;
  return pulls.flatMap((pull) =>
    pull.strands.flatMap((strand): ShaftLoad[] => {
      const onDriver = strand.from === id;
      if (!onDriver && strand.to !== id) return [];
      const at = onDriver ? strand.at : strand.atDriven;
      const sign = onDriver ? 1 : -1;
      const force = { x: sign * strand.force.x, y: 0, z: sign * strand.force.z };
      const torque = (at.z - center.z) * force.x - (at.x - center.x) * force.z;
      return [{ at: at.y as ShaftLength, force: acrossShaft(force), torque: torque as ShaftTorque }];
    }),
  );
}

/** The shaft solved; nothing where it is not held. */
export function solveDriveShaft(model: DriveShaftModel): ShaftSolution | undefined {
  const solved = solveShaft(model.shaft);
  return solved.ok ? solved.value : undefined;
}
