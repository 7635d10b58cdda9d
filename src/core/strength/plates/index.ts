export { type CutOptions, type CutPlate, cutPlate } from './cutPlate.ts';
export type { CutForces, CutStress } from './cutStress.ts';
export type { FlatPlate } from './flatPlate.ts';
export { type Holder, heldBy } from './hold.ts';
export type { NetSection } from './netSection.ts';
export { type LineLoad, type PlateLoads, type PointLoad, unbalance, wrenchOf } from './plateLoads.ts';
export type { PlateWeld } from './seams.ts';
export { type AllowedStress, glancedShare, type LoadedCut, loadedCut, worstCut } from './worstCut.ts';
