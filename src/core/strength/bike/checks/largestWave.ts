/** Angles at which peaks are looked for: two peaks of a wave of two periods do not hide between them. */
const AROUND = 12;
const STEP = (2 * Math.PI) / AROUND;
/** One more angle before and after, so that each has its neighbors. */
const table = (wave: (angle: number) => number) =>
  Float64Array.from({ length: AROUND + 2 }, (_, k) => wave(STEP * (k - 1)));
const COS = table((angle) => Math.cos(angle));
const SIN = table((angle) => Math.sin(angle));
const COS2 = table((angle) => Math.cos(2 * angle));
const SIN2 = table((angle) => Math.sin(2 * angle));
/** Two are enough at round tops; tops so flat that they all but part in two take four. */
const NEWTON_STEPS = 4;
/** A last turn as small as this changed nothing: the value goes by its square [rad]. */
const CLOSE = 1e-5;

/**
 * The largest of w(φ) = mean + a·cos φ + b·sin φ + c·cos 2φ + d·sin 2φ: each peak of twelve values around is followed
 * to its top, by the parabola through it and its neighbors and by Newton's method from there.
 * @source derived, w′ = 0
 */
export function largestWave(mean: number, a: number, b: number, c: number, d: number): number {
  // A top is less than half a step from one of the angles, and curves no more than this.
  const reach = ((Math.abs(a) + Math.abs(b) + 4 * (Math.abs(c) + Math.abs(d))) * STEP * STEP) / 8;
  let most = 0;
  let before = a * COS[0]! + b * SIN[0]! + c * COS2[0]! + d * SIN2[0]!;
  let here = a * COS[1]! + b * SIN[1]! + c * COS2[1]! + d * SIN2[1]!;
  for (let k = 1; k <= AROUND; k++) {
    const next = a * COS[k + 1]! + b * SIN[k + 1]! + c * COS2[k + 1]! + d * SIN2[k + 1]!;
    if (here >= before && here >= next && here + reach > most) {
      const bend = before - 2 * here + next;
      const aside = bend < 0 ? (STEP * (before - next)) / (2 * bend) : 0;
      most = Math.max(most, here, top(COS[k]!, SIN[k]!, aside, a, b, c, d));
    }
    before = here;
    here = next;
  }
  return mean + most;
}

/** The top of the peak near an angle, given by its cosine and sine; `aside` is the first guess from there [rad]. */
function top(cos: number, sin: number, aside: number, a: number, b: number, c: number, d: number): number {
  let x = cos;
  let y = sin;
  let turn = aside;
  let most = 0;
  for (let n = 0; ; n++) {
    // A turn by atan(turn) needs no trigonometry, and comes to the same where it is small.
    const by = 1 / Math.sqrt(1 + turn * turn);
    const across = (x - turn * y) * by;
    y = (y + turn * x) * by;
    x = across;
    const cos2 = x * x - y * y;
    const sin2 = 2 * x * y;
    most = Math.max(most, a * x + b * y + c * cos2 + d * sin2);
    if (n === NEWTON_STEPS || (n > 0 && Math.abs(turn) < CLOSE)) return most;
    const slope = b * x - a * y + 2 * (d * cos2 - c * sin2);
    const curvature = -a * x - b * y - 4 * (c * cos2 + d * sin2);
    // Flat tops curve either way: up the slope then, and never past the neighbors.
    const step = curvature < 0 ? -slope / curvature : Math.sign(slope) * STEP;
    turn = Math.min(Math.max(step, -STEP / 4), STEP / 4);
  }
}
