import type { Length, Pressure, Torque } from '../../../../quantity/index.ts';
import { enduranceLimit, notchFactors } from '../../../shaft/enduranceLimit.ts';
import { sectionFactors } from '../../../shaft/shaftFatigue.ts';
import { type ShaftSolution, shaftStateAt } from '../../../shaft/solveShaft.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import type { DriveInput } from './driveTypes.ts';

/** Reliability of the endurance limit, percent. */
const RELIABILITY = 90;

/** A keyseat wherever something that drives or is driven sits. */
export function keyseatsOf({ settings }: DriveInput, model: DriveShaftModel, solution: ShaftSolution) {
  const diameter = model.diameter as Length;
  const tensile = settings.shaftTensile as Pressure;
  const endurance = enduranceLimit({
    tensile,
    diameter,
    surface: 'machined',
    reliability: RELIABILITY,
    rotating: true,
  });
  const notch = notchFactors('end-mill-keyseat', tensile, diameter);
  if (!endurance.ok || !notch.ok) return [];
  return model.stack.items
    .filter(({ planes }) => planes.some(({ runs }) => runs === 'sprocket' || runs === 'sheave'))
    .map((item) => {
      const states = [item.left, item.right, ...item.planes.map(({ y }) => y)].flatMap((x) =>
        (['left', 'right'] as const).map((side) => shaftStateAt(model.shaft, solution, x, side)),
      );
      const bending = Math.max(...states.map(({ moment }) => Math.hypot(...moment)));
      const torque = Math.max(...states.map((state) => Math.abs(state.torque)));
      const factors = sectionFactors(
        {
          bendingAmplitude: bending as Torque,
          bendingMean: 0 as Torque,
          torqueAmplitude: 0 as Torque,
          torqueMean: torque as Torque,
          bendingFactor: notch.value.bending,
          torsionFactor: notch.value.torsion,
        },
        { endurance: endurance.value.limit, tensile, yield: settings.shaftYield as Pressure },
        diameter,
      );
      return { at: (item.left + item.right) / 2, item: item.id, factor: factors.fatigue.goodman };
    });
}
