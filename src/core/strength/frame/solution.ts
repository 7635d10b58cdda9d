/** What one load case does. Vectors hold six numbers a node in the order of `AssembledFrame.nodeIds`. */
export interface FrameSolution {
  /** Displacements [m] and rotations [rad], global axes. */
  readonly displacements: Float64Array;
  /** Forces [N] and moments [N·m] that supports and springs exert on the frame; 0 at free movements. */
  readonly reactions: Float64Array;
  /**
   * Twelve a member in the order of the model: force [N] and moment [N·m] on its start, then its end, exerted by
   * the joints on the member, local axes.
   */
  readonly memberForces: Float64Array;
  /** Uniform load of each member in local axes [N/m], three a member. */
  readonly memberLoads: Float64Array;
  /** Largest unbalanced force or moment at a joint against the largest in the frame [-]; moments count by
   * the size of the frame. */
  readonly residual: number;
}
