import { scale3 } from '../../../geometry/index.ts';
import type { AppliedLoad } from './balance.ts';
import type { CasesInput } from './caseTypes.ts';
import type { DrivePull } from './drivePull.ts';
import { driveShafts, solveDriveShaft } from './shaftModel.ts';

/** Strands as pairs of forces on the shafts' bearings, the engine and the rear wheel. */
export function pullLoads({ build, bike, frame }: CasesInput, pulls: readonly DrivePull[]): AppliedLoad[] {
  const loads: AppliedLoad[] = [];
  for (const strand of pulls.flatMap((pull) => pull.strands))
    for (const [shaft, at, sign] of [
      [strand.from, strand.at, 1],
      [strand.to, strand.atDriven, -1],
    ] as const) {
      const carrier =
        shaft === 'engine'
          ? ({ by: 'node', node: frame.engine } as const)
          : shaft === 'rearAxle'
            ? ({ by: 'wheel', wheel: 'rear' } as const)
            : undefined;
      const what = `${strand.drive} on ${shaft}`;
      if (carrier) loads.push({ what, carrier, at, force: scale3(strand.force, sign), inner: true });
    }
  for (const model of driveShafts(build, bike, frame.bearings, pulls)) {
    const solved = solveDriveShaft(model);
    solved?.supports.forEach((support, i) => {
      const { node, item } = model.bearings[i]!;
      const [z, x] = support.force;
      loads.push({
        what: `${model.id} on ${item}`,
        carrier: { by: 'node', node },
        at: frame.draft.nodes.get(node)!,
        force: { x: -x, y: 0, z: -z },
        inner: true,
      });
    });
  }
  return loads;
}
