import type { Length, Torque } from '../../../../quantity/index.ts';
import { keyForShaft } from '../../../../standards/index.ts';
import { keyStress, longestKey, shearYieldShare } from '../../../key/keyStrength.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { CASE } from './driveTypes.ts';

/** Keys by the size of the shaft, of the steel of the shaft, as long as their hub. */
export function keyRows(settings: LoadSettings, model: DriveShaftModel): UtilizationRow[] {
  const key = keyForShaft(model.diameter);
  if (!key.ok) return [];
  const { width, height } = key.value;
  return model.stack.items
    .filter(({ planes }) => planes.some(({ runs }) => runs === 'sprocket' || runs === 'sheave'))
    .flatMap((item): UtilizationRow[] => {
      const planes = item.planes.map(({ y }) => y);
      const torque = Math.abs(
        model.shaft.loads
          .filter(({ at }) => planes.some((y) => Math.abs(y - at) < 1e-4))
          .reduce((sum, load) => sum + (load.torque ?? 0), 0),
      );
      const shaft = model.diameter as Length;
      const length = Math.min(item.length, longestKey(shaft)) as Length;
      const stress = keyStress({ shaft, torque: torque as Torque, width, height, length });
      const yielding = settings.shaftYield / settings.yieldFactor;
      const shear = shearYieldShare('distortion-energy') * yielding;
      const share = Math.max(stress.shear / shear, stress.bearing / yielding);
      const isShear = stress.shear / shear >= stress.bearing / yielding;
      return [
        {
          part: model.id,
          case: CASE,
          where: `key of ${item.id}, ${Math.round(length * 1000)} mm long`,
          check: isShear ? 'keyShear' : 'keyBearing',
          place: item.id,
          quantity: isShear ? 'shear of the key' : 'pressure on the key',
          value: isShear ? stress.shear : stress.bearing,
          limit: isShear ? shear : yielding,
          kind: 'pressure',
          utilization: share,
          source: { key: 'shigley-9', where: 'section 7-7' },
        },
      ];
    });
}
