import { materialStrength } from '../../../../standards/index.ts';
import { type AllowedStress, type LoadedCut, worstCut } from '../../../plates/index.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { JointInput } from '../joints/jointInput.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { anchorRows } from './anchors.ts';
import { axlePlateStudy } from './axlePlateStudy.ts';
import { caliperStudy } from './caliperStudy.ts';
import { enginePlateStudy } from './enginePlateStudy.ts';
import { footBoltRows } from './footBolts.ts';
import { ownLoadStudy } from './ownLoadStudy.ts';
import { type PlacedPlate, placedPlates } from './plateAxes.ts';
import { loadsByPlate, plateBodies } from './plateBodies.ts';
import { isStudied, type NotStudied, type PlateStudy } from './study.ts';

/** What was found of plates, and which were left out. */
export interface PlateRows {
  readonly rows: readonly UtilizationRow[];
  readonly notChecked: readonly string[];
}

/** Cuts are first looked at one in so many, to find the cases that count. */
const GLANCE = 6;
/** Cases that are looked at in full. */
const CLOSER = 2;

/** Plates in bending by straight cuts, anchors of caliper brackets, bolts of feet; the worst of each over cases and copies. */
export function plateRows(input: JointInput): PlateRows {
  const { bodies, owners } = plateBodies(input.frame);
  const cases = loadsByPlate(input.cases, owners);
  const worst = new Map<string, UtilizationRow>();
  const left: NotStudied[] = [];
  const context = { input, bodies, cases };
  for (const plate of placedPlates(input.patterns)) {
    const study = studyOf(context, plate);
    if (!isStudied(study)) left.push(study);
    else {
      const row = stressRow(input, study);
      if (row && row.utilization > (worst.get(row.part)?.utilization ?? -1)) worst.set(row.part, row);
    }
  }
  return {
    rows: [...worst.values(), ...anchorRows(input), ...footBoltRows(input, cases)],
    notChecked: [...notChecked(left), ...besideBrackets(context)],
  };
}

interface Context {
  readonly input: JointInput;
  readonly bodies: ReturnType<typeof plateBodies>['bodies'];
  readonly cases: ReturnType<typeof loadsByPlate>;
}

function studyOf({ input, bodies, cases }: Context, plate: PlacedPlate): PlateStudy | NotStudied {
  const { pattern } = plate;
  switch (pattern.recipe) {
    case 'engine-plate':
      return enginePlateStudy(input, plate, cases);
    case 'caliper-bracket':
      return caliperStudy(input, plate);
    case 'gusset':
      return { plate: pattern.id, why: 'it shares its load with the tubes that it joins' };
    case 'axle-plate': {
      const body = bodies.get(plate.node);
      return body
        ? axlePlateStudy(input, plate, body, cases)
        : { plate: pattern.id, why: 'it is not in the model' };
    }
    default:
      return ownLoadStudy(input, plate, cases);
  }
}

/** Cases by a first glance, then the worst few in full. */
function stressRow(input: JointInput, study: PlateStudy): UtilizationRow | undefined {
  const { pattern, hand } = study.plate;
  const material = materialStrength(pattern.material);
  const { yieldFactor } = input.settings;
  const allowed: AllowedStress = {
    plain: material.yield / yieldFactor,
    welded: material.weldedYield / yieldFactor,
  };
  const glanced = input.cases.flatMap((one, c) => {
    const loads = study.loads(c);
    const found = loads && worstCut(study.cut, loads, allowed, GLANCE);
    return loads && found ? [{ one, loads, share: found.share }] : [];
  });
  glanced.sort((a, b) => b.share - a.share);
  let worst: { readonly one: LoadCase; readonly cut: LoadedCut } | undefined;
  for (const { one, loads } of glanced.slice(0, CLOSER)) {
    const cut = worstCut(study.cut, loads, allowed);
    if (cut && cut.share > (worst?.cut.share ?? -1)) worst = { one, cut };
  }
  if (!worst) return undefined;
  const { one, cut } = worst;
  const side = pattern.pair ? `${hand} one, ` : '';
  return {
    part: pattern.id,
    check: 'plateStress',
    case: one.id,
    where: side + study.where(cut.section),
    quantity: cut.section.isAtWeld ? 'stress across the plate, beside a weld' : 'stress across the plate',
    value: cut.stress.equivalent,
    limit: cut.section.isAtWeld ? allowed.welded : allowed.plain,
    kind: 'pressure',
    utilization: cut.share,
    note: study.note,
    source: study.source,
  };
}

function notChecked(left: readonly NotStudied[]): readonly string[] {
  return [...new Set(left.map(({ plate, why }) => `plate "${plate}" in bending: ${why}`))];
}

/** An axle plate beside a bracket that hangs on the same axle is left out while that brake is on. */
function besideBrackets({ input, bodies }: Context): readonly string[] {
  return placedPlates(input.patterns)
    .filter(
      ({ pattern, node }) => pattern.recipe === 'axle-plate' && (bodies.get(node)?.plates.length ?? 0) > 1,
    )
    .map(
      ({ pattern }) =>
        `plate "${pattern.id}" in bending while the rear brake is on: another plate hangs on its axle, and which of them takes the moment can not be told`,
    );
}
