import type { Check } from '../strength/index.ts';

const LESS_MARGIN = 'Less than the margin that was asked for is left against yield.';
const WELD =
  'The weld is asked for more than the published allowable stress, which holds for a sound full fillet.';
const ONE_IN_TEN = 'One bearing in ten fails before this life.';
const CRACK = 'A crack grows from a keyseat or a loaded place long before anything bends.';
const DENTS = 'Balls dent their tracks under a load that the bearing meets standing or rolling slowly.';
const TEARS = 'The hole draws out long, the bolt works, and the metal beyond it tears.';

/** What comes of a comparison that is over its limit. */
export const WHY: Readonly<Record<Check, string>> = {
  vonMises: LESS_MARGIN,
  buckling: 'A tube that is pushed harder bows out sideways all at once.',
  tubeWeld: WELD,
  footWeld: WELD,
  wallUnderTube:
    'The face of the tube dents or the other tears out of its wall, though the weld and both tubes hold.',
  wallUnderPlate: 'The tab tears out of the wall of the tube or dents it, though weld and tab hold.',
  plateStress: LESS_MARGIN,
  shaftStress: LESS_MARGIN,
  axleBending: LESS_MARGIN,
  keyseatFatigue: CRACK,
  axleFatigue: CRACK,
  axleThread: 'A crack starts at the root of a thread long before anything bends.',
  keyShear: 'The key shears and the drive is gone; so is what braked through it.',
  keyBearing: 'The key rolls in its seat, hub and shaft wear loose.',
  bearingTilt: 'Balls that run across their groove wear and run hot.',
  bearingLife: ONE_IN_TEN,
  bearingStatic: DENTS,
  bearingSpeed: 'Seals and grease run hot over it.',
  criticalSpeed: 'Near its critical speed a shaft whips, however well it is balanced.',
  wheelBearingLife: ONE_IN_TEN,
  wheelBearingStatic: DENTS,
  seatStress:
    'The plate yields round the bore as the bearing goes in, and the seat is loose the second time.',
  seatClearance: 'A bearing pressed tight loses the play between its balls, runs hot and dies early.',
  chainTension: 'A chain that is pulled past its working tension stretches soon and may break.',
  chainPower:
    'The rating is a life of 15 000 hours at full power, not what breaks the chain: that is its tension. Over it pins wear and rollers crack sooner; below a quarter of the power look at the chain after the first rides (practice).',
  chainShock:
    'Grabbing clutch, lugging engine and jumps pull harder than torque alone; a chain that goes locks the wheel or whips.',
  chainPressure: 'Pins and bushings wear sooner than the table means; look at the chain often and oil it.',
  chainSpeed: 'Pins run dry of oil and gall in their bushings.',
  beltWrap: 'With little wrap a belt slips, glazes and burns at launch.',
  beltSlip: 'A belt that is not pressed hard enough slips, glazes and burns at launch.',
  beltTension: 'Over it the cords of the belt tire and let go.',
  boltSlip: 'A joint that slips lets the chain go slack and works its bolts loose.',
  boltLift: 'A foot that lifts works its bolts until they break.',
  threadShear: 'Bolts that are the only hold of a brake have no second chance.',
  holeBearing: TEARS,
  holeTearOut: TEARS,
  slotBearing: 'The axle dents its slot, and wheel and chain go out of line.',
  slotTearOut: 'The axle leaves its slot.',
};

/** What to do, where no change of size was tried. */
export const REMEDIES: Readonly<Partial<Record<Check, string>>> = {
  chainPower:
    'A larger chain, more teeth on the small sprocket, or accept a shorter life and look at it often.',
  chainPressure:
    'A larger chain, more teeth on the small sprocket, or accept a shorter life and look at it often.',
  beltWrap: 'Move the shafts apart or take a belt and sheaves with less ratio.',
  beltSlip: 'A stiffer spring in the driven unit, or a higher speed of first bite.',
  seatClearance: 'Take a bearing of C3 clearance, or the next looser fit with a retainer.',
  wheelBearingLife: 'A hub with larger bearings, or bearings set further apart.',
  wheelBearingStatic: 'A hub with larger bearings, or bearings set further apart.',
  axleThread: 'An axle threaded no further than its washers, or more washers under the nut.',
};
