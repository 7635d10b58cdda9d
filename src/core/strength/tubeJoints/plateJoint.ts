import type { Force, Length, Torque } from '../../quantity/index.ts';
import { type ChordWall, chordPrestress, faceUnit, shearUnit, TUBE_JOINT_FACTOR } from './chordWall.ts';
import { chordLimits, type OutsideRule, outsideOf, shareOutside } from './validity.ts';

/** A flat plate welded edge on to a tube. */
export interface PlateJoint {
  /** Its edge runs along the tube, or across it. */
  readonly kind: 'longitudinal' | 'transverse';
  /** On both sides of the tube in one plane: an X joint. */
  readonly isCross?: boolean;
  readonly chord: ChordWall;
  /** h1 along the tube, or b1 across it [m], > 0. */
  readonly length: Length;
  /** t1 [m], > 0. */
  readonly thickness: Length;
  /** Left out: 1. */
  readonly partialFactor?: number;
}

/** What the wall of the tube takes from a plate. */
export interface PlateResistance {
  /** Face under a force square to the tube [N]. */
  readonly normal: number;
  /** Moment in the plane of plate and edge, and about the edge [N·m]. */
  readonly alongEdge: number;
  readonly aboutEdge: number;
  /** Punching: force on a length of plate [N/m]. */
  readonly punching: number;
  readonly prestress: number;
  readonly outside: readonly OutsideRule[];
  readonly share: number;
}

/** What the plate brings to the surface of the tube; signs do not matter. */
export interface PlateLoad {
  /** Square to the tube. */
  readonly normal: Force;
  /** In the plane of the plate: it presses one end of the edge in and pulls the other out. */
  readonly alongEdge: Torque;
  /** About the edge: it bends the plate flat. */
  readonly aboutEdge: Torque;
}

/**
 * Resistance of a tube's wall to a plate.
 * @source en-1993-1-8, table 7.3; longitudinal plates as in tube-joint-guide, section 5.1.6, transverse ones from memory.
 * About the edge, where the standard claims nothing: 0.5·t1·N, tube-joint-guide
 */
export function plateResistance(joint: PlateJoint): PlateResistance {
  const { kind, chord, length, thickness, isCross = false, partialFactor = TUBE_JOINT_FACTOR } = joint;
  const ratio = length / chord.outside;
  const outside = outsideOf([...chordLimits(chord, isCross), edgeLimit(kind, ratio)]);
  const share = shareOutside(outside);
  const prestress = chordPrestress(chord, partialFactor);
  const unit = (share * faceUnit(chord) * prestress) / partialFactor;
  const normal = unit * plateFactor(kind, isCross, ratio);
  return {
    normal,
    alongEdge: (kind === 'longitudinal' ? 1 : 0.5) * length * normal,
    aboutEdge: 0.5 * thickness * normal,
    punching: (share * 2 * shearUnit(chord)) / partialFactor,
    prestress,
    outside,
    share,
  };
}

/** @source en-1993-1-8, table 7.3; from memory */
const edgeLimit = (kind: PlateJoint['kind'], ratio: number): OutsideRule =>
  kind === 'longitudinal'
    ? { what: 'length of the plate over the diameter', value: ratio, kind: 'ratio', most: 4, weakens: true }
    : {
        what: 'width of the plate over the diameter',
        value: ratio,
        kind: 'ratio',
        least: 0.4,
        most: 1,
        weakens: true,
      };

function plateFactor(kind: PlateJoint['kind'], isCross: boolean, ratio: number): number {
  if (kind === 'longitudinal') return 5 * (1 + 0.25 * ratio);
  // A plate wider than the tube touches no more of it than its width.
  const beta = Math.min(ratio, 1);
  return isCross ? 5 / (1 - 0.81 * beta) : 4 + 20 * beta ** 2;
}

/** Which of the two rules governs, and by how much of it [-]. */
export interface PlateInteraction {
  readonly face: number;
  readonly punching: number;
}

/**
 * Face: N/NRd + (Mip/MRd)² + |Mop|/MRd, with the moment in the plane of a longitudinal plate squared as in-plane.
 * Punching: N/l + 6·M/l² on the most loaded end against 2·t0·fy0/√3.
 * @source en-1993-1-8, section 7.4.2 and table 7.3; tube-joint-guide, section 5.1.6
 */
export function plateInteraction(
  { kind, length }: PlateJoint,
  { normal, alongEdge, aboutEdge, punching }: PlateResistance,
  load: PlateLoad,
): PlateInteraction {
  const along = Math.abs(load.alongEdge) / alongEdge;
  const about = Math.abs(load.aboutEdge) / aboutEdge;
  // Bending in the plane of tube and brace is in-plane: along the edge for a longitudinal plate, flat for one across.
  const moments = kind === 'longitudinal' ? along ** 2 + about : along + about ** 2;
  const line = Math.abs(load.normal) / length + (6 * Math.abs(load.alongEdge)) / length ** 2;
  return { face: Math.abs(load.normal) / normal + moments, punching: line / punching };
}
