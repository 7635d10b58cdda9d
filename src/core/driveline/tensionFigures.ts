import { derived, type Figure, type FigureDraft, figureMaker, practice } from '../quantity/index.ts';
import { count, length } from './figures.ts';
import type { DriveTension, SlotNeed, TensionSolution } from './tensionTypes.ts';

type Maker = (...draft: FigureDraft) => Figure;

/** The working of drives solved together: per drive its center, slide positions, slot and slack. */
export function tensionFigures(solution: TensionSolution): readonly Figure[] {
  return solution.drives.flatMap((drive) => {
    const figure = figureMaker({ id: `drive.${drive.id}`, of: `drive ${drive.id}` });
    return [
      ...centerFigures(drive, figure),
      ...slotFigures(drive.slotNeeded, figure),
      ...slackFigures(drive, figure),
    ];
  });
}

function centerFigures(drive: DriveTension, figure: Maker): readonly Figure[] {
  const { chosen } = drive;
  if (!chosen?.slide) return [];
  const source = derived('length equation with the drives before it set');
  const made = chosen.links === undefined ? [] : [count('L', chosen.links)];
  const slide = (id: 'fitting' | 'fresh' | 'worn', name: string): Figure =>
    figure(
      `slide.${id}`,
      'u',
      `slide ${name}`,
      chosen.slide?.[id] ?? 0,
      'length',
      'u = −b ± √(b² − |o|² + C²)',
      [length('C', chosen.center)],
      source,
    );
  return [
    figure(
      'centerDistance',
      'C',
      'center distance',
      chosen.center,
      'length',
      'C from the length equation',
      [length('layout C', drive.layoutCenter), ...made],
      source,
    ),
    slide('fitting', 'to put it on'),
    slide('fresh', 'when new'),
    slide('worn', 'when worn'),
  ];
}

function slotFigures(need: SlotNeed | undefined, figure: Maker): readonly Figure[] {
  if (!need) return [];
  const pieces = [
    length('link rounding', need.linkRounding),
    length('wear', need.wear),
    length('fitting', need.fitting),
    length('following', need.following),
  ];
  const formula = 'S = link rounding + wear + fitting + following the drives set before';
  return [
    figure(
      'slotLength',
      'S',
      'slot travel needed',
      need.total,
      'length',
      formula,
      pieces,
      practice('slot cut before the chain is bought'),
    ),
  ];
}

function slackFigures(drive: DriveTension, figure: Maker): readonly Figure[] {
  const { slack } = drive;
  if (!slack) return [];
  const inputs = [length('s', slack.span), length('play', slack.play)];
  return [
    figure(
      'play',
      'f',
      'whole mid-span play to set',
      slack.play,
      'length',
      'f = k·s',
      inputs,
      practice('slack of 4 % of span, 2 % when steep'),
    ),
    figure(
      'slackCenter',
      'ΔC',
      'center distance that the play is',
      slack.centerChange,
      'length',
      'ΔC = (√(s² + play²) − s)/(dL/dC)',
      inputs,
      derived('the run pushed to a V, other run taut'),
    ),
  ];
}
