import type { Length } from '../quantity/index.ts';
import { beltCenter, openBelt } from './belt.ts';
import type { SprocketPair } from './chainLength.ts';
import { centerForLinks, touchingCenter, wrappedLinks } from './chainLength.ts';
import { linkCountsAround } from './linkCounts.ts';
import type { BeltRun, ChainRun, DriveRun } from './tensionTypes.ts';
import { wearLimit } from './wear.ts';

/** Center distances one length of chain or belt asks for [m]. */
export interface CenterTargets {
  readonly links?: number;
  readonly offsetLink: boolean;
  readonly fitting: number;
  readonly fresh: number;
  readonly worn: number;
}

/** Half a pitch of center distance gives a whole link of chain to close over the teeth. */
const CHAIN_FITTING_PITCHES = 0.5;
/** Room to roll a belt over a fixed sheave's rim; a sheave that opens needs none. Practice. */
const BELT_FITTING = 0.006;
/** What a small variable belt lengthens before it is changed. Practice. */
const BELT_STRETCH = 0.01;

/**
 * Center distances asked for by each length that could be used, in rising order: chain lengths on either side
 * of the layout center, or the one that is given; the belt's own length.
 * @source derived, chain and belt length equations · practice for wear, stretch and fitting room
 */
export function centerTargets(drive: DriveRun, layoutCenter: number): readonly CenterTargets[] {
  return drive.kind === 'chain' ? chainTargets(drive, layoutCenter) : beltTargets(drive);
}

/** L at a center distance, not rounded; undefined below touching pitch circles. */
export function exactLinksAt(drive: ChainRun, center: number): number | undefined {
  const pair = pairOf(drive);
  return center >= touchingCenter(pair) ? wrappedLinks(pair, center).links : undefined;
}

/**
 * Elongation at which a chain or belt taut at one center distance is taut again at a larger one.
 * @returns fraction of the length; < 0 when the second center is the smaller
 * @source derived, length equations
 */
export function elongationAt(
  drive: DriveRun,
  centers: { readonly fresh: number; readonly end: number },
): number {
  const lengthAt = (center: number) =>
    drive.kind === 'chain'
      ? wrappedLinks(pairOf(drive), center).links
      : openBelt({ driverDiameter: drive.fromDiameter, drivenDiameter: drive.toDiameter }, center).length;
  return lengthAt(centers.end) / lengthAt(centers.fresh) - 1;
}

/** The pair of sprockets of a chain run. */
export function pairOf(drive: ChainRun): SprocketPair {
  return { pitch: drive.pitch, driverTeeth: drive.fromTeeth, drivenTeeth: drive.toTeeth };
}

function chainTargets(drive: ChainRun, layoutCenter: number): readonly CenterTargets[] {
  const pair = pairOf(drive);
  // Below touching sprockets the lengths just above the shortest chain are still worth showing.
  const exactLinks = wrappedLinks(pair, Math.max(layoutCenter, touchingCenter(pair))).links;
  const counts =
    drive.links === undefined
      ? linkCountsAround({
          exactLinks,
          eachSide: 1,
          ...(drive.offsetLinks === undefined ? {} : { offsetLinks: drive.offsetLinks }),
        })
      : [drive.links];
  const wear = wearLimit({
    largestTeeth: Math.max(drive.fromTeeth, drive.toTeeth),
    ...(drive.wearLimit === undefined ? {} : { given: drive.wearLimit }),
  });
  const fitting = drive.fitting ?? CHAIN_FITTING_PITCHES * drive.pitch;
  return counts.flatMap((links) => {
    const fresh = centerForLinks(pair, links);
    const worn = centerForLinks(pair, links * (1 + wear.elongation));
    if (!fresh.ok || !worn.ok) return [];
    return [
      {
        links,
        offsetLink: links % 2 === 1,
        fitting: fresh.value - fitting,
        fresh: fresh.value,
        worn: worn.value,
      },
    ];
  });
}

function beltTargets(drive: BeltRun): readonly CenterTargets[] {
  const pair = { driverDiameter: drive.fromDiameter, drivenDiameter: drive.toDiameter };
  const fresh = beltCenter(pair, drive.length);
  const worn = beltCenter(pair, (drive.length * (1 + (drive.stretch ?? BELT_STRETCH))) as Length);
  if (!fresh.ok || !worn.ok) return [];
  const fitting = drive.fitting ?? BELT_FITTING;
  return [{ offsetLink: false, fitting: fresh.value - fitting, fresh: fresh.value, worn: worn.value }];
}
