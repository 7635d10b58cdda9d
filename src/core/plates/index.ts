export { boreFlaws } from './checkBores.ts';
export { patternFlaws } from './checkPattern.ts';

export { plateFigures } from './figures.ts';
export { drillSteps, type HoleMaking, makeOpening } from './holeSteps.ts';
export { plateLumps } from './lumps.ts';
export { openingEnds, openingLoop } from './openings.ts';
export type { BendLine, CheckLength, FlatPattern, HoleStep, Opening, PlateFlaw } from './pattern.ts';
export type { OpeningPlan } from './plan.ts';
export { type Plates, platesOf } from './platesOf.ts';
export { type OperationLimits, operationLimits, shopDefaults } from './shopLimits.ts';
export { type SlideSpan, type SlotNeed, slotNeeds } from './slotNeed.ts';
