import type { StrengthInput } from '../strengthCore.ts';
import { type Change, wholeCheck } from './change.ts';

/** The stronger grades of the bolts that hold a plate. */
export function boltChanges(input: StrengthInput, plate: string): readonly Change[] {
  const isInch = input.build.engine.mount.bolt.includes('in') || input.build.engine.mount.bolt.includes('/');
  const given = input.build.loads?.bolts?.[plate] ?? {};
  const { torque: _torque, ...rest } = given;
  const grades = isInch ? ['grade 8'] : ['10.9', '12.9'];
  return grades.map((grade) =>
    wholeCheck(`Use ${grade} bolts, tightened to 75 % of their proof load`, {
      ...input,
      build: {
        ...input.build,
        loads: {
          ...input.build.loads,
          bolts: { ...input.build.loads?.bolts, [plate]: { ...rest, grade } },
        },
      } as StrengthInput['build'],
    }),
  );
}
