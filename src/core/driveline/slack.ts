import type { Length } from '../quantity/index.ts';

/** What a thumb feels in mid-span against what it takes in center distance and screw turns. */
export interface SlackSetting {
  /** s, straight run between the sprockets [m]. */
  readonly span: Length;
  /** Whole up-and-down movement of the mid-span by hand, other run taut [m]. */
  readonly play: Length;
  /** Play as a fraction of the span: 0.04 usual, 0.02 steep, start-stop or reversing. */
  readonly playFraction: number;
  /** Chain length that is left over at that play [m]. */
  readonly looseLength: Length;
  /** Center distance below the taut one that gives that play [m]. */
  readonly centerChange: Length;
  /** The same in turns of the pusher screw; absent when no thread was given. */
  readonly screwTurns?: number;
  /** Center distance that 1/2 in of play is on this span [m]: far below what a hand can set on a bare slot. */
  readonly centerChangeOfHalfInch: Length;
}

export interface SlackQuestion {
  /** s, straight run [m], > 0. */
  readonly span: Length;
  /** Change of chain length per change of center distance, about 2 [m/m], > 0. */
  readonly lengthPerCenter: number;
  /** Steep run, heavy starts or reversing: half the usual play. */
  readonly steep?: boolean;
  /** Thread pitch of the pusher screw [m], > 0. */
  readonly pusherPitch?: Length;
}

/** Makers' figure for total mid-span movement. */
export const USUAL_PLAY = 0.04;
/** The same for steep lines of centers, heavy starts, reversing. */
export const STEEP_PLAY = 0.02;
const HALF_INCH = 0.0127;

/**
 * Length left over when a taut run of length s can be moved ± play/2 at its middle: √(s² + play²) − s.
 * @returns length [m]
 * @source derived, the run pushed to a V; pin play and link stiffness are left out and soften it
 */
export function looseLengthOfPlay(span: Length, play: Length): Length {
  return (Math.hypot(span, play) - span) as Length;
}

/**
 * Mid-span play that a left-over length gives: √((s + e)² − s²).
 * @returns play, peak to peak [m]
 * @source derived, inverse of {@link looseLengthOfPlay}
 */
export function playOfLooseLength(span: Length, loose: Length): Length {
  return Math.sqrt(loose * (2 * span + loose)) as Length;
}

/**
 * The play to set, 4 % of the span (2 % when steep), and what that is in center distance and screw turns.
 * @source practice, chain makers' slack of 4 % and 2 % of span · geometry: derived
 */
export function slackSetting(question: SlackQuestion): SlackSetting {
  const { span, lengthPerCenter, pusherPitch } = question;
  const playFraction = question.steep ? STEEP_PLAY : USUAL_PLAY;
  const play = (playFraction * span) as Length;
  const looseLength = looseLengthOfPlay(span, play);
  const centerChange = (looseLength / lengthPerCenter) as Length;
  return {
    span,
    play,
    playFraction,
    looseLength,
    centerChange,
    ...(pusherPitch === undefined ? {} : { screwTurns: centerChange / pusherPitch }),
    centerChangeOfHalfInch: (looseLengthOfPlay(span, HALF_INCH as Length) / lengthPerCenter) as Length,
  };
}
