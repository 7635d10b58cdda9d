import type { Length, Outcome } from '../../quantity/index.ts';
import { bad, good } from '../../quantity/index.ts';
import { bearingRingLimits, boreMethods, fitLimits, interferenceOf } from '../../standards/index.ts';

/** Deviations of one side of a fit. */
export interface SideLimits {
  /** `N7`, or `bearing` for a ring of class Normal. */
  readonly designation: string;
  readonly upper: Length;
  readonly lower: Length;
}

export interface FitPair {
  readonly hole: SideLimits;
  readonly shaft: SideLimits;
  /** Interference, negative where it is clearance [m]. */
  readonly interference: { readonly least: Length; readonly most: Length };
  readonly kind: 'clearance' | 'transition' | 'interference';
}

/** One way to open a bore, set against the tolerance. */
export interface BoreMethod {
  readonly method: string;
  /** Band it keeps to [m]. */
  readonly spread: Length;
  /** The band lies within the tolerance. */
  readonly holds: boolean;
}

/** Advice for a bore that is opened by hand. */
export interface HandBore {
  /** Tolerance width of the hole [m]. */
  readonly tolerance: Length;
  /** Stop here with the coarse method and go on in small steps [m]. */
  readonly stopAt: Length;
  /** Aim at the middle of the tolerance [m]. */
  readonly aim: Length;
  /** Rougher ways first. */
  readonly methods: readonly BoreMethod[];
}

/** The mean of a hand-opened bore moves no more than this before it is tried [m]. */
const LAST_STEP = 0.0001;

/**
 * Limits of a hole and a shaft of one size and what they make together. `bearing` stands for the ring of a class Normal
 * ball bearing: its outside as the shaft, its bore as the hole.
 * @issue not-in-table, out-of-range — a class or size that the tables do not give; `hole` or `shaft` in the path
 * @issue conflict — two holes or two shafts
 * @source iso-286, parts 1 and 2
 */
export function fitPair(size: Length, hole: string, shaft: string): Outcome<FitPair> {
  const holeSide = sideLimits(size, hole, 'hole');
  if (!holeSide.ok) return holeSide;
  const shaftSide = sideLimits(size, shaft, 'shaft');
  if (!shaftSide.ok) return shaftSide;
  const interference = interferenceOf(holeSide.value, shaftSide.value);
  const kind = interference.most <= 0 ? 'clearance' : interference.least >= 0 ? 'interference' : 'transition';
  return good({ hole: holeSide.value, shaft: shaftSide.value, interference, kind });
}

/** Which shop methods can hold the hole, and where to stop with a rough one. @source practice, bands of shop methods */
export function handBore(size: Length, hole: SideLimits): HandBore {
  const tolerance = (hole.upper - hole.lower) as Length;
  return {
    tolerance,
    stopAt: (size + hole.lower - LAST_STEP) as Length,
    aim: (size + (hole.upper + hole.lower) / 2) as Length,
    methods: boreMethods.map(({ method, spread }) => ({
      method,
      spread,
      holds: spread <= tolerance + 1e-12,
    })),
  };
}

function sideLimits(size: Length, designation: string, of: 'hole' | 'shaft'): Outcome<SideLimits> {
  if (designation === 'bearing') {
    const limits = bearingRingLimits(size, of === 'hole' ? 'bore' : 'outside');
    if (limits) return good({ designation, upper: limits.upper as Length, lower: limits.lower as Length });
    return bad({ code: 'not-in-table', path: of, given: 'bearing', nearest: [] });
  }
  const found = fitLimits(size, designation, of);
  if (!found.ok) {
    const [first, ...rest] = found.issues;
    const path = first.code === 'out-of-range' ? 'size' : of;
    return bad({ ...first, path }, ...rest);
  }
  if (found.value.of !== of) {
    const reason = `${designation} is a ${found.value.of}; ${of === 'hole' ? 'holes have capital letters' : 'shafts have small letters'}`;
    return bad({ code: 'conflict', path: of, reason });
  }
  return good({ designation, upper: found.value.upper, lower: found.value.lower });
}
