/** Two readings from bearing faces in to the rim edges, one a side, and what stands between those faces and the hub. */
export interface RimReadings {
  /** Left bearing face (fork leg, frame plate or the hub's own face) in to the left rim edge [m]. */
  readonly left: number;
  /** Right bearing face in to the right rim edge [m]. */
  readonly right: number;
  /** Spacer between the left face and the hub while reading [m]; 0 when read from the hub's own faces. */
  readonly leftSpacer?: number;
  /** The same on the right [m]. */
  readonly rightSpacer?: number;
}

/**
 * Rim center plane from the middle of the hub: o = (right − left)/2 − (right spacer − left spacer)/2. The width of
 * the rim and of the frame drop out, so that two readings with any rule are enough.
 * @returns o [m], left positive
 * @source derived, the middle of two faces
 */
export function rimOffset({ left, right, leftSpacer = 0, rightSpacer = 0 }: RimReadings): number {
  return (right - left) / 2 - (rightSpacer - leftSpacer) / 2;
}
