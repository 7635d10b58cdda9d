import {
  crossings,
  derivativeOf,
  type Polynomial,
  polynomialAt,
  productOf,
  sumOf,
} from '../../numerics/index.ts';
import { elementStiffness, evenLoad, type ShaftElement } from './mesh.ts';

/** What one plane of an element carries and how it bends, as polynomials in s = x − start. */
export interface PlaneCurves {
  /** Sum of the forces left of the cut, in the direction of the plane's axis [N]. */
  readonly shear: Polynomial;
  /** M = EI·dψ/dx, positive sagging towards the minus side of the axis [N·m]. */
  readonly moment: Polynomial;
  /** ψ, slope of the section [rad]. */
  readonly slope: Polynomial;
  /** v [m]. */
  readonly deflection: Polynomial;
}

/** Forces [f1, m1, f2, m2] that the nodes exert on an element. */
export function endForces(element: ShaftElement, n: number, u: Float64Array, plane: 0 | 1): number[] {
  const even = evenLoad(element, element.q[plane]);
  const k = elementStiffness(element);
  return [0, 1, 2, 3].map((row) => {
    let sum = -even[row]!;
    for (let column = 0; column < 4; column += 1) sum += k[4 * row + column]! * u[2 * n + column]!;
    return sum;
  });
}

/** Exact curves of an element: M = −m1 + f1·s + q·s²/2, ψ' = M/EI, v' = ψ − V/κGA. */
export function planeCurves(element: ShaftElement, n: number, u: Float64Array, plane: 0 | 1): PlaneCurves {
  const [f1, m1] = endForces(element, n, u, plane) as [number, number, number, number];
  const { bending, shear: rigidity } = element;
  const q = element.q[plane];
  const [v, psi] = [u[2 * n]!, u[2 * n + 1]!];
  const soft = 1 / rigidity;
  return {
    shear: [f1, q],
    moment: [-m1, f1, q / 2],
    slope: [psi, -m1 / bending, f1 / (2 * bending), q / (6 * bending)],
    deflection: [
      v,
      psi - f1 * soft,
      -m1 / (2 * bending) - (q / 2) * soft,
      f1 / (6 * bending),
      q / (24 * bending),
    ],
  };
}

/** The largest resultant √(a² + b²) of two curves on an element and its s. */
export function largestResultant(
  a: Polynomial,
  b: Polynomial,
  length: number,
): { readonly value: number; readonly s: number } {
  const square = sumOf(productOf(a, a), productOf(b, b));
  let best = { value: -1, s: 0 };
  for (const s of [0, ...crossings(derivativeOf(square), 0, length), length]) {
    const value = Math.hypot(polynomialAt(a, s), polynomialAt(b, s));
    if (value > best.value) best = { value, s };
  }
  return best;
}
