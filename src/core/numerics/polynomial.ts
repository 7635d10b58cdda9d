/** Coefficients by rising power: c[0] + c[1]·x + c[2]·x² … */
export type Polynomial = readonly number[];

export function polynomialAt(polynomial: Polynomial, x: number): number {
  let sum = 0;
  for (let i = polynomial.length - 1; i >= 0; i -= 1) sum = sum * x + polynomial[i]!;
  return sum;
}

export const derivativeOf = (polynomial: Polynomial): Polynomial =>
  polynomial.slice(1).map((coefficient, i) => coefficient * (i + 1));

export function productOf(a: Polynomial, b: Polynomial): Polynomial {
  const product = new Array<number>(Math.max(a.length + b.length - 1, 0)).fill(0);
  a.forEach((left, i) => {
    b.forEach((right, k) => {
      product[i + k]! += left * right;
    });
  });
  return product;
}

export function sumOf(a: Polynomial, b: Polynomial): Polynomial {
  const longer = a.length >= b.length ? a : b;
  const shorter = longer === a ? b : a;
  return longer.map((coefficient, i) => coefficient + (shorter[i] ?? 0));
}

/**
 * Where a polynomial crosses zero in [from, to], rising: between two roots of its derivative it is monotonic, so the
 * derivative's own roots split the interval into pieces that hold one crossing each. A root that only touches zero
 * may be missed; it is a root of the derivative too, where an extreme is looked for anyway.
 * @returns roots [unit of x], each to the last bits of bisection
 */
export function crossings(polynomial: Polynomial, from: number, to: number): readonly number[] {
  if (polynomial.length < 2) return [];
  const ends = [from, ...crossings(derivativeOf(polynomial), from, to), to];
  const roots: number[] = [];
  for (let i = 1; i < ends.length; i += 1) {
    const root = bisect(polynomial, ends[i - 1]!, ends[i]!);
    if (root !== undefined && root !== roots.at(-1)) roots.push(root);
  }
  return roots;
}

function bisect(polynomial: Polynomial, from: number, to: number): number | undefined {
  let [low, high] = [from, to];
  const [first, last] = [polynomialAt(polynomial, low), polynomialAt(polynomial, high)];
  if (first === 0) return low;
  if (last === 0) return high;
  if (first > 0 === last > 0) return undefined;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (polynomialAt(polynomial, middle) > 0 === first > 0) low = middle;
    else high = middle;
  }
}
