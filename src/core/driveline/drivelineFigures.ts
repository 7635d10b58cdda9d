import type { Build } from '../build/index.ts';
import type { Figure, FigureInput, Length } from '../quantity/index.ts';
import { derived } from '../quantity/index.ts';
import { beltFigures, chainDriveFigures, sprocketFigures } from './figures.ts';
import type { BeltEnd, DrivelineSolution, SolvedBelt, SolvedChain } from './solveDriveline.ts';
import { tensionFigures } from './tensionFigures.ts';

/** Figures of every drive of a build, its sprockets or sheaves, and the reduction from engine to wheel. */
export function drivelineFigures(build: Build, solution: DrivelineSolution): readonly Figure[] {
  return [
    ...(solution.tension ? tensionFigures(solution.tension) : []),
    ...Object.values(solution.chains).flatMap(chainFigures),
    ...Object.values(solution.belts).flatMap(variableBeltFigures),
    ...ratioFigures(build, solution),
  ];
}

function chainFigures(solved: SolvedChain): readonly Figure[] {
  const { id } = solved.stage;
  const of = `chain ${id}`;
  return [
    ...(solved.plan ? chainDriveFigures(solved.question, solved.plan, { id: `chain.${id}`, of }) : []),
    ...sprocketFigures(solved.chain, solved.driver, { id: `sprocket.${id}.driver`, of: `driver of ${id}` }),
    ...sprocketFigures(solved.chain, solved.driven, { id: `sprocket.${id}.driven`, of: `driven of ${id}` }),
  ];
}

function variableBeltFigures(solved: SolvedBelt): readonly Figure[] {
  const { id } = solved.stage;
  const at = (end: BeltEnd, name: string, says: string) =>
    beltFigures(
      { driverDiameter: end.driverDiameter as Length, drivenDiameter: end.drivenDiameter as Length },
      solved.center as Length,
      { id: `belt.${id}.${name}`, of: `belt ${id}, ${says}` },
    );
  return [...at(solved.low, 'low', 'launch'), ...at(solved.high, 'high', 'top')];
}

function ratioFigures(build: Build, solution: DrivelineSolution): readonly Figure[] {
  const ends = [
    { id: 'low', name: 'launch', value: solution.ratio.low, belt: (one: SolvedBelt) => one.low.ratio },
    { id: 'high', name: 'top', value: solution.ratio.high, belt: (one: SolvedBelt) => one.high.ratio },
  ] as const;
  return ends.map((end) => ({
    id: `driveline.ratio.${end.id}`,
    symbol: 'i',
    name: `engine turns a wheel turn, ${end.name}`,
    value: end.value,
    kind: 'ratio' as const,
    formula: 'i = product of the ratios of the stages',
    inputs: build.driveline.stages.flatMap((stage): FigureInput[] => {
      if (stage.kind === 'clutch') return [];
      const belt = solution.belts[stage.id];
      const value =
        stage.kind === 'chain' ? stage.drivenTeeth / stage.driverTeeth : belt ? end.belt(belt) : 1;
      return [{ name: `i ${stage.id}`, value, kind: 'ratio' }];
    }),
    source: derived('stages in series'),
  }));
}
