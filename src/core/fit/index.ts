export { type Assembled, assemble, type Placeable, placeable } from './assembled.ts';
export { clearanceFigures } from './clearanceFigures.ts';
export { type Clearance, clearances } from './clearances.ts';
export {
  type FigureDoubt,
  figureDoubts,
  type Instrument,
  type MeasuredBuild,
  measuredBuild,
  type Reading,
} from './measured.ts';
export { type Change, type PartState, rippleOf, type Solved } from './ripple.ts';
