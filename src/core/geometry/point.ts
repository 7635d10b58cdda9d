/** A point or vector in a plane [m]. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A point or vector in space [m]; in the bike: x forward, y to the rider's left, z up. */
export interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}
