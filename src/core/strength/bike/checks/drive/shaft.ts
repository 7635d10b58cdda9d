import type { Density, Length, Mass } from '../../../../quantity/index.ts';
import { criticalSpeed } from '../../../shaft/criticalSpeed.ts';
import { solveShaft } from '../../../shaft/solveShaft.ts';
import type { DriveShaftModel } from '../../loads/shaftModel.ts';
import { bearingsOf } from './bearings.ts';
import { diagramsOf } from './diagrams.ts';
import type { DriveInput, DriveShaftStrength } from './driveTypes.ts';
import { keyseatsOf } from './keyseats.ts';
import { misalignmentOf } from './misalignment.ts';
import { compareOutboard } from './outboard.ts';
import { shaftSpeed } from './shaftSpeed.ts';

const STEEL_DENSITY = 7850;

/** One shaft solved on its bearings, or word that it could not be. */
export function shaftOf(
  input: DriveInput,
  model: DriveShaftModel,
  notChecked: string[],
): DriveShaftStrength[] {
  const solved = solveShaft(model.shaft);
  if (!solved.ok) {
    notChecked.push(`shaft ${model.id}: it is not held, or its stack is not solved`);
    return [];
  }
  const solution = solved.value;
  const speed = shaftSpeed(input, model.id);
  const masses = model.stack.items
    .filter(({ kind }) => kind === 'sprocket' || kind === 'sheave' || kind === 'disc')
    .map((item) => ({ at: ((item.left + item.right) / 2) as Length, mass: itemMass(item) as Mass }))
    .filter(({ mass }) => mass > 0);
  const critical = criticalSpeed(model.shaft, STEEL_DENSITY as Density, masses);
  const outboard = compareOutboard(input, model, solution);
  const misalignment = misalignmentOf(model);
  return [
    {
      id: model.id,
      model,
      solution,
      diagrams: diagramsOf(model, solution),
      bearings: bearingsOf(input, model, solution, speed, notChecked),
      speed,
      ...(critical.ok ? { critical: critical.value } : {}),
      keyseats: keyseatsOf(input, model, solution),
      ...(outboard ? { outboard } : {}),
      ...(misalignment ? { misalignment } : {}),
    },
  ];
}

/** A turned disc of steel, half of it cut away [kg]; one without a body, as a plane alone, comes to nothing. @source practice */
const itemMass = (item: {
  readonly outside: number;
  readonly bore: number;
  readonly length: number;
}): number => 0.5 * STEEL_DENSITY * (Math.PI / 4) * (item.outside ** 2 - item.bore ** 2) * item.length;
